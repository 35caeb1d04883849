/// What stands in the laboratory, and where else work is done: equipment with its calibration, and
/// the sites of others that take work.
#pragma once

#include <optional>
#include <string>

#include "domain/base/codes.h"
#include "domain/base/date.h"

namespace domain {

enum class EquipmentKind : std::uint8_t { Surveyor, Furnace, Caster, CuringBath, Mill, Printer };
template <>
inline constexpr std::array<EnumCode<EquipmentKind>, 6> enumCodes<EquipmentKind>{{
    {EquipmentKind::Surveyor, "surveyor"},
    {EquipmentKind::Furnace, "furnace"},
    {EquipmentKind::Caster, "caster"},
    {EquipmentKind::CuringBath, "curing-bath"},
    {EquipmentKind::Mill, "mill"},
    {EquipmentKind::Printer, "printer"},
}};

struct Equipment {
    EquipmentKind kind{};
    std::string serial{};  ///< as its maker marks it
    /// The last day its calibration holds; nullopt: it needs none.
    std::optional<Date> calibrationDue{};
    friend bool operator==(const Equipment&, const Equipment&) = default;
};

/// Another laboratory that makes a part of an order. Business data, kept in the ledger.
struct Site {
    std::string name{};
    std::string address{};
    std::string registration{};  ///< where its law asks for one; may be empty
    friend bool operator==(const Site&, const Site&) = default;
};

}  // namespace domain
