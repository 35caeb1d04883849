#include "tests/support/floor.h"

#include <gtest/gtest.h>

#include "domain/production/evolve.h"
#include "tests/support/designs.h"

namespace support {

using namespace domain;

namespace {

constexpr std::int64_t kMicrosecondsPerMinute = 60'000'000;
constexpr std::int64_t kMinutesPerDay = 24 * 60;

Certificate certificateOf(LotKind kind) {
    if (isFrameworkMetal(kind))
        return {.material = FrameworkMaterial::CobaltChromium,
                .type = AlloyType::Type5,
                .nickel = 0_ppm,
                .beryllium = 0_ppm,
                .cadmium = 0_ppm};
    if (kind == LotKind::ResinPowder || kind == LotKind::ResinLiquid)
        return {.resin = BaseResin::HeatCured, .methacrylateFree = false};
    return {};
}

Lot lotFor(LotKind kind) {
    return {.kind = kind,
            .maker = "Southmere Materials",
            .product = "stock " + std::string{codeOf(kind)},
            .makersNumber = "N-" + std::string{codeOf(kind)},
            .expiry = Date::parse("2027-12-31"),
            .certificate = certificateOf(kind),
            .amount = kind == LotKind::Teeth ? 10'000 : 1'000'000};
}

std::vector<Skill> everySkill() {
    std::vector<Skill> skills;
    for (const auto& code : enumCodes<Skill>) skills.push_back(code.value);
    return skills;
}

/// Gathers the events of a floor in order.
struct Setting {
    Workshop workshop{};
    std::vector<WorkshopEvent> events{};

    void add(SubjectKind kind, std::string_view code, WorkshopHappening what) {
        const auto event = decide(workshop, {kind, std::string{code}}, std::move(what),
                                  {.at = floorMinute(0),
                                   .person = *PersonCode::parse("MK"),
                                   .key = "floor-" + std::to_string(events.size())});
        ASSERT_TRUE(event) << event.error().message;
        workshop = evolve(std::move(workshop), *event);
        events.push_back(*event);
    }
};

/// The retentive tips as prescribed, and where nothing is prescribed 0.25 mm.
std::vector<StageRecord> undercutsOf(const Prescription& prescription) {
    std::vector<StageRecord> records;
    for (const Clasp& clasp : prescription.clasps)
        if (clasp.retentiveArm)
            records.emplace_back(UndercutMeasured{
                clasp.tooth,
                clasp.undercut && clasp.undercut->depth ? *clasp.undercut->depth : 250_um});
    return records;
}

TeethSet teethAsPrescribed(const Prescription& prescription) {
    if (prescription.shades.empty()) return {"M-12", "A-D scale", "A3"};
    return {"M-12", prescription.shades.front().guide, prescription.shades.front().tab};
}

constexpr std::int64_t kPiece = 1;

}  // namespace

Date floorDay() { return *Date::parse("2026-11-25"); }

Instant floorMinute(std::int64_t count) {
    return Instant::ofMicroseconds((floorDay().days() * kMinutesPerDay + count) *
                                   kMicrosecondsPerMinute);
}

std::vector<WorkshopEvent> floorEvents() {
    Setting floor;
    floor.add(SubjectKind::Person, "MK", PersonEntered{Role::Manager, everySkill()});
    floor.add(SubjectKind::Person, "TE", PersonEntered{Role::Technician, everySkill()});
    floor.add(SubjectKind::Person, "IN", PersonEntered{Role::Inspector, everySkill()});
    floor.add(SubjectKind::Person, "VW", PersonEntered{Role::Viewer, {}});
    floor.add(SubjectKind::Person, "GO", PersonEntered{Role::Technician, everySkill()});
    floor.add(SubjectKind::Person, "GO", PersonLeft{});
    for (const auto& kind : enumCodes<EquipmentKind>)
        floor.add(SubjectKind::Equipment, equipmentOn(kind.value).text(),
                  EquipmentEntered{
                      {kind.value, "S-" + std::string{kind.word}, Date::parse("2027-06-30")}});
    for (const auto& kind : enumCodes<LotKind>)
        floor.add(SubjectKind::Lot, lotOn(kind.value).text(), LotReceived{lotFor(kind.value)});
    floor.add(SubjectKind::Site, "CAST-SHOP",
              SiteEntered{{"Harbour Street Casting Shop", "2 Harbour Street, Easthaven", {}}});
    return floor.events;
}

Workshop floorWorkshop() {
    static const Workshop kFloor = [] {
        Workshop workshop;
        for (const WorkshopEvent& event : floorEvents())
            workshop = evolve(std::move(workshop), event);
        return workshop;
    }();
    return kFloor;
}

ThingCode thing(std::string_view code) { return *ThingCode::parse(code); }

ThingCode lotOn(LotKind kind) { return thing("lot-" + std::string{codeOf(kind)}); }

ThingCode equipmentOn(EquipmentKind kind) { return thing(std::string{codeOf(kind)} + "-1"); }

SealedText sealedWords() { return {"T000001", std::string(64, 'a')}; }

Disinfection properDisinfection() { return {"sodium hypochlorite 0.5 %", 10_min}; }

std::vector<StageRecord> recordsFor(const Order& order, Demand demand) {
    const auto lot = [](LotKind kind, std::int64_t amount) -> std::vector<StageRecord> {
        return {LotUsed{lotOn(kind), kind, amount}};
    };
    const auto equipment = [](EquipmentKind kind) -> std::vector<StageRecord> {
        return {EquipmentUsed{equipmentOn(kind), kind, {}}};
    };
    switch (demand) {
        case Demand::Undercuts:
            return undercutsOf(order.prescription());
        case Demand::TripodMarks:
            return {TripodMarked{}};
        case Demand::Surveyor:
            return equipment(EquipmentKind::Surveyor);
        case Demand::InvestmentLot:
            return lot(LotKind::Investment, 200);
        case Demand::Furnace:
            return equipment(EquipmentKind::Furnace);
        case Demand::AlloyLot:
            return lot(LotKind::Alloy, 30);
        case Demand::NewMetal:
            return {NewMetal{1'000'000_ppm}};
        case Demand::CastMass:
            return {CastWeighed{18'400_mg}};
        case Demand::Caster:
            return equipment(EquipmentKind::Caster);
        case Demand::BlankLot:
            return lot(LotKind::MillingBlank, 90);
        case Demand::Mill:
            return equipment(EquipmentKind::Mill);
        case Demand::PowderLot:
            return lot(LotKind::MetalPowder, 25);
        case Demand::Printer:
            return equipment(EquipmentKind::Printer);
        case Demand::ToothLots:
            return lot(LotKind::Teeth, kPiece);
        case Demand::MouldAndShade:
            return {teethAsPrescribed(order.prescription())};
        case Demand::ResinLot:
            return lot(LotKind::ResinPowder, 21);
        case Demand::CureLog:
            return {CureLogged{"long-74", std::string(64, 'b'), true}};
        case Demand::CuringBath:
            return equipment(EquipmentKind::CuringBath);
        case Demand::Disinfection:
            return {Disinfected{properDisinfection()}};
        case Demand::Statement:
            return {StatementIssued{sealedWords()}};
        case Demand::OtherPerson:
        case Demand::LegalFields:
            return {};
    }
    return {};
}

std::vector<StageRecord> everythingFor(const Order& order, Stage stage) {
    const StagePlan plan = planOf(order, stage);
    std::vector<StageRecord> records;
    for (const std::string& item : plan.checklist) records.emplace_back(Ticked{item});
    for (const Demand demand : plan.demands)
        for (StageRecord& record : recordsFor(order, demand)) records.push_back(std::move(record));
    return records;
}

Result<std::vector<Event>> Bench::give(const Command& command) {
    ++minutes;
    auto given = decide(order, command,
                        {.at = floorMinute(minutes),
                         .person = *PersonCode::parse(person),
                         .key = "key-" + std::to_string(minutes),
                         .workshop = workshop,
                         .station = {},
                         .legal = legal});
    if (!given) return given;
    for (const Event& event : *given) {
        order = evolve(order, event);
        events.push_back(event);
        if (const auto* recorded = std::get_if<Recorded>(&event.what))
            for (const StageRecord& record : recorded->records)
                if (const auto* use = std::get_if<LotUsed>(&record))
                    workshop.lots.at(use->lot).used += use->amount;
    }
    return given;
}

std::string Bench::refusal(const Command& command) {
    const auto before = order;
    const auto given = give(command);
    EXPECT_FALSE(given) << "was not refused";
    EXPECT_EQ(order, before);
    return given ? "was not refused" : given.error().message;
}

void Bench::must(const Command& command) {
    const auto given = give(command);
    ASSERT_TRUE(given) << given.error().message;
}

Stage Bench::due() const { return currentStep(*order)->stage; }

void Bench::recordAll() {
    if (const auto records = everythingFor(*order, due()); !records.empty())
        must(Record{{}, records});
}

void Bench::passStage() {
    const std::string usual = person;
    if (due() == Stage::Inspection) person = "IN";
    const bool atPractice = rowOf(due()).kind == StageKind::AtPractice;
    if (atPractice) recordAll();
    must(Start{});
    if (!atPractice) recordAll();
    if (atPractice)
        must(TakeReturn{ReturnVerdict::GoOn, {}, {}, properDisinfection()});
    else
        must(Finish{});
    person = usual;
}

void Bench::passUpTo(Stage stage) {
    while (!testing::Test::HasFatalFailure() && order->status == OrderStatus::InWork &&
           due() != stage)
        passStage();
}

void Bench::passAll() {
    while (!testing::Test::HasFatalFailure() && order->status == OrderStatus::InWork) passStage();
}

Bench benchOf(const Prescription& prescription, std::vector<Finding> findings) {
    Bench bench;
    const auto given = bench.give(Receive{
        *OrderNumber::make(26, 1),
        {withoutIdentity(prescription), {"P00001", "D00001", sealedWords()}, std::move(findings)},
        {}});
    EXPECT_TRUE(given);
    return bench;
}

Bench acceptedBench(const Prescription& prescription) {
    Bench bench = benchOf(prescription);
    const auto given = bench.give(Accept{});
    EXPECT_TRUE(given) << (given ? "" : given.error().message);
    return bench;
}

Prescription prescriptionOn(Route route, Arch arch) {
    Prescription made = arch == Arch::Upper ? upperClassIIIMod1() : lowerClassI();
    const auto changed = [&](Appliance appliance) {
        made.appliance = appliance;
        made.framework = {};
    };
    switch (route) {
        case Route::CastFramework:
            break;
        case Route::MilledFramework:
            made.framework.making = FrameworkMaking::Milled;
            break;
        case Route::PrintedFramework:
            made.framework.making = FrameworkMaking::Printed;
            break;
        case Route::InterimResin:
            changed(Appliance::InterimResin);
            break;
        case Route::Repair:
            changed(Appliance::Repair);
            break;
        case Route::Addition:
            changed(Appliance::Addition);
            break;
        case Route::Reline:
            changed(Appliance::Reline);
            break;
        case Route::AlteredCast:
            made.alteredCast = true;
            break;
        case Route::Remake:
            made.remake = Remake{RemakeReason::Fractured};
            break;
    }
    return made;
}

}  // namespace support
