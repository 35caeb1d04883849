/// What carries the denture: teeth, teeth and tissue, or tissue alone.
///
/// Source: Ankara University open textbook of prosthodontics (tooth-and-tissue support for free
/// ends); tissue support where nothing rests on a tooth is common practice, no source.
#pragma once

#include "domain/design/kennedy.h"

namespace domain {

/// The longest bounded space, in teeth, that two abutments may carry alone. One school says three;
/// longer spaces lean on tissue as well.
inline constexpr int kLongestToothSupportedSpace = 3;

/// nullopt when there is no class, so nothing to carry.
std::optional<Support> supportOf(const Prescription& prescription);
std::optional<Support> supportOf(const Prescription& prescription, const ArchPlaces& places);

}  // namespace domain
