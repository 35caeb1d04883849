/// Powders that are mixed with a liquid, and how an investment mould is burnt out.
///
/// Defaults for the bench, as ranges with their sources: what the maker prints on the packet goes
/// before them.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "domain/base/codes.h"
#include "domain/base/quantity.h"
#include "domain/base/result.h"
#include "domain/prescription/material.h"

namespace domain {

enum class MixedPowder : std::uint8_t { Plaster, Stone, DieStone, PhosphateInvestment };
template <>
inline constexpr std::array<EnumCode<MixedPowder>, 4> enumCodes<MixedPowder>{{
    {MixedPowder::Plaster, "plaster"},
    {MixedPowder::Stone, "stone"},
    {MixedPowder::DieStone, "die-stone"},
    {MixedPowder::PhosphateInvestment, "phosphate-investment"},
}};

/// The liquid a powder takes. Where schools disagree, both ranges are kept.
struct MixingRule {
    Between<MixRatio> usual{};
    std::string_view source{};
    std::optional<Between<MixRatio>> alsoTaught{};
    std::string_view alsoSource{};
};
const MixingRule& mixingRuleOf(MixedPowder powder) noexcept;

/// The part of an investment's liquid that is special liquid, the rest being water; from memory.
inline constexpr Share kSpecialLiquid = 500'000_ppm;

struct Mix {
    Between<MixRatio> ratio{};
    Between<Microlitres> liquid{};
    /// Of the liquid of an investment; gypsum takes water alone.
    std::optional<Between<Microlitres>> specialLiquid{};
    std::optional<Between<Microlitres>> water{};
    std::string_view source{};
};

/// The liquid for a mass of powder, by the usual range or a given ratio. ErrorCode::Refused: no
/// powder, or a ratio that no school teaches; the message names the ranges.
Result<Mix> mixFor(MixedPowder powder, Milligrams mass, std::optional<MixRatio> ratio = {});

/// One stretch of a burn-out: heating at a rate, then keeping. The figures the schedule runs with,
/// and the ranges that are taught.
struct BurnOutStep {
    HeatingRate rate{};
    Temperature target{};
    Minutes hold{};
    Between<HeatingRate> rates{};
    Between<Temperature> targets{};
    Between<Minutes> holds{};
    std::string_view source{};
};

/// nullopt: no schedule is known here for moulds of this material.
std::optional<std::span<const BurnOutStep>> burnOutOf(FrameworkMaterial material) noexcept;

/// Where the furnace starts.
inline constexpr Temperature kRoom = 20_C;

/// Minutes since the furnace was switched on, a begun minute counted as one.
struct BurnOutClock {
    Minutes starts{};
    Minutes reached{};
    Minutes ends{};
};
/// One line a step; the last one's end is the total time.
std::vector<BurnOutClock> clockOf(std::span<const BurnOutStep> steps);

}  // namespace domain
