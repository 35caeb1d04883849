/// What the surveyor showed: undercuts of each abutment, the path of insertion, the tripod marks.
#pragma once

#include <optional>
#include <vector>

#include "domain/base/quantity.h"
#include "domain/prescription/clasp.h"
#include "domain/teeth/tooth.h"

namespace domain {

struct AbutmentSurvey {
    Tooth tooth{11_fdi};
    std::optional<bool> heightOfContour{};  ///< whether it is marked on the cast
    std::vector<Undercut> undercuts{};
    std::optional<Microns> tissueUndercut{};  ///< of the soft tissue below the tooth
    std::optional<bool> highFrenum{};         ///< one that a bar would cross
    friend bool operator==(const AbutmentSurvey&, const AbutmentSurvey&) = default;
};

enum class TiltDirection : std::uint8_t { None, Anterior, Posterior, Right, Left };
template <>
inline constexpr std::array<EnumCode<TiltDirection>, 5> enumCodes<TiltDirection>{{
    {TiltDirection::None, "none"},
    {TiltDirection::Anterior, "anterior"},
    {TiltDirection::Posterior, "posterior"},
    {TiltDirection::Right, "right"},
    {TiltDirection::Left, "left"},
}};

/// The path of insertion, as a tilt of the cast from the horizontal occlusal plane.
struct InsertionPath {
    Millidegrees tilt{};
    TiltDirection towards{};
    friend bool operator==(const InsertionPath&, const InsertionPath&) = default;
};

struct Survey {
    std::vector<AbutmentSurvey> abutments{};
    std::optional<InsertionPath> path{};
    std::optional<bool> tripodMarked{};
    std::optional<Microns>
        lingualDepth{};  ///< lower: gingival margin to the raised floor of the mouth
    std::optional<Microns> sulcusDepth{};  ///< buccal, where a bar clasp would run
    std::optional<bool> torus{};
    std::optional<Microns> archWidth{};  ///< between the ends of the arch, behind the second molars
    std::optional<Microns> archDepth{};  ///< from there to the central incisors
    friend bool operator==(const Survey&, const Survey&) = default;
};

}  // namespace domain
