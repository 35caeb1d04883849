#include "tests/support/working_laboratory.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>

#include "apps/actions/lots.h"
#include "apps/actions/orders.h"
#include "apps/actions/workshop.h"
#include "storage/ledger.h"
#include "tests/support/people.h"

namespace support {
namespace {

using actions::GivenRecord;
using domain::Demand;
using domain::EquipmentKind;
using domain::LotKind;
using domain::Order;
using domain::OrderNumber;
using domain::Skill;
using domain::Stage;
using domain::StageKind;
using domain::StageStatus;

constexpr std::int64_t kPlenty = 1'000'000'000;         // milligrams, or pieces
constexpr std::int64_t kSessionRests = 5 * 60'000'000;  // microseconds; the usual limit is 15 min

const domain::Disinfection kDisinfection{"sodium hypochlorite 0.5 %", domain::Minutes::of(10)};

template <typename T>
void expectDone(const domain::Result<T>& result, const char* what) {
    EXPECT_TRUE(result) << what << ": " << (result ? "" : result.error().message);
}

std::vector<Skill> everySkill() {
    std::vector<Skill> skills;
    for (const auto& code : domain::enumCodes<Skill>) skills.push_back(code.value);
    return skills;
}

domain::StageRecord ofLot(LotKind kind, std::int64_t amount) {
    return domain::LotUsed{.lot = lotCode(kind), .kind = kind, .amount = amount};
}
domain::StageRecord ofEquipment(EquipmentKind kind) {
    return domain::EquipmentUsed{equipmentCode(kind), kind, {}};
}

using Records = std::vector<domain::StageRecord>;

Records undercuts(const Order& order) {
    Records records;
    for (const domain::Clasp& clasp : order.prescription().clasps)
        if (clasp.retentiveArm)
            records.emplace_back(domain::UndercutMeasured{
                clasp.tooth, clasp.undercut && clasp.undercut->depth ? *clasp.undercut->depth
                                                                     : domain::Microns::of(250)});
    return records;
}

Records teethSet(const Order& order) {
    const auto& shades = order.prescription().shades;
    const domain::Shade shade = shades.empty() ? domain::Shade{"A-D scale", "A3", {}} : shades[0];
    return {domain::TeethSet{"match neighbours", shade.guide, shade.tab}};
}

/// What answers one demand of a gate.
Records answering(Demand demand, const Order& order) {
    switch (demand) {
        case Demand::Undercuts:
            return undercuts(order);
        case Demand::TripodMarks:
            return {domain::TripodMarked{}};
        case Demand::Surveyor:
            return {ofEquipment(EquipmentKind::Surveyor)};
        case Demand::InvestmentLot:
            return {ofLot(LotKind::Investment, 300'000)};
        case Demand::Furnace:
            return {ofEquipment(EquipmentKind::Furnace)};
        case Demand::AlloyLot:
            return {ofLot(LotKind::Alloy, 23'400)};
        case Demand::NewMetal:
            return {domain::NewMetal{domain::Share::of(600'000)}};
        case Demand::CastMass:
            return {domain::CastWeighed{domain::Milligrams::of(18'200)}};
        case Demand::Caster:
            return {ofEquipment(EquipmentKind::Caster)};
        case Demand::BlankLot:
            return {ofLot(LotKind::MillingBlank, 90'000)};
        case Demand::Mill:
            return {ofEquipment(EquipmentKind::Mill)};
        case Demand::PowderLot:
            return {ofLot(LotKind::MetalPowder, 20'000)};
        case Demand::Printer:
            return {ofEquipment(EquipmentKind::Printer)};
        case Demand::ToothLots:
            return {ofLot(LotKind::Teeth, 5)};
        case Demand::MouldAndShade:
            return teethSet(order);
        case Demand::ResinLot:
            return {ofLot(LotKind::ResinPowder, 24'000)};
        case Demand::CureLog:
            return {domain::CureLogged{"long-74", std::string(64, 'a'), true}};
        case Demand::CuringBath:
            return {ofEquipment(EquipmentKind::CuringBath)};
        case Demand::Disinfection:
            return {domain::Disinfected{kDisinfection}};
        case Demand::OtherPerson:
        case Demand::LegalFields:
        case Demand::Statement:
            return {};
    }
    return {};
}

domain::Certificate certificateOf(LotKind kind) {
    domain::Certificate certificate;
    if (isFrameworkMetal(kind)) {
        certificate.material = domain::FrameworkMaterial::CobaltChromium;
        certificate.nickel = domain::Share::of(0);
        certificate.beryllium = domain::Share::of(0);
        certificate.cadmium = domain::Share::of(0);
    }
    if (kind == LotKind::ResinPowder) certificate.resin = domain::BaseResin::HeatCured;
    return certificate;
}

}  // namespace

domain::ThingCode lotCode(LotKind kind) { return thing("lot-" + std::string{codeOf(kind)}); }
domain::ThingCode equipmentCode(EquipmentKind kind) {
    return thing("the-" + std::string{codeOf(kind)});
}

domain::Lot lotOf(LotKind kind, std::string makersNumber) {
    return {.kind = kind,
            .maker = "Example Makers",
            .product = "example " + wordsOf(kind),
            .makersNumber = std::move(makersNumber),
            .udi = {},
            .expiry = {},
            .certificate = certificateOf(kind),
            .amount = kPlenty};
}

actions::Declared everythingDeclared() {
    return {.representative = "none",
            .institution = "none",
            .substances = "none",
            .conforms = true,
            .exception = {},
            .grounds = {}};
}

Floor::Floor(const actions::Laboratory& laboratory) : laboratory_{laboratory} {
    signedIn(laboratory, kManager, domain::Role::Manager, everySkill());
    signedIn(laboratory, kMaker, domain::Role::Technician, everySkill());
    signedIn(laboratory, kOther, domain::Role::Technician, everySkill());
    signedIn(laboratory, kInspector, domain::Role::Inspector, everySkill());
    const auto head = actions::writeLetterhead(
        laboratory, {kLaboratoryName, kLaboratoryAddress, "bench@westhaven.example"}, as(kManager));
    expectDone(head, "letterhead");
    const auto known = actions::workshop(laboratory);
    expectDone(known, "workshop");
    if (!known->lots.empty()) return;
    for (const auto& code : domain::enumCodes<LotKind>)
        expectDone(
            actions::receiveLot(laboratory, lotCode(code.value),
                                lotOf(code.value, "M-" + std::string{code.word}), as(kManager)),
            "lot");
    for (const auto& code : domain::enumCodes<EquipmentKind>)
        expectDone(
            actions::enterEquipment(laboratory, equipmentCode(code.value),
                                    {code.value, "S-" + std::string{code.word}, {}}, as(kManager)),
            "equipment");
}

actions::Who Floor::as(std::string_view code) {
    const domain::Instant now = laboratory_.now();
    const auto known = people_.find(code);
    if (known != people_.end() &&
        std::abs(now.microseconds() - known->second.second.microseconds()) < kSessionRests)
        return known->second.first;
    const auto who = signedInAs(laboratory_, code, kPassword);
    people_.insert_or_assign(std::string{code}, std::pair{who, now});
    return who;
}

actions::Who Floor::keyed(std::string_view code, std::string key) {
    actions::Who who = as(code);
    who.key = std::move(key);
    return who;
}

actions::Who Floor::seeing(std::string_view code, std::int64_t version) {
    actions::Who who = as(code);
    who.seen = version;
    return who;
}

OrderNumber Floor::logged(const domain::Prescription& prescription) {
    // A key of its own: the same prescription may be logged for another patient.
    const auto outcome =
        actions::log(laboratory_, prescription,
                     keyed(kManager, "log-" + std::to_string(laboratory_.now().microseconds()) +
                                         '-' + std::to_string(++logged_)));
    expectDone(outcome, "log");
    return outcome->order.number;
}

OrderNumber Floor::accepted(const domain::Prescription& prescription) {
    const OrderNumber number = logged(prescription);
    expectDone(actions::accept(laboratory_, number, "agreed by telephone", as(kManager)), "accept");
    return number;
}

Order Floor::order(const OrderNumber& number) const {
    const auto found = storage::loadOrder(laboratory_.records(), number);
    expectDone(found, "order");
    return **found;
}

Stage Floor::due(const OrderNumber& number) const {
    const Order standing = order(number);
    const auto* step = currentStep(standing);
    EXPECT_NE(step, nullptr) << "no stage is due";
    return step == nullptr ? Stage::Receipt : step->stage;
}

std::string_view Floor::workerOf(Stage stage) {
    return stage == Stage::Inspection || stage == Stage::Delivery ? kInspector : kMaker;
}

std::vector<GivenRecord> Floor::records(const OrderNumber& number) const {
    const Order standing = order(number);
    const auto* step = currentStep(standing);
    if (step == nullptr) return {};
    const auto plan = planOf(standing, step->stage);
    std::vector<GivenRecord> given;
    for (const std::string& item : plan.checklist) given.push_back({domain::Ticked{item}, {}});
    for (const Demand demand : plan.demands)
        for (domain::StageRecord& each : answering(demand, standing))
            given.push_back({std::move(each), {}});
    return given;
}

void Floor::begin(const OrderNumber& number) {
    const Order standing = order(number);
    const auto* step = currentStep(standing);
    if (step == nullptr || step->status == StageStatus::InHand) return;
    expectDone(actions::start(laboratory_, {number}, {}, as(workerOf(step->stage))), "start");
}

void Floor::readyAt(const OrderNumber& number, Stage stage) {
    bringTo(number, stage);
    const bool leaves = rowOf(stage).kind == StageKind::AtPractice;
    if (!leaves) begin(number);
    const auto who = as(workerOf(stage));
    expectDone(actions::record(laboratory_, number, {}, records(number), who), "record");
    const Order standing = order(number);
    if (!standing.route) return;
    const auto demands = planOf(standing, stage).demands;
    const bool issued = domain::newest<domain::StatementIssued>(standing, stage).has_value();
    if (!issued && std::ranges::count(demands, Demand::Statement) > 0)
        expectDone(actions::issueStatement(laboratory_, number, everythingDeclared(), who),
                   "statement");
}

void Floor::pass(const OrderNumber& number) {
    const Stage stage = due(number);
    const auto who = as(workerOf(stage));
    readyAt(number, stage);
    if (rowOf(stage).kind != StageKind::AtPractice) {
        expectDone(actions::finish(laboratory_, {number}, {}, who), "finish");
        return;
    }
    begin(number);
    expectDone(actions::takeReturn(laboratory_, {number},
                                   {domain::ReturnVerdict::GoOn, {}, {}, kDisinfection}, who),
               "return");
}

void Floor::bringTo(const OrderNumber& number, Stage stage) {
    while (!testing::Test::HasFailure() && due(number) != stage) pass(number);
}

void Floor::deliver(const OrderNumber& number) {
    bringTo(number, Stage::Delivery);
    pass(number);
    EXPECT_EQ(order(number).status, domain::OrderStatus::Delivered);
}

}  // namespace support
