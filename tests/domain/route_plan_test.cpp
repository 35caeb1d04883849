// The routes a laboratory edits, which of them an order keeps, and whom it waits for.
#include "domain/route/route_plan.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "domain/workshop/workshop.h"
#include "tests/support/floor.h"
#include "tests/support/floor_facts.h"

namespace {

using namespace domain;
using namespace support;
using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr std::int64_t kMinute = 60'000'000;

std::vector<Stage> stagesIn(const Order& order) {
    std::vector<Stage> stages;
    for (const StageStep& step : order.steps) stages.push_back(step.stage);
    return stages;
}

StagePlan& stageIn(RoutePlan& plan, Stage stage) {
    return *std::ranges::find(plan.stages, stage, &StagePlan::stage);
}

TEST(RoutePlan, AsShippedHasNoFlaw) {
    for (const auto& route : enumCodes<Route>)
        for (const auto& arch : enumCodes<Arch>)
            EXPECT_THAT(flawsOf(shippedPlan(route.value, arch.value)), IsEmpty()) << route.word;
}

TEST(RoutePlan, KeepsWhatLawAndSafetyAskOfAStage) {
    for (const auto& route : enumCodes<Route>)
        for (const StagePlan& step : shippedPlan(route.value, Arch::Upper).stages)
            for (const Demand demand : rowOf(step.stage).stays) {
                RoutePlan plan = shippedPlan(route.value, Arch::Upper);
                std::erase(stageIn(plan, step.stage).demands, demand);
                EXPECT_THAT(flawsOf(plan), Contains(HasSubstr(std::string{codeOf(step.stage)} +
                                                              ": its gate must keep asking for " +
                                                              wordsOf(demand))));
            }
}

TEST(RoutePlan, ThatIsBrokenSaysWhere) {
    const auto flaws = [](void (*spoil)(RoutePlan&)) {
        RoutePlan plan = shippedPlan(Route::CastFramework, Arch::Lower);
        spoil(plan);
        return flawsOf(plan);
    };
    EXPECT_THAT(flaws([](RoutePlan& plan) { plan.stages.clear(); }),
                Contains("a route without stages"));
    EXPECT_THAT(flaws([](RoutePlan& plan) { plan.stages.pop_back(); }),
                Contains(HasSubstr("ends in inspection and delivery")));
    EXPECT_THAT(flaws([](RoutePlan& plan) { plan.stages.erase(plan.stages.begin()); }),
                Contains(HasSubstr("begins with receipt")));
    EXPECT_THAT(
        flaws([](RoutePlan& plan) { plan.stages.insert(plan.stages.begin() + 1, plan.stages[1]); }),
        Contains("survey: it is there more than once"));
    EXPECT_THAT(flaws([](RoutePlan& plan) { stageIn(plan, Stage::WaxUp).usual = 0_min; }),
                Contains(HasSubstr("wax-up: usual minutes above 0")));
    EXPECT_THAT(
        flaws([](RoutePlan& plan) { stageIn(plan, Stage::WaxUp).checklist = {"same", "same"}; }),
        Contains(HasSubstr("words of its own")));
    EXPECT_THAT(
        flaws([](RoutePlan& plan) { stageIn(plan, Stage::WaxUp).fallBack = {Stage::Casting}; }),
        Contains(HasSubstr("lies before it")));
}

TEST(RoutePlan, OfTheDayOfAcceptanceStaysWithTheOrder) {
    Bench first = acceptedBench(prescriptionOn(Route::Reline, Arch::Upper));
    RoutePlan edited = shippedPlan(Route::Reline, Arch::Upper);
    edited.version = 2;
    stageIn(edited, Stage::Polishing).checklist.emplace_back("weighed");
    const auto set = decide(first.workshop, {SubjectKind::Route, "reline-upper"}, RouteSet{edited},
                            {.at = floorMinute(9), .person = *PersonCode::parse("MK"), .key = "r"});
    ASSERT_TRUE(set) << set.error().message;
    first.workshop = evolve(first.workshop, *set);
    EXPECT_EQ(first.order->plan->version, 1);
    first.passAll();
    EXPECT_EQ(first.order->status, OrderStatus::Delivered) << "without having been weighed";

    Bench second = benchOf(prescriptionOn(Route::Reline, Arch::Upper));
    second.workshop = first.workshop;
    ASSERT_TRUE(second.give(Accept{}));
    EXPECT_EQ(second.order->plan->version, 2);
    second.passUpTo(Stage::Polishing);
    ASSERT_TRUE(second.give(Start{}));
    auto records = everythingFor(*second.order, Stage::Polishing);
    std::erase(records, StageRecord{Ticked{"weighed"}});
    ASSERT_TRUE(second.give(Record{{}, records}));
    EXPECT_THAT(second.refusal(Finish{}), HasSubstr("not ticked: weighed"));
}

TEST(Route, TakesInTheAlteredCastAndTheRemakeAtTheirPlaces) {
    Prescription both = prescriptionOn(Route::CastFramework, Arch::Lower);
    both.alteredCast = true;
    both.remake = Remake{RemakeReason::DoesNotFit};
    const Bench bench = acceptedBench(both);
    auto expected = stagesWrittenOut(Route::AlteredCast);
    expected.insert(expected.begin() + 1, Stage::FaultReview);
    EXPECT_EQ(stagesIn(*bench.order), expected);
}

TEST(Route, ThatHasNoPlaceForAStageThePrescriptionAsksForIsRefused) {
    Bench bench = benchOf(prescriptionOn(Route::AlteredCast, Arch::Lower));
    RoutePlan plan = shippedPlan(Route::CastFramework, Arch::Lower);
    std::erase_if(plan.stages,
                  [](const StagePlan& step) { return step.stage == Stage::FrameworkTryIn; });
    ++plan.version;
    bench.workshop.routes.insert_or_assign({Route::CastFramework, Arch::Lower}, plan);
    EXPECT_THAT(bench.refusal(Accept{}),
                HasSubstr("has no place for saddle impression, which comes after framework"));
    bench.workshop.routes.clear();
    EXPECT_TRUE(bench.give(Accept{}));
}

TEST(Route, TakesInNoStageTwice) {
    RoutePlan own = shippedPlan(Route::CastFramework, Arch::Lower);
    const RoutePlan altered = shippedPlan(Route::AlteredCast, Arch::Lower);
    const auto after = std::ranges::find(own.stages, Stage::Finishing, &StagePlan::stage) + 1;
    own.stages.insert(after, altered.stages.back());
    const RoutePlan both = joined(own, {altered});
    EXPECT_EQ(std::ranges::count(both.stages, Stage::AlteredCast, &StagePlan::stage), 1);
    EXPECT_EQ(std::ranges::count(both.stages, Stage::SaddleImpression, &StagePlan::stage), 1);
}

TEST(WaitingTime, GoesToWhomTheOrderWaitsFor) {
    Bench bench = benchOf(prescriptionOn(Route::CastFramework, Arch::Upper));  // minute 1
    bench.minutes = 10;
    ASSERT_TRUE(bench.give(Accept{}));  // 11: ten minutes of the manager
    bench.minutes = 30;
    ASSERT_TRUE(bench.give(Flag{FlagReason::ShadeUnclear, {}}));  // 31: twenty of the bench
    bench.minutes = 130;
    ASSERT_TRUE(bench.give(Answer{sealedWords(), {}}));  // 131: a hundred of the dentist
    const auto spent = [&](WaitsFor whom, std::int64_t minute) {
        return spentFor(*bench.order, whom, floorMinute(minute)) / kMinute;
    };
    EXPECT_EQ(spent(WaitsFor::Manager, 131), 10);
    EXPECT_EQ(spent(WaitsFor::Bench, 131), 20);
    EXPECT_EQ(spent(WaitsFor::Dentist, 131), 100);
    EXPECT_EQ(spent(WaitsFor::Bench, 136), 25) << "and goes on";
    EXPECT_EQ(laboratoryTime(*bench.order, floorMinute(136)) / kMinute, 35);
}

TEST(WaitingTime, StandsStillForTheLaboratoryWhileAnotherHasTheWork) {
    Bench bench = acceptedBench(prescriptionOn(Route::CastFramework, Arch::Upper));
    bench.passUpTo(Stage::Casting);
    ASSERT_TRUE(bench.give(SendWork{thing("CAST-SHOP")}));
    EXPECT_EQ(waitsFor(*bench.order), WaitsFor::Site);
    const auto before = laboratoryTime(*bench.order, floorMinute(bench.minutes));
    EXPECT_EQ(laboratoryTime(*bench.order, floorMinute(bench.minutes + 500)), before);
    bench.minutes += 500;
    ASSERT_TRUE(bench.give(TakeWorkBack{true, {}}));
    EXPECT_EQ(laboratoryTime(*bench.order, floorMinute(bench.minutes)), before);
    EXPECT_EQ(spentFor(*bench.order, WaitsFor::Site, floorMinute(bench.minutes)), 501 * kMinute);
    bench.recordAll();
    ASSERT_TRUE(bench.give(Finish{}));
    bench.passUpTo(Stage::FrameworkTryIn);
    bench.recordAll();
    ASSERT_TRUE(bench.give(Start{}));
    EXPECT_EQ(waitsFor(*bench.order), WaitsFor::Dentist);
    const auto leaving = laboratoryTime(*bench.order, floorMinute(bench.minutes));
    EXPECT_EQ(laboratoryTime(*bench.order, floorMinute(bench.minutes + 9000)), leaving);
}

TEST(WaitingTime, CountsNothingForAClockThatWentBack) {
    Bench bench = acceptedBench(prescriptionOn(Route::Reline, Arch::Upper));
    const auto before = bench.order->waiting.spent;
    bench.minutes -= 1000;
    ASSERT_TRUE(bench.give(Start{}));
    EXPECT_EQ(bench.order->waiting.spent, before);
    EXPECT_EQ(laboratoryTime(*bench.order, floorMinute(bench.minutes - 50)),
              laboratoryTime(*bench.order, floorMinute(bench.minutes)));
}

}  // namespace
