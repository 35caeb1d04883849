/// Why work is done again: reasons and verdicts with a word each, so that they can be counted.
#pragma once

#include "domain/base/codes.h"

namespace domain {

/// Why a stage is done again within the same order.
enum class RedoReason : std::uint8_t {
    IncompleteCasting,
    Porosity,
    Distortion,
    Fracture,
    PoorFit,
    DamagedCast,
    ToothPosition,
    WrongShade,
    ResinPorosity,
    CureFailed,
    FailedInspection,
    ReturnedByDentist,
    Other,
};
template <>
inline constexpr std::array<EnumCode<RedoReason>, 13> enumCodes<RedoReason>{{
    {RedoReason::IncompleteCasting, "incomplete-casting"},
    {RedoReason::Porosity, "porosity"},
    {RedoReason::Distortion, "distortion"},
    {RedoReason::Fracture, "fracture"},
    {RedoReason::PoorFit, "poor-fit"},
    {RedoReason::DamagedCast, "damaged-cast"},
    {RedoReason::ToothPosition, "tooth-position"},
    {RedoReason::WrongShade, "wrong-shade"},
    {RedoReason::ResinPorosity, "resin-porosity"},
    {RedoReason::CureFailed, "cure-failed"},
    {RedoReason::FailedInspection, "failed-inspection"},
    {RedoReason::ReturnedByDentist, "returned-by-dentist"},
    {RedoReason::Other, "other"},
}};

/// What the dentist decides after a try-in.
enum class ReturnVerdict : std::uint8_t { GoOn, GoBack, Remake };
template <>
inline constexpr std::array<EnumCode<ReturnVerdict>, 3> enumCodes<ReturnVerdict>{{
    {ReturnVerdict::GoOn, "go-on"},
    {ReturnVerdict::GoBack, "go-back"},
    {ReturnVerdict::Remake, "remake"},
}};

}  // namespace domain
