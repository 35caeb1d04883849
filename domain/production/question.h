/// What the laboratory asks the dentist: from the findings of the rules, or flagged at the bench.
#pragma once

#include "domain/base/codes.h"
#include "domain/rules/finding.h"

namespace domain {

/// Why a technician stopped the work. Every reason carries its question, ready to print.
enum class FlagReason : std::uint8_t {
    SurveyDataMissing,
    UndercutNotFound,
    CastDamaged,
    EnclosureMissing,
    ShadeUnclear,
    DesignUnclear,
    Other,
};
template <>
inline constexpr std::array<EnumCode<FlagReason>, 7> enumCodes<FlagReason>{{
    {FlagReason::SurveyDataMissing, "survey-data-missing"},
    {FlagReason::UndercutNotFound, "undercut-not-found"},
    {FlagReason::CastDamaged, "cast-damaged"},
    {FlagReason::EnclosureMissing, "enclosure-missing"},
    {FlagReason::ShadeUnclear, "shade-unclear"},
    {FlagReason::DesignUnclear, "design-unclear"},
    {FlagReason::Other, "other"},
}};

/// The question a flag puts to the dentist, in plain words.
std::string_view questionOf(FlagReason reason);

}  // namespace domain
