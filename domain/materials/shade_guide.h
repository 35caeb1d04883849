/// Shade guides as laboratory data: a guide is a name and its tabs, measured or not.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "domain/base/lab_colour.h"

namespace domain {

struct ShadeTab {
    std::string name{};
    std::optional<LabColour> colour{};  ///< nullopt: not measured
    friend bool operator==(const ShadeTab&, const ShadeTab&) = default;
};

struct ShadeGuide {
    std::string name{};
    std::string source{};  ///< where its colours come from
    std::vector<ShadeTab> tabs{};
    friend bool operator==(const ShadeGuide&, const ShadeGuide&) = default;
};

/// A neutral scale of 16 tabs, A1 to D4, as it is shipped. Its colours (after O'Brien, Groh,
/// Boenke, Journal of Dental Research 1990;69:1762) are from memory, for the eye only until the
/// laboratory measures its own guide.
const ShadeGuide& shippedGuide();
/// The shipped guide alone: what a laboratory has that has entered none.
std::span<const ShadeGuide> shippedGuides();

/// nullptr: there is none of that name. Names are compared without regard to capitals.
const ShadeGuide* guideNamed(std::span<const ShadeGuide> guides, std::string_view name);
const ShadeTab* tabNamed(const ShadeGuide& guide, std::string_view name);

struct TabDistance {
    const ShadeTab* tab{};
    double difference{};  ///< CIEDE2000
};
/// The measured tabs of a guide, the most alike first.
std::vector<TabDistance> nearestTabs(const ShadeGuide& guide, LabColour colour);

}  // namespace domain
