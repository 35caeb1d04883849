/// What is recorded at a stage: ticks, measurements, lots, masses, equipment, disinfection. What a
/// gate asks for is looked up here; what was recorded in an attempt that was redone stays.
#pragma once

#include <variant>

#include "domain/base/id.h"
#include "domain/base/quantity.h"
#include "domain/base/sealed_text.h"
#include "domain/materials/lot.h"
#include "domain/workshop/equipment.h"

namespace domain {

/// A line of the stage's checklist.
struct Ticked {
    std::string item{};
    friend bool operator==(const Ticked&, const Ticked&) = default;
};
/// The undercut at the tip of a retentive arm, as the gauge shows it on the cast.
struct UndercutMeasured {
    Tooth tooth{11_fdi};
    Microns depth{};
    friend bool operator==(const UndercutMeasured&, const UndercutMeasured&) = default;
};
struct TripodMarked {
    friend bool operator==(const TripodMarked&, const TripodMarked&) = default;
};
/// What an order took of a lot: milligrams, or pieces of teeth.
struct LotUsed {
    ThingCode lot{blankThingCode()};
    LotKind kind{};
    std::int64_t amount{};
    friend bool operator==(const LotUsed&, const LotUsed&) = default;
};
/// How much of the melt was new metal; the rest had been cast before.
struct NewMetal {
    Share share{};
    friend bool operator==(const NewMetal&, const NewMetal&) = default;
};
/// Mass of the casting without sprues and button.
struct CastWeighed {
    Milligrams mass{};
    friend bool operator==(const CastWeighed&, const CastWeighed&) = default;
};
/// The artificial teeth as they were set.
struct TeethSet {
    std::string mould{};
    std::string guide{};
    std::string tab{};
    friend bool operator==(const TeethSet&, const TeethSet&) = default;
};
/// The log of a cure, read and judged against its cycle.
struct CureLogged {
    std::string cycle{};   ///< code of the cycle
    std::string sha256{};  ///< of the log's file, 64 hexadecimal digits
    bool kept{};           ///< the log keeps the cycle
    friend bool operator==(const CureLogged&, const CureLogged&) = default;
};
struct Disinfected {
    Disinfection disinfection{};
    friend bool operator==(const Disinfected&, const Disinfected&) = default;
};
/// Equipment that was used; overdue only where somebody took responsibility in writing.
struct EquipmentUsed {
    ThingCode equipment{blankThingCode()};
    EquipmentKind kind{};
    std::optional<SealedText> responsibility{};
    friend bool operator==(const EquipmentUsed&, const EquipmentUsed&) = default;
};
/// A computed or weighed value of the bench, with its unit: "alloy charge", "42.3 g".
struct BenchValue {
    std::string what{};
    std::string value{};
    friend bool operator==(const BenchValue&, const BenchValue&) = default;
};
/// The statement for a custom-made device, as it was issued.
struct StatementIssued {
    SealedText statement{};
    friend bool operator==(const StatementIssued&, const StatementIssued&) = default;
};

using StageRecord =
    std::variant<Ticked, UndercutMeasured, TripodMarked, LotUsed, NewMetal, CastWeighed, TeethSet,
                 CureLogged, Disinfected, EquipmentUsed, BenchValue, StatementIssued>;

/// The stable word of each, in the order of the variant.
enum class RecordKind : std::uint8_t {
    Ticked,
    UndercutMeasured,
    TripodMarked,
    LotUsed,
    NewMetal,
    CastWeighed,
    TeethSet,
    CureLogged,
    Disinfected,
    EquipmentUsed,
    BenchValue,
    StatementIssued,
};
template <>
inline constexpr std::array<EnumCode<RecordKind>, 12> enumCodes<RecordKind>{{
    {RecordKind::Ticked, "ticked"},
    {RecordKind::UndercutMeasured, "undercut-measured"},
    {RecordKind::TripodMarked, "tripod-marked"},
    {RecordKind::LotUsed, "lot-used"},
    {RecordKind::NewMetal, "new-metal"},
    {RecordKind::CastWeighed, "cast-weighed"},
    {RecordKind::TeethSet, "teeth-set"},
    {RecordKind::CureLogged, "cure-logged"},
    {RecordKind::Disinfected, "disinfected"},
    {RecordKind::EquipmentUsed, "equipment-used"},
    {RecordKind::BenchValue, "bench-value"},
    {RecordKind::StatementIssued, "statement-issued"},
}};
inline RecordKind kindOf(const StageRecord& record) {
    return static_cast<RecordKind>(record.index());
}

/// "undercut of 14: 0.25 mm", "lot AL-204: 23.4 g": for people; teeth in their notation.
std::string tellRecord(const StageRecord& record, Notation notation);

}  // namespace domain
