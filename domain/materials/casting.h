/// How much alloy a mould takes.
///
/// Source of the rule: published wax-to-metal conversion, mass of the pattern times the ratio of
/// the densities, and a tenth more for the button.
#pragma once

namespace domain {

/// Grams of alloy for a pattern of `pattern` g, sprues included: the same volume of metal, and
/// `button` g beside it. Densities in g/cm^3, that of the pattern above 0.
constexpr double alloyCharge(double pattern, double alloyDensity, double patternDensity,
                             double button) noexcept {
    return pattern * alloyDensity / patternDensity + button;
}

}  // namespace domain
