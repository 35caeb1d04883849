/// Lots: what speaks against one, where each went, and what a recall finds.
#include "apps/actions/lots.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <random>
#include <set>

#include "apps/actions/work.h"
#include "apps/actions/workshop.h"
#include "tests/apps/actions/floor_bench.h"

namespace {

using actions_tests::saidBy;
using domain::LotKind;
using domain::OrderNumber;
using domain::Stage;
using domain::ThingCode;
using support::kMaker;
using support::kManager;
using support::lotOf;
using support::thing;
using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

/// A use of a lot, as it was recorded: order, stage, amount, and whether the device holds it.
using Use = std::tuple<std::string, Stage, std::int64_t, bool>;

class Lots : public actions_tests::FloorBench {
protected:
    std::string receive(const char* code, const domain::Lot& lot) {
        return saidBy(actions::receiveLot(lab(), thing(code), lot, floor_.as(kMaker)));
    }
    std::string use(const OrderNumber& number, const char* code, std::int64_t amount) {
        return saidBy(actions::record(
            lab(), number, {},
            {{domain::LotUsed{.lot = thing(code), .kind = {}, .amount = amount}, {}}},
            floor_.as(kMaker)));
    }
    OrderNumber atCasting(const domain::Prescription& prescription) {
        const OrderNumber number = floor_.accepted(prescription);
        floor_.bringTo(number, Stage::Casting);
        floor_.begin(number);
        return number;
    }
    std::vector<Use> traced(const ThingCode& lot) {
        const auto traces = actions::traceLot(lab(), lot.text(), floor_.as(kManager));
        EXPECT_TRUE(traces && traces->size() == 1);
        std::vector<Use> uses;
        for (const actions::TracedDevice& device : traces->front().devices)
            uses.emplace_back(device.order.text(), device.stage, device.amount, device.isInDevice);
        std::ranges::sort(uses);
        return uses;
    }
    std::map<ThingCode, std::vector<Use>> usesInTheLedger() const;
    void manyOrders(int count, unsigned seed);
};

/// Every use by reading every event ever, knowing nothing of orders: a stage begun again takes the
/// uses of it and of all that follow it on the route out of the device.
std::map<ThingCode, std::vector<Use>> Lots::usesInTheLedger() const {
    std::map<ThingCode, std::vector<Use>> uses;
    std::map<std::string, std::vector<Stage>> routes;
    const auto visited = storage::Ledger{lab().records()}.visit([&](const domain::Event& event) {
        const std::string order = event.order.text();
        if (const auto* routed = std::get_if<domain::Routed>(&event.what))
            for (const domain::StagePlan& each : routed->plan.stages)
                routes[order].push_back(each.stage);
        if (const auto* redone = std::get_if<domain::Redone>(&event.what)) {
            const auto& route = routes[order];
            const auto from = std::ranges::find(route, redone->from);
            for (auto& [lot, all] : uses)
                for (auto& [user, stage, amount, inDevice] : all)
                    if (user == order && std::find(from, route.end(), stage) != route.end())
                        inDevice = false;
        }
        if (const auto* recorded = std::get_if<domain::Recorded>(&event.what))
            for (const domain::StageRecord& record : recorded->records)
                if (const auto* used = std::get_if<domain::LotUsed>(&record))
                    uses[used->lot].emplace_back(order, recorded->stage, used->amount, true);
    });
    EXPECT_TRUE(visited);
    for (auto& [lot, all] : uses) std::ranges::sort(all);
    return uses;
}

/// Interim dentures of many patients and prescribers with teeth of six lots, some set again, some
/// of them with a lot they had used before.
void Lots::manyOrders(int count, unsigned seed) {
    std::mt19937 random{seed};
    const auto any = [&](unsigned below) { return static_cast<unsigned>(random() % below); };
    for (char name = 'a'; name < 'g'; ++name)
        ASSERT_EQ(receive((std::string{"teeth-"} + name).c_str(), lotOf(LotKind::Teeth, "T")), "");
    for (int i = 0; i < count && !HasFailure(); ++i) {
        auto prescription = support::interimUpper();
        prescription.identity.patientReference = "P-" + std::to_string(any(150));
        const unsigned prescriber = any(9);
        prescription.identity.prescriberRegistration = "D-" + std::to_string(prescriber);
        prescription.identity.prescriberName = "Dr " + std::string(3, char('a' + prescriber));
        const OrderNumber number = floor_.accepted(prescription);
        floor_.bringTo(number, Stage::ToothSetUp);
        for (unsigned attempt = 0; attempt <= any(3); ++attempt) {
            floor_.begin(number);
            for (unsigned uses = 0; uses <= any(2); ++uses)
                ASSERT_EQ(
                    use(number, (std::string{"teeth-"} + char('a' + any(6))).c_str(), 1 + any(8)),
                    "");
            if (any(2) == 0) break;
            ASSERT_EQ(saidBy(actions::redo(lab(), number, domain::RedoReason::ToothPosition,
                                           Stage::ToothSetUp, {}, {}, floor_.as(kMaker))),
                      "");
        }
    }
}

TEST_F(Lots, AreRefusedWhereSomethingSpeaksAgainstThem) {
    auto expired = lotOf(LotKind::Alloy, "1");
    expired.expiry = domain::Date::parse("2026-11-24");
    auto little = lotOf(LotKind::Alloy, "2");
    little.amount = 20'000;
    auto uncertified = lotOf(LotKind::Alloy, "3");
    uncertified.certificate.material.reset();
    auto beryllium = lotOf(LotKind::Alloy, "4");
    beryllium.certificate.beryllium = domain::Share::of(300);
    ASSERT_EQ(receive("expired", expired), "");
    ASSERT_EQ(receive("little", little), "");
    ASSERT_EQ(receive("uncertified", uncertified), "");
    ASSERT_EQ(receive("beryllium", beryllium), "");
    ASSERT_EQ(receive("held", lotOf(LotKind::Alloy, "5")), "");
    ASSERT_EQ(saidBy(actions::holdLot(lab(), thing("held"), "torn bag", floor_.as(kMaker))), "");
    const OrderNumber number = atCasting(support::upperClassIIIMod1());
    const auto before = version(number);
    EXPECT_THAT(use(number, "expired", 23'400), HasSubstr("expired on 2026-11-24"));
    EXPECT_THAT(use(number, "little", 23'400), AllOf(HasSubstr("only 20 g"), HasSubstr("23.4 g")));
    EXPECT_THAT(use(number, "uncertified", 23'400), HasSubstr("which material it is"));
    EXPECT_THAT(use(number, "held", 23'400), HasSubstr("in quarantine"));
    EXPECT_THAT(use(number, "nowhere", 23'400), HasSubstr("there is no lot nowhere"));
    EXPECT_THAT(use(number, "lot-alloy", 0), HasSubstr("above 0"));
    // ISO 22674: more than 0.02 % of beryllium is not allowed.
    EXPECT_THAT(use(number, "beryllium", 23'400), HasSubstr("ISO 22674"));
    EXPECT_EQ(version(number), before);
    EXPECT_EQ(use(number, "little", 20'000), "");
    EXPECT_THAT(use(number, "little", 1), HasSubstr("only 0 g"));
}

TEST_F(Lots, WithNickelAreRefusedForWhoeverIsSensitive) {
    auto sensitive = support::upperClassIIIMod1();
    sensitive.sensitivities = {.noneKnown = false, .known = {domain::Sensitivity::Nickel}};
    auto nickel = lotOf(LotKind::Alloy, "1");
    nickel.certificate.nickel = domain::Share::of(2'000);
    auto unstated = lotOf(LotKind::Alloy, "2");
    unstated.certificate.nickel.reset();
    ASSERT_EQ(receive("nickel", nickel), "");
    ASSERT_EQ(receive("unstated", unstated), "");
    const OrderNumber number = atCasting(sensitive);
    EXPECT_THAT(use(number, "nickel", 23'400), HasSubstr("sensitive to nickel"));
    EXPECT_THAT(use(number, "unstated", 23'400), HasSubstr("does not state how much"));
    EXPECT_EQ(use(number, "lot-alloy", 23'400), "");
    EXPECT_EQ(use(atCasting(support::upperClassIIIMod1()), "nickel", 23'400), "");
}

TEST_F(Lots, AreNotWeighedWhereTheyAreCounted) {
    const OrderNumber number = castFramework();
    floor_.begin(number);
    const auto used = [&](LotKind kind, bool inPieces) {
        const actions::GivenRecord given{.record = domain::LotUsed{support::lotCode(kind), kind, 6},
                                         .inPieces = inPieces};
        return saidBy(actions::record(lab(), number, {}, {given}, floor_.as(kMaker)));
    };
    EXPECT_THAT(used(LotKind::Teeth, false), HasSubstr("expected pieces"));
    EXPECT_THAT(used(LotKind::Investment, true), HasSubstr("expected a mass"));
    EXPECT_EQ(used(LotKind::Teeth, true), "");
    EXPECT_EQ(used(LotKind::Investment, false), "");
}

TEST_F(Lots, AreUsedUpByTwoRecordsOfOneCommandTogether) {
    auto little = lotOf(LotKind::Alloy, "2");
    little.amount = 20'000;
    ASSERT_EQ(receive("little", little), "");
    const OrderNumber number = atCasting(support::upperClassIIIMod1());
    const actions::GivenRecord half{domain::LotUsed{thing("little"), LotKind::Alloy, 12'000}, {}};
    EXPECT_THAT(saidBy(actions::record(lab(), number, {}, {half, half}, floor_.as(kMaker))),
                HasSubstr("only 20 g"));
    EXPECT_EQ(saidBy(actions::record(lab(), number, {}, {half}, floor_.as(kMaker))), "");
}

TEST_F(Lots, HeldAfterTheyWereUsedShutTheGate) {
    const OrderNumber number = castFramework();
    floor_.readyAt(number, Stage::Casting);
    ASSERT_EQ(saidBy(actions::holdLot(lab(), thing("lot-alloy"), "recalled", floor_.as(kMaker))),
              "");
    EXPECT_THAT(saidBy(actions::finish(lab(), {number}, {}, floor_.as(kMaker))),
                HasSubstr("lot lot-alloy is in quarantine"));
    EXPECT_THAT(saidBy(actions::releaseLot(lab(), thing("lot-alloy"), "ok", floor_.as(kMaker))),
                HasSubstr("manager"));
    ASSERT_EQ(saidBy(actions::releaseLot(lab(), thing("lot-alloy"), "ok", floor_.as(kManager))),
              "");
    EXPECT_EQ(saidBy(actions::finish(lab(), {number}, {}, floor_.as(kMaker))), "");
}

TEST_F(Lots, AreTracedToEveryDeviceAsTheWholeLedgerTells) {
    manyOrders(200, 20'261'125);
    const auto expected = usesInTheLedger();
    ASSERT_THAT(expected, SizeIs(6));
    std::size_t uses = 0;
    std::size_t outside = 0;
    for (const auto& [lot, all] : expected) {
        EXPECT_EQ(traced(lot), all) << lot.text();
        uses += all.size();
        outside += static_cast<std::size_t>(
            std::ranges::count_if(all, [](const Use& each) { return !std::get<3>(each); }));
        std::int64_t sum = 0;
        for (const Use& each : all) sum += std::get<2>(each);
        const auto lines = *actions::lots(lab());
        const auto line = std::ranges::find(lines, lot, &actions::LotLine::code);
        EXPECT_EQ(line->kept.used, sum) << lot.text();
    }
    std::cout << "uses of lots compared: " << uses << ", of attempts done again: " << outside
              << '\n';
    EXPECT_GT(outside, 50U);
    EXPECT_THAT(problems(), IsEmpty());
}

TEST_F(Lots, AreRecalledFromEveryDeviceThatHoldsThem) {
    manyOrders(60, 7);
    const auto uses = usesInTheLedger().at(thing("teeth-a"));
    std::set<std::string> undelivered;
    std::set<std::string> devices;
    std::set<std::string> patients;
    std::set<std::string> prescribers;
    for (const auto& [number, stage, amount, inDevice] : uses) {
        if (!inDevice) continue;
        const auto view = *actions::order(lab(), *OrderNumber::parse(number));
        if (view.order.status != domain::OrderStatus::Delivered) {
            undelivered.insert(number);
            continue;
        }
        devices.insert(number);
        prescribers.insert(*view.prescription.identity.prescriberRegistration);
        patients.insert(*view.prescription.identity.prescriberRegistration + '/' +
                        *view.prescription.identity.patientReference);
    }
    const auto drill = actions::recall(lab(), "teeth-a", "drill", true, floor_.as(kManager));
    ASSERT_TRUE(drill) << drill.error().message;
    EXPECT_EQ(drill->delivered, std::ssize(devices));
    EXPECT_EQ(drill->undelivered, std::ssize(undelivered));
    EXPECT_EQ(drill->patients, std::ssize(patients));
    EXPECT_EQ(drill->letters.size(), prescribers.size());
    for (const auto& letter : drill->letters) EXPECT_TRUE(std::filesystem::exists(letter));
    const auto held = [&] { return actions::workshop(lab())->lots.at(thing("teeth-a")).held; };
    EXPECT_FALSE(held()) << "a drill holds nothing";
    const auto recall = actions::recall(lab(), "teeth-a", "cracks", false, floor_.as(kManager));
    ASSERT_TRUE(recall) << recall.error().message;
    EXPECT_EQ(recall->delivered, drill->delivered);
    EXPECT_TRUE(held());
    EXPECT_EQ(saidBy(actions::recall(lab(), "teeth-a", "cracks", false, floor_.as(kManager))), "")
        << "a lot that is held is recalled all the same";
}

TEST_F(Lots, AreFoundByTheMakersNumberWhichSeveralMayShare) {
    ASSERT_EQ(receive("first", lotOf(LotKind::Alloy, "77-A")), "");
    ASSERT_EQ(receive("second", lotOf(LotKind::Alloy, "77-A")), "");
    EXPECT_THAT(actions::traceLot(lab(), "77-A", floor_.as(kManager)).value(), SizeIs(2));
    EXPECT_THAT(saidBy(actions::traceLot(lab(), "78-A", floor_.as(kManager))),
                HasSubstr("there is no lot \"78-A\""));
    EXPECT_THAT(receive("first", lotOf(LotKind::Alloy, "78")), HasSubstr("taken by another lot"));
}

}  // namespace
