/// Bounds no mouth and no denture goes beyond. What lies outside is a slip of the pen or the unit:
/// a rule says so, and nothing is computed from it. Common practice, no source.
#pragma once

#include "domain/base/quantity.h"

namespace domain::possible {

template <typename Size>
struct Bounds {
    Size least;
    Size most;
    constexpr bool holds(Size size) const noexcept { return size >= least && size <= most; }
};

inline constexpr Bounds<Microns> kUndercut{0_um, 3000_um};
inline constexpr Bounds<Microns> kArmLength{3000_um, 40'000_um};
inline constexpr Bounds<Microns> kArmWidth{300_um, 4000_um};
inline constexpr Bounds<Share> kArmTip{50'000_ppm, 1'000'000_ppm};
inline constexpr Bounds<Microns> kSeat{0_um, 4000_um};
inline constexpr Bounds<Microns> kRoom{0_um, 12'000_um};
inline constexpr Bounds<Microns> kGuidePlane{200_um, 10'000_um};
inline constexpr Bounds<Microns> kConnectorWidth{1000_um, 60'000_um};
inline constexpr Bounds<Microns> kClearance{0_um, 20'000_um};
inline constexpr Bounds<Microns> kOpening{0_um, 45'000_um};
inline constexpr Bounds<Microns> kDepth{0_um, 30'000_um};
inline constexpr Bounds<Microns> kTissue{0_um, 10'000_um};
inline constexpr Bounds<Microns> kArchWidth{35'000_um, 90'000_um};
inline constexpr Bounds<Microns> kArchDepth{20'000_um, 70'000_um};

}  // namespace domain::possible
