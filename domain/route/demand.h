/// What a gate can demand: one word for each thing that must be on record before a stage is done.
#pragma once

#include "domain/base/codes.h"

namespace domain {

/// Each has one row, in production/gates.cpp: requirement, what to do, source and check.
enum class Demand : std::uint8_t {
    Undercuts,
    TripodMarks,
    Surveyor,
    InvestmentLot,
    Furnace,
    AlloyLot,
    NewMetal,
    CastMass,
    Caster,
    BlankLot,
    Mill,
    PowderLot,
    Printer,
    ToothLots,
    MouldAndShade,
    ResinLot,
    CureLog,
    CuringBath,
    OtherPerson,
    Disinfection,
    LegalFields,
    Statement,
};
template <>
inline constexpr std::array<EnumCode<Demand>, 22> enumCodes<Demand>{{
    {Demand::Undercuts, "undercuts"},
    {Demand::TripodMarks, "tripod-marks"},
    {Demand::Surveyor, "surveyor"},
    {Demand::InvestmentLot, "investment-lot"},
    {Demand::Furnace, "furnace"},
    {Demand::AlloyLot, "alloy-lot"},
    {Demand::NewMetal, "new-metal"},
    {Demand::CastMass, "cast-mass"},
    {Demand::Caster, "caster"},
    {Demand::BlankLot, "blank-lot"},
    {Demand::Mill, "mill"},
    {Demand::PowderLot, "powder-lot"},
    {Demand::Printer, "printer"},
    {Demand::ToothLots, "tooth-lots"},
    {Demand::MouldAndShade, "mould-and-shade"},
    {Demand::ResinLot, "resin-lot"},
    {Demand::CureLog, "cure-log"},
    {Demand::CuringBath, "curing-bath"},
    {Demand::OtherPerson, "other-person"},
    {Demand::Disinfection, "disinfection"},
    {Demand::LegalFields, "legal-fields"},
    {Demand::Statement, "statement"},
}};

}  // namespace domain
