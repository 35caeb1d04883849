/// The laboratory's own things: equipment with its calibration, and routes in versions.
#include "apps/actions/workshop.h"

#include <gmock/gmock.h>

#include <algorithm>

#include "tests/apps/actions/floor_bench.h"

namespace {

using actions_tests::saidBy;
using domain::Arch;
using domain::EquipmentKind;
using domain::OrderNumber;
using domain::Route;
using domain::Stage;
using support::kMaker;
using support::kManager;
using support::thing;
using testing::AllOf;
using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

class Equipment : public actions_tests::FloorBench {
protected:
    Equipment() {
        EXPECT_EQ(
            saidBy(actions::enterEquipment(
                lab(), old_, {EquipmentKind::Caster, "S-1", domain::Date::parse("2026-11-24")},
                floor_.as(kManager))),
            "");
        floor_.bringTo(number_, Stage::Casting);
        floor_.begin(number_);
    }
    std::string use(const char* responsibility, std::string_view who) {
        return saidBy(actions::record(
            lab(), number_, {},
            {{domain::EquipmentUsed{old_, {}, {}},
              responsibility == nullptr ? std::nullopt
                                        : std::optional<std::string>{responsibility}}},
            floor_.as(who)));
    }

    domain::ThingCode old_{thing("old-caster")};
    OrderNumber number_{castFramework()};
};

TEST_F(Equipment, ThatIsOverdueIsRefusedUntilItIsCalibrated) {
    EXPECT_THAT(use(nullptr, kMaker),
                AllOf(HasSubstr("its calibration was due on 2026-11-24"), HasSubstr("manager")));
    EXPECT_THAT(saidBy(actions::calibrate(lab(), old_, *domain::Date::parse("2026-11-24"),
                                          floor_.as(kManager))),
                HasSubstr("a day to come was expected"));
    ASSERT_EQ(saidBy(actions::calibrate(lab(), old_, *domain::Date::parse("2026-11-25"),
                                        floor_.as(kManager))),
              "");
    EXPECT_EQ(use(nullptr, kMaker), "");
}

TEST_F(Equipment, ThatIsOverdueIsUsedOnTheResponsibilityOfAManagerWhichIsKept) {
    EXPECT_THAT(use("no other is free", kMaker), HasSubstr("manager"));
    EXPECT_THAT(use("", kManager), HasSubstr("responsibility in writing"));
    ASSERT_EQ(use("checked with the reference weight today", kManager), "");
    const auto kept = newest<domain::EquipmentUsed>(order(number_), Stage::Casting);
    ASSERT_TRUE(kept && kept->responsibility);
    EXPECT_EQ(kept->kind, EquipmentKind::Caster);
    std::vector<actions::GivenRecord> rest;
    for (const actions::GivenRecord& each : floor_.records(number_))
        if (!std::holds_alternative<domain::EquipmentUsed>(each.record)) rest.push_back(each);
    ASSERT_EQ(saidBy(actions::record(lab(), number_, {}, rest, floor_.as(kMaker))), "");
    EXPECT_EQ(saidBy(actions::finish(lab(), {number_}, {}, floor_.as(kMaker))), "");
    std::vector<std::string> words;
    const auto view = *actions::order(lab(), number_);
    for (const actions::HistoryLine& line : view.history) words.push_back(line.words);
    EXPECT_THAT(words, Contains(HasSubstr("checked with the reference weight")));
}

TEST_F(Equipment, ThatFallsOverdueBetweenItsUseAndTheGateShutsIt) {
    ASSERT_EQ(saidBy(actions::calibrate(lab(), old_, *domain::Date::parse("2026-11-25"),
                                        floor_.as(kManager))),
              "");
    std::vector<actions::GivenRecord> given = floor_.records(number_);
    for (actions::GivenRecord& each : given)
        if (auto* used = std::get_if<domain::EquipmentUsed>(&each.record)) used->equipment = old_;
    ASSERT_EQ(saidBy(actions::record(lab(), number_, {}, given, floor_.as(kMaker))), "");
    clock_.letPass(support::HandClock::kDay);
    EXPECT_THAT(saidBy(actions::finish(lab(), {number_}, {}, floor_.as(kMaker))),
                HasSubstr("its calibration was due on 2026-11-25"));
}

TEST_F(Equipment, IsEnteredWithItsSerialNumberByAManager) {
    EXPECT_THAT(saidBy(actions::enterEquipment(
                    lab(), thing("f-2"), {EquipmentKind::Furnace, "", {}}, floor_.as(kManager))),
                HasSubstr("serial number"));
    EXPECT_THAT(saidBy(actions::enterEquipment(
                    lab(), thing("f-2"), {EquipmentKind::Furnace, "S-2", {}}, floor_.as(kMaker))),
                HasSubstr("manager"));
    EXPECT_THAT(saidBy(actions::calibrate(lab(), thing("f-2"), *domain::Date::parse("2027-01-01"),
                                          floor_.as(kManager))),
                HasSubstr("no such equipment"));
}

class Routes : public actions_tests::FloorBench {
protected:
    std::string change(const actions::StageChange& change, std::string_view who = kManager,
                       std::string key = {}) {
        return saidBy(actions::changeRoute(lab(), Route::CastFramework, Arch::Upper, change,
                                           floor_.keyed(who, std::move(key))));
    }
    domain::RoutePlan plan() const {
        return actions::workshop(lab())->planFor(Route::CastFramework, Arch::Upper);
    }
    static std::vector<std::string> checklist(const domain::RoutePlan& plan, Stage stage) {
        return plan.find(stage)->checklist;
    }
};

TEST_F(Routes, AreChangedInANewVersionAndAnOrderKeepsItsOwn) {
    const OrderNumber before = castFramework();
    ASSERT_EQ(change({.stage = Stage::WaxUp,
                      .usual = domain::Minutes::of(90),
                      .more = {"wax weighed"},
                      .fewer = {"sprues set at the thickest parts"}}),
              "");
    const OrderNumber after = castFramework();
    EXPECT_EQ(plan().version, 2);
    EXPECT_EQ(order(before).plan->version, 1);
    EXPECT_EQ(order(after).plan->version, 2);
    EXPECT_EQ(planOf(order(after), Stage::WaxUp).usual, domain::Minutes::of(90));
    EXPECT_THAT(planOf(order(after), Stage::WaxUp).checklist,
                AllOf(Contains("wax weighed"), Not(Contains("sprues set at the thickest parts"))));
    EXPECT_THAT(planOf(order(before), Stage::WaxUp).checklist,
                AllOf(Not(Contains("wax weighed")), Contains("sprues set at the thickest parts")));
    floor_.deliver(before);
    floor_.deliver(after);
    EXPECT_EQ(order(before).plan->version, 1);
    EXPECT_THAT(problems(), IsEmpty());
}

TEST_F(Routes, KeepTheGatesThatLawAndSafetyAsk) {
    EXPECT_NE(change({.stage = Stage::Inspection, .out = true}), "");
    EXPECT_NE(change({.stage = Stage::Delivery, .out = true}), "");
    EXPECT_NE(change({.stage = Stage::Receipt, .out = true}), "");
    EXPECT_NE(change({.stage = Stage::Receipt, .after = Stage::Casting}), "");
    EXPECT_NE(change({.stage = Stage::WaxUp, .usual = domain::Minutes::of(0)}), "");
    EXPECT_NE(change({.stage = Stage::Milling, .out = true}), "");
    EXPECT_THAT(change({.stage = Stage::WaxUp, .more = {"x"}}, kMaker), HasSubstr("manager"));
    EXPECT_EQ(plan().version, 1);
}

TEST_F(Routes, MoveAStageOrTakeOneInOrOut) {
    ASSERT_EQ(change({.stage = Stage::ToothTryIn, .out = true}), "");
    EXPECT_EQ(plan().find(Stage::ToothTryIn), nullptr);
    ASSERT_EQ(change({.stage = Stage::FaultReview, .after = Stage::Receipt}), "");
    EXPECT_EQ(plan().stages[1].stage, Stage::FaultReview);
    const OrderNumber number = castFramework();
    floor_.deliver(number);
    EXPECT_EQ(order(number).steps.size(), 15U);
    EXPECT_EQ(plan().version, 3);
}

// What a repeated key finds changed already is no reason to refuse it.
TEST_F(Routes, AreChangedOnceUnderOneKey) {
    const actions::StageChange out{.stage = Stage::ToothTryIn, .out = true};
    ASSERT_EQ(change(out, kManager, "route-1"), "");
    EXPECT_EQ(change(out, kManager, "route-1"), "");
    EXPECT_EQ(plan().version, 2);
    const actions::StageChange more{.stage = Stage::WaxUp, .more = {"wax weighed"}};
    ASSERT_EQ(change(more, kManager, "route-2"), "");
    EXPECT_EQ(change(more, kManager, "route-2"), "");
    EXPECT_EQ(std::ranges::count(checklist(plan(), Stage::WaxUp), "wax weighed"), 1);
}

}  // namespace
