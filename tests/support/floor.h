/// A laboratory to work orders in: people, equipment, lots and a site, and one order driven through
/// it by commands, as the actions drive it. Everything in it is invented.
#pragma once

#include <string>
#include <vector>

#include "domain/production/decide.h"

namespace support {

/// The first day of the floor: 2026-11-25. Calibrations hold to 2027-06-30, lots to 2027-12-31.
domain::Date floorDay();
/// `count` minutes into the morning of that day.
domain::Instant floorMinute(std::int64_t count);

/// What makes the floor: MK, a manager, TE, a technician, and IN, an inspector, each with every
/// skill; VW, a viewer with none; GO, who left; a piece of equipment and a lot of every kind; the
/// site CAST-SHOP.
std::vector<domain::WorkshopEvent> floorEvents();
/// The floor itself, folded from them.
domain::Workshop floorWorkshop();

domain::ThingCode thing(std::string_view code);
/// "lot-alloy", "lot-teeth"
domain::ThingCode lotOn(domain::LotKind kind);
/// "caster-1"
domain::ThingCode equipmentOn(domain::EquipmentKind kind);
/// A sealed text that stands for words somebody gave.
domain::SealedText sealedWords();
domain::Disinfection properDisinfection();

/// What one demand asks to be recorded; empty where nothing is (another person, legal contents).
std::vector<domain::StageRecord> recordsFor(const domain::Order& order, domain::Demand demand);
/// What opens the gate of a stage, as its order works it: every tick, and every demand's records.
std::vector<domain::StageRecord> everythingFor(const domain::Order& order, domain::Stage stage);

/// One order driven by commands. Every command takes a minute; lots shrink as they are used.
struct Bench {
    domain::Workshop workshop{floorWorkshop()};
    std::optional<domain::Order> order{};
    std::vector<domain::Event> events{};
    std::int64_t minutes{};
    std::string person{"MK"};
    std::optional<std::vector<domain::Finding>> legal{std::vector<domain::Finding>{}};

    /// Decides as the person at the next minute and takes what came of it.
    domain::Result<std::vector<domain::Event>> give(const domain::Command& command);
    /// Why a command is refused; fails the test when it is not, or when it left a trace.
    std::string refusal(const domain::Command& command);
    /// Brings the due stage to its end: recorded, finished or back from the practice.
    void passStage();
    /// Until this stage is due.
    void passUpTo(domain::Stage stage);
    /// Until it is delivered.
    void passAll();
    domain::Stage due() const;
    /// Records everything the gate of the due stage asks for.
    void recordAll();

private:
    void must(const domain::Command& command);
};

/// An order just received.
Bench benchOf(const domain::Prescription& prescription, std::vector<domain::Finding> findings = {});
/// The same, accepted.
Bench acceptedBench(const domain::Prescription& prescription);

/// A prescription that takes this route in this arch; Route::AlteredCast and Route::Remake are cast
/// frameworks that need those stages too.
domain::Prescription prescriptionOn(domain::Route route, domain::Arch arch);

}  // namespace support
