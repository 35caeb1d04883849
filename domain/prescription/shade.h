/// The colour of the artificial teeth, as a tab of a named guide.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "domain/base/lab_colour.h"
#include "domain/teeth/tooth.h"

namespace domain {

struct Shade {
    std::string guide{};
    std::string tab{};
    std::vector<Tooth> teeth{};           ///< empty: all replaced teeth
    std::optional<LabColour> measured{};  ///< of the natural tooth they are to match
    friend bool operator==(const Shade&, const Shade&) = default;
};

}  // namespace domain
