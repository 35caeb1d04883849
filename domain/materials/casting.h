/// How much alloy a mould takes.
///
/// Source of the rule: published wax-to-metal conversion, mass of the pattern times the ratio of
/// the densities, and a tenth more for the button.
#pragma once

#include <optional>
#include <string>

#include "domain/base/quantity.h"
#include "domain/base/result.h"
#include "domain/prescription/material.h"

namespace domain {

/// The alloy for a pattern, sprues included: the same volume of metal, and the button beside it.
/// The pattern's density must be above 0.
constexpr Milligrams alloyCharge(Milligrams pattern, Density alloy, Density patternDensity,
                                 Milligrams button) noexcept {
    return Milligrams::of(
               nearestQuotient(pattern.count() * alloy.count(), patternDensity.count())) +
           button;
}

/// The published rule for the button where none is weighed: a tenth of the metal.
constexpr Milligrams buttonFor(Milligrams metal) noexcept {
    return Milligrams::of(nearestQuotient(metal.count(), 10));
}

/// Dental casting wax; from memory.
inline constexpr Between<Density> kWaxDensity{Density::of(900), Density::of(970)};
/// What a pattern of wax or resin, and an alloy, can weigh at all: a decimal point gone astray is
/// noticed. Common practice, no source.
inline constexpr Between<Density> kPossiblePattern{Density::of(500), Density::of(2000)};
inline constexpr Between<Density> kPossibleAlloy{Density::of(2000), Density::of(25'000)};

/// A mould to be cast. Densities that are not given come from the tables.
struct Mould {
    FrameworkMaterial material{};
    Milligrams framework{};  ///< its pattern
    Milligrams sprues{};
    std::optional<Milligrams> button{};  ///< a tenth of the metal where it is not given
    std::optional<Density> alloy{};
    std::optional<Density> pattern{};
};

struct AlloyCharge {
    Milligrams pattern{};  ///< with its sprues
    Between<Density> alloyDensity{};
    std::string alloySource;
    Between<Density> patternDensity{};
    std::string patternSource;
    Between<Milligrams> metal{};  ///< as much as the pattern and the sprues take
    Between<Milligrams> button{};
    std::string buttonSource;
    Between<Milligrams> charge{};  ///< metal and button
};

/// ErrorCode::Refused: the material is not cast, the pattern weighs nothing, or a density is none.
Result<AlloyCharge> chargeFor(const Mould& mould);

}  // namespace domain
