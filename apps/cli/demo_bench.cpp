#include "apps/cli/demo_bench.h"

#include <fstream>

#include "apps/actions/bench.h"
#include "apps/actions/lots.h"
#include "apps/actions/people.h"
#include "apps/actions/statements.h"
#include "apps/actions/workshop.h"

namespace cli {
namespace {

using actions::GivenRecord;
using domain::Demand;
using domain::Done;
using domain::EquipmentKind;
using domain::LotKind;
using domain::Order;
using domain::OrderNumber;
using domain::Result;
using domain::Stage;

domain::ThingCode thing(std::string_view code) { return *domain::ThingCode::parse(code); }
domain::Date day(std::string_view text) { return *domain::Date::parse(text); }

std::vector<domain::Skill> everySkill() {
    std::vector<domain::Skill> skills;
    skills.reserve(domain::enumCodes<domain::Skill>.size());
    for (const auto& [skill, word] : domain::enumCodes<domain::Skill>) skills.push_back(skill);
    return skills;
}

struct DemoEquipment {
    std::string_view code;
    EquipmentKind kind;
    std::string_view serial;
    std::string_view due;
};
constexpr DemoEquipment kEquipment[] = {
    {"surveyor-1", EquipmentKind::Surveyor, "S-118", "2027-03-31"},
    {"furnace-1", EquipmentKind::Furnace, "F-204", "2026-10-31"},  // overdue
    {"furnace-2", EquipmentKind::Furnace, "F-311", "2027-06-30"},
    {"caster-1", EquipmentKind::Caster, "K-77", "2027-01-31"},
    {"bath-1", EquipmentKind::CuringBath, "B-09", "2027-02-28"}};

struct DemoLot {
    std::string_view code;
    LotKind kind;
    std::string_view maker;
    std::string_view product;
    std::string_view number;
    std::string_view expiry;
    std::int64_t amount;
};
/// Makers, products and numbers are invented.
constexpr DemoLot kLots[] = {
    {"AL-1", LotKind::Alloy, "Tern Alloys", "Co-Cr, castable", "77-A-0412", "2031-01-31",
     2'000'000},
    {"IN-1", LotKind::Investment, "Tern Alloys", "investment, phosphate bonded", "P-5530",
     "2027-04-30", 20'000'000},
    {"TE-1", LotKind::Teeth, "Gannet Teeth", "polymer teeth, A3", "G-2209", "2034-12-31", 280},
    {"RP-1", LotKind::ResinPowder, "Plover Resins", "base resin, heat cured, powder", "R-881",
     "2028-05-31", 5'000'000},
    {"RP-0", LotKind::ResinPowder, "Plover Resins", "base resin, heat cured, powder", "R-640",
     "2026-10-31", 1'000'000},  // expired
    {"RL-1", LotKind::ResinLiquid, "Plover Resins", "base resin, liquid", "L-118", "2027-11-30",
     2'000'000}};

domain::Certificate certificateOf(const DemoLot& lot) {
    if (lot.kind == LotKind::Alloy)
        return {.material = domain::FrameworkMaterial::CobaltChromium,
                .type = domain::AlloyType::Type5,
                .nickel = domain::Share::of(0),
                .beryllium = domain::Share::of(0),
                .cadmium = domain::Share::of(0)};
    if (lot.kind == LotKind::ResinPowder)
        return {.resin = domain::BaseResin::HeatCured, .methacrylateFree = false};
    return {};
}

/// How much of each kind a denture takes here, and of which lot. Invented.
struct DemoUse {
    Demand demand;
    std::string_view lot;
    std::int64_t amount;
};
constexpr DemoUse kUses[] = {{Demand::InvestmentLot, "IN-1", 300'000},
                             {Demand::AlloyLot, "AL-1", 24'600},
                             {Demand::ToothLots, "TE-1", 6},
                             {Demand::ResinLot, "RP-1", 12'000}};

struct DemoMachine {
    Demand demand;
    std::string_view code;
};
constexpr DemoMachine kMachines[] = {{Demand::Surveyor, "surveyor-1"},
                                     {Demand::Furnace, "furnace-2"},
                                     {Demand::Caster, "caster-1"},
                                     {Demand::CuringBath, "bath-1"}};

/// A log that keeps 74 C for eight hours; invented.
void writeCureLog(const std::filesystem::path& file) {
    std::ofstream log{file};
    log << "minutes,celsius\n";
    const auto line = [&](int minute, int celsius) { log << minute << ',' << celsius << '\n'; };
    for (int minute = 0; minute <= 50; minute += 5) line(minute, 20 + minute * 54 / 50);
    for (int minute = 55; minute <= 540; minute += 5) line(minute, 74);
    for (int minute = 545; minute <= 600; minute += 5) line(minute, 74 - (minute - 540) * 40 / 60);
}

void addUndercuts(const Order& order, std::vector<GivenRecord>& records) {
    for (const domain::Clasp& clasp : order.prescription().clasps)
        if (clasp.retentiveArm && clasp.undercut && clasp.undercut->depth)
            records.push_back({domain::UndercutMeasured{clasp.tooth, *clasp.undercut->depth}, {}});
}

domain::TeethSet teethOf(const Order& order) {
    const auto& shades = order.prescription().shades;
    const domain::Shade shade = shades.empty() ? domain::Shade{"A-D scale", "A3"} : shades.front();
    return {"G-31", shade.guide, shade.tab};
}

}  // namespace

void DemoClock::passMinutes(std::int64_t count) {
    now_ = domain::Instant::ofMicroseconds(now_.microseconds() + count * kMicrosecondsPerMinute);
}

Result<Done> DemoBench::open() {
    if (auto people = enterPeople(); !people) return people;
    auto head = actions::writeLetterhead(
        laboratory_,
        {"Westhaven Prosthetic Workshop", "1 Tide Street, Westhaven", "bench@westhaven.example"},
        who(kManager));
    if (!head) return head;
    if (auto things = enterThings(); !things) return things;
    return receiveLots();
}

actions::Who DemoBench::who(std::string_view code) {
    clock_.passMinutes(4);
    const auto person = *domain::PersonCode::parse(code);
    const actions::Secret password{kDemoPassword};
    const auto session = actions::signIn(laboratory_, person, password, {});
    return actions::proving({.person = person, .token = session ? session->token : std::string{}},
                            password);
}

Result<Done> DemoBench::enterPeople() {
    const std::pair<std::string_view, domain::Role> people[] = {
        {kTechnician, domain::Role::Technician}, {kInspector, domain::Role::Inspector}};
    const auto manager = *domain::PersonCode::parse(kManager);
    const auto made =
        actions::setUp(laboratory_, manager, everySkill(), actions::Secret{kDemoPassword});
    if (!made) return made.error();
    for (const auto& [code, role] : people) {
        const auto person = *domain::PersonCode::parse(code);
        auto entered = actions::enterPerson(laboratory_, person, role, everySkill(), who(kManager));
        if (!entered) return entered;
        const auto once = actions::resetPassword(laboratory_, person, who(kManager));
        if (!once) return once.error();
        auto own =
            actions::givePassword(laboratory_, person, *once, actions::Secret{kDemoPassword});
        if (!own) return own;
    }
    return Done{};
}

Result<Done> DemoBench::enterThings() {
    for (const DemoEquipment& each : kEquipment) {
        const auto entered = actions::enterEquipment(
            laboratory_, thing(each.code), {each.kind, std::string{each.serial}, day(each.due)},
            who(kManager));
        if (!entered) return entered.error();
    }
    const auto site = actions::enterSite(
        laboratory_, thing("north-foundry"),
        {"North Foundry for Dental Castings", "2 Kiln Road, Northolm", "NF-12"}, who(kManager));
    if (!site) return site.error();
    return Done{};
}

Result<Done> DemoBench::receiveLots() {
    for (const DemoLot& each : kLots) {
        const domain::Lot lot{.kind = each.kind,
                              .maker = std::string{each.maker},
                              .product = std::string{each.product},
                              .makersNumber = std::string{each.number},
                              .udi = {},
                              .expiry = day(each.expiry),
                              .certificate = certificateOf(each),
                              .amount = each.amount};
        const auto received =
            actions::receiveLot(laboratory_, thing(each.code), lot, who(kTechnician));
        if (!received) return received.error();
    }
    return Done{};
}

Result<std::vector<GivenRecord>> DemoBench::recordsFor(const Order& order, Stage stage) const {
    std::vector<GivenRecord> records;
    const auto add = [&](domain::StageRecord record) {
        records.push_back({std::move(record), {}});
    };
    const domain::StagePlan plan = planOf(order, stage);
    const auto asks = [&](Demand demand) { return std::ranges::count(plan.demands, demand) > 0; };
    for (const std::string& item : plan.checklist) add(domain::Ticked{item});
    if (asks(Demand::Undercuts)) addUndercuts(order, records);
    if (asks(Demand::TripodMarks)) add(domain::TripodMarked{});
    for (const DemoUse& use : kUses)
        if (asks(use.demand)) add(domain::LotUsed{thing(use.lot), {}, use.amount});
    for (const DemoMachine& machine : kMachines)
        if (asks(machine.demand)) add(domain::EquipmentUsed{thing(machine.code), {}, {}});
    if (asks(Demand::NewMetal)) add(domain::NewMetal{domain::Share::of(600'000)});
    if (asks(Demand::CastMass)) add(domain::CastWeighed{domain::Milligrams::of(18'200)});
    if (asks(Demand::MouldAndShade)) add(teethOf(order));
    if (asks(Demand::Disinfection))
        add(domain::Disinfected{{"alcohol 70 %", domain::Minutes::of(5)}});
    if (asks(Demand::CureLog)) {
        const auto file = laboratory_.folder() / "cure-log.csv";
        writeCureLog(file);
        const auto judged =
            actions::judgeCureLog(file, domain::CureCycle::Long74, domain::Microns::of(4000));
        if (!judged) return judged.error();
        for (const domain::StageRecord& record : actions::recordsOf(*judged)) add(record);
    }
    return records;
}

Result<Done> DemoBench::recordAll(const OrderNumber& number) {
    const auto view = actions::order(laboratory_, number);
    if (!view) return view.error();
    const Stage stage = currentStep(view->order)->stage;
    const auto records = recordsFor(view->order, stage);
    if (!records) return records.error();
    const auto person = stage == Stage::Inspection ? kInspector : kTechnician;
    if (!records->empty())
        if (const auto kept = actions::record(laboratory_, number, stage, *records, who(person));
            !kept)
            return kept.error();
    if (stage != Stage::Delivery) return Done{};
    const auto issued = actions::issueStatement(
        laboratory_, number,
        {.representative = "none", .institution = "none", .substances = "none", .conforms = true},
        who(kInspector));
    if (!issued) return issued.error();
    return Done{};
}

Result<Order> DemoBench::workStage(const OrderNumber& number) {
    const auto view = actions::order(laboratory_, number);
    if (!view) return view.error();
    const domain::StageStep step = *currentStep(view->order);
    const auto person = step.stage == Stage::Inspection ? kInspector : kTechnician;
    const bool away = rowOf(step.stage).kind == domain::StageKind::AtPractice;
    if (away)
        if (auto recorded = recordAll(number); !recorded) return recorded.error();
    if (step.status == domain::StageStatus::ToDo) {
        const auto started = actions::start(laboratory_, {number}, step.stage, who(person));
        if (!started) return started.error();
        if (away) return started->order;
    }
    if (auto recorded = recordAll(number); !recorded) return recorded.error();
    const auto finished = actions::finish(laboratory_, {number}, step.stage, who(person));
    if (!finished) return finished.error();
    return finished->order;
}

Result<Order> DemoBench::workUpTo(const OrderNumber& number, Stage last) {
    while (true) {
        auto order = workStage(number);
        if (!order) return order;
        const domain::StageStep* step = currentStep(*order);
        const bool away = step != nullptr && step->status == domain::StageStatus::InHand;
        if (away) {
            clock_.passDays(2);
            order = comeBack(number, {.verdict = domain::ReturnVerdict::GoOn,
                                      .findings = "fits; go on",
                                      .disinfection = {"alcohol 70 %", domain::Minutes::of(5)}});
            if (!order) return order;
        }
        const auto at = std::ranges::find(order->steps, last, &domain::StageStep::stage);
        if (at == order->steps.end() || at->status == domain::StageStatus::Done) return order;
    }
}

Result<Order> DemoBench::comeBack(const OrderNumber& number, const actions::Return& returned) {
    const auto back = actions::takeReturn(laboratory_, {number}, returned, who(kManager));
    if (!back) return back.error();
    return back->order;
}

}  // namespace cli
