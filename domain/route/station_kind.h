/// The sorts of place in a laboratory where stages are worked.
#pragma once

#include "domain/base/codes.h"

namespace domain {

/// The sort of place a stage is worked at.
enum class StationKind : std::uint8_t {
    Reception,
    PlasterBench,
    SurveyBench,
    WaxBench,
    CastingRoom,
    DesignDesk,
    MachineRoom,
    FinishingBench,
    SetUpBench,
    ResinRoom,
    InspectionDesk,
    AtPractice,
};
template <>
inline constexpr std::array<EnumCode<StationKind>, 12> enumCodes<StationKind>{{
    {StationKind::Reception, "reception"},
    {StationKind::PlasterBench, "plaster-bench"},
    {StationKind::SurveyBench, "survey-bench"},
    {StationKind::WaxBench, "wax-bench"},
    {StationKind::CastingRoom, "casting-room"},
    {StationKind::DesignDesk, "design-desk"},
    {StationKind::MachineRoom, "machine-room"},
    {StationKind::FinishingBench, "finishing-bench"},
    {StationKind::SetUpBench, "set-up-bench"},
    {StationKind::ResinRoom, "resin-room"},
    {StationKind::InspectionDesk, "inspection-desk"},
    {StationKind::AtPractice, "at-practice"},
}};

}  // namespace domain
