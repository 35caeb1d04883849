/// About how heavy the framework will be: the volumes of its parts times the density of the alloy.
///
/// The sections of the parts are usual ones (common practice, no source); the sum is doubted by
/// three tenths either way. Its check from outside: frameworks of titanium and of cobalt-chromium
/// differed by 1.3 to 3.9 g (Mori et al., Journal of Oral Rehabilitation 1997), which makes 0.33 to
/// 1.00 cm^3 of metal.
#pragma once

#include "domain/base/range.h"
#include "domain/design/saddle_span.h"

namespace domain {

/// cm^3 of metal; nullopt where no framework is described.
std::optional<Range> frameworkVolume(const Prescription& prescription,
                                     std::span<const SaddleSpan> saddles,
                                     std::optional<ConnectorSpan> connector);

/// Grams; nullopt as above, or where the material is not given.
std::optional<Range> frameworkMass(const Prescription& prescription,
                                   const std::optional<Range>& volume);

}  // namespace domain
