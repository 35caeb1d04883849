/// Denture base resin: what the standard asks of it, how it is mixed, and how it is cured.
///
/// Tables only; whether a logged cure kept its cycle is judged in cure_log.h.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "domain/base/codes.h"
#include "domain/base/quantity.h"
#include "domain/prescription/material.h"

namespace domain {

/// Where the monomer boils and makes pores. Published value for methyl methacrylate.
inline constexpr Temperature kMonomerBoils = Temperature::of(100'800);
/// From memory.
inline constexpr Density kMonomerDensity = Density::of(945);

/// What ISO 20795-1 asks of a type of resin. The residual monomer of 2.2 % is published (IJERSTE
/// 2016), and so is the division of types 1 and 2 at 65 C (the standard's definition of
/// autopolymerizable); the other figures are from memory.
struct ResinLimits {
    int type{};                ///< its number in the standard
    Megapascals strength{};    ///< flexural, at least
    Stiffness modulus{};       ///< flexural, at least
    Share residualMonomer{};   ///< of the mass, at most
    std::string_view cures{};  ///< in words
};
const ResinLimits& limitsOf(BaseResin resin) noexcept;

/// Powder that goes with a liquid.
struct ResinRatio {
    Milligrams powder{};
    Microlitres liquid{};
};
/// From memory and common practice; the same as three volumes to one.
inline constexpr ResinRatio kLeanestMix{21'000_mg, 10'000_ul};
inline constexpr ResinRatio kRichestMix{24'000_mg, 10'000_ul};

/// The liquid for a mass of powder, by either of the ways it is taught.
struct ResinMix {
    Between<Microlitres> byVolume{};      ///< 21 to 24 g to 10 ml
    Between<Milligrams> byMass{};         ///< 2.0 to 2.5 g to 1 g; from memory
    Between<Microlitres> byMassVolume{};  ///< the same, in ml of monomer
};
ResinMix resinMixFor(Milligrams powder) noexcept;

/// The published cycles of a water bath: first hold, minutes, and what follows.
enum class CureCycle : std::uint8_t {
    Long74,
    Long74Boil,
    Short74Boil,
    Long70Boil,
    Short65Boil,
    DirectBoil,
};
template <>
inline constexpr std::array<EnumCode<CureCycle>, 6> enumCodes<CureCycle>{{
    {CureCycle::Long74, "long-74"},
    {CureCycle::Long74Boil, "long-74-boil"},
    {CureCycle::Short74Boil, "short-74-boil"},
    {CureCycle::Long70Boil, "long-70-boil"},
    {CureCycle::Short65Boil, "short-65-boil"},
    {CureCycle::DirectBoil, "direct-boil"},
}};

struct CureHold {
    Temperature temperature{};
    Minutes length{};
};

struct CureProgramme {
    CureCycle cycle{};
    bool isLong{};       ///< slow enough for a thick section: seven hours or more before the boil
    bool boilsAtOnce{};  ///< published as a bad example
    std::span<const CureHold> holds;
    std::string_view source{};
};
std::span<const CureProgramme> cureProgrammes();
const CureProgramme& programmeOf(CureCycle cycle) noexcept;

/// "74 C for 480 min, then 100 C for 60 min".
std::string text(const CureProgramme& programme);

/// How the flask cools: a published range; secondary source.
inline constexpr Between<Minutes> kBenchCool{30_min, 60_min};
/// Sections thicker than the first want a long cycle, thicker than the second must have one; from
/// memory.
inline constexpr Microns kThickish = 3000_um;
inline constexpr Microns kThick = 5000_um;

}  // namespace domain
