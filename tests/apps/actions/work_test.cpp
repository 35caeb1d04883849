/// Work at the bench: stages, their gates, scans, and two benches at one order.
#include "apps/actions/work.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <barrier>
#include <thread>

#include "apps/actions/papers.h"
#include "tests/apps/actions/floor_bench.h"

namespace {

using actions_tests::saidBy;
using domain::ErrorCode;
using domain::OrderNumber;
using domain::OrderStatus;
using domain::Stage;
using domain::StageStatus;
using support::kInspector;
using support::kMaker;
using support::kManager;
using support::kOther;
using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

class Work : public actions_tests::FloorBench {
protected:
    std::string finish(const OrderNumber& number, std::string_view who,
                       std::optional<Stage> stage = {}) {
        return saidBy(actions::finish(lab(), {number}, stage, floor_.as(who)));
    }
    std::string start(const OrderNumber& number, std::string_view who,
                      std::optional<Stage> stage = {}) {
        return saidBy(actions::start(lab(), {number}, stage, floor_.as(who)));
    }
};

// The sequence of the stages is that of route.h, whose source is named there.
TEST_F(Work, BringsACastFrameworkFromReceiptToDeliveryWithItsStatement) {
    const OrderNumber number = castFramework();
    const auto route = stagesOf(domain::Route::CastFramework);
    std::vector<Stage> passed;
    while (order(number).status == OrderStatus::InWork && !HasFailure()) {
        passed.push_back(floor_.due(number));
        clock_.letPass(30);
        floor_.pass(number);
    }
    EXPECT_TRUE(std::ranges::equal(passed, route));
    EXPECT_EQ(order(number).status, OrderStatus::Delivered);
    for (const actions::Paper paper : {actions::Paper::Statement, actions::Paper::DeliveryNote}) {
        const auto file = actions::print(lab(), number, paper, {}, floor_.as(kInspector));
        ASSERT_TRUE(file) << file.error().message;
        EXPECT_TRUE(std::filesystem::exists(*file));
    }
    EXPECT_THAT(start(number, kMaker), HasSubstr("delivered already"));
    EXPECT_THAT(problems(), IsEmpty());
}

TEST_F(Work, IsRefusedBeforeTheOrderIsAcceptedAndOutOfTurn) {
    const OrderNumber number = floor_.logged(support::upperClassIIIMod1());
    EXPECT_THAT(start(number, kMaker), HasSubstr("not accepted yet"));
    EXPECT_EQ(saidBy(actions::accept(lab(), number, {}, floor_.as(kManager))), "");
    EXPECT_THAT(start(number, kMaker, Stage::Casting), HasSubstr("the stage due is receipt"));
    EXPECT_THAT(finish(number, kMaker), HasSubstr("start it first"));
    EXPECT_THAT(start(number, kMaker, Stage::Milling), HasSubstr("not a stage of its route"));
}

// Every gate of the route, shut until all it asks for is there, and what is listed is what lacks.
TEST_F(Work, ShutsEachGateUntilEverythingIsRecordedAndListsWhatLacks) {
    const OrderNumber number = castFramework();
    int gates = 0;
    while (order(number).status == OrderStatus::InWork && !HasFailure()) {
        const Stage stage = floor_.due(number);
        const std::string_view worker = support::Floor::workerOf(stage);
        const bool leaves = rowOf(stage).kind == domain::StageKind::AtPractice;
        if (!leaves) floor_.begin(number);
        const auto lacking = actions::gate(lab(), number, support::codeOfPerson(worker));
        ASSERT_TRUE(lacking);
        const std::string refused = leaves ? start(number, worker) : finish(number, worker);
        EXPECT_EQ(refused.empty(), lacking->empty()) << codeOf(stage) << refused;
        for (const domain::Finding& finding : *lacking) {
            EXPECT_THAT(refused, HasSubstr(finding.found)) << codeOf(stage);
            EXPECT_NE(finding.source, "") << finding.rule;
            EXPECT_NE(finding.question, "") << finding.rule;
        }
        gates += lacking->empty() ? 0 : 1;
        floor_.pass(number);
    }
    EXPECT_EQ(gates, 15) << "every stage of the route asks for something";
}

TEST_F(Work, NamesEachRecordThatIsLeftOut) {
    const OrderNumber number = castFramework();
    floor_.bringTo(number, Stage::Casting);
    floor_.begin(number);
    const auto all = floor_.records(number);
    const std::pair<domain::RecordKind, const char*> kinds[] = {
        {domain::RecordKind::Ticked, "not ticked: casting complete"},
        {domain::RecordKind::LotUsed, "no lot of alloy recorded"},
        {domain::RecordKind::NewMetal, "share of new metal not recorded"},
        {domain::RecordKind::CastWeighed, "mass of the casting not recorded"},
        {domain::RecordKind::EquipmentUsed, "no caster recorded"}};
    for (const auto& [kind, says] : kinds) {
        std::vector<actions::GivenRecord> most;
        for (const actions::GivenRecord& each : all)
            if (kindOf(each.record) != kind) most.push_back(each);
        ASSERT_EQ(most.size(), all.size() - 1) << says;
        ASSERT_EQ(saidBy(actions::record(lab(), number, {}, most, floor_.as(kMaker))), "");
        const std::string refused = finish(number, kMaker);
        EXPECT_THAT(refused, HasSubstr(says));
        EXPECT_EQ(std::ranges::count(refused, ';'), 0) << "one thing lacks: " << refused;
        ASSERT_EQ(saidBy(actions::redo(lab(), number, domain::RedoReason::Other, Stage::Casting, {},
                                       "again", floor_.as(kMaker))),
                  "");
        ASSERT_EQ(start(number, kMaker), "");
    }
    floor_.pass(number);
    EXPECT_EQ(floor_.due(number), Stage::Finishing);
    EXPECT_EQ(step(number, Stage::Casting).attempt, 6);
}

TEST_F(Work, AsksForAnotherPersonAtTheInspection) {
    const OrderNumber number = castFramework();
    floor_.readyAt(number, Stage::Inspection);
    EXPECT_THAT(finish(number, kMaker), HasSubstr("JT made a part of it"));
    EXPECT_EQ(finish(number, kInspector), "");
}

TEST_F(Work, AsksForTheSkillOfTheStage) {
    const OrderNumber number = castFramework();
    floor_.bringTo(number, Stage::Survey);
    const auto waxer = support::signedIn(lab(), "WX", domain::Role::Technician,
                                         {domain::Skill::Waxing, domain::Skill::Casting});
    EXPECT_THAT(saidBy(actions::start(lab(), {number}, {}, waxer)),
                AllOf(HasSubstr("skill surveying"), HasSubstr("WX")));
    EXPECT_EQ(start(number, kMaker), "");
}

TEST_F(Work, TellsTheOtherBenchByWhomAStageWasDoneAndWhen) {
    const OrderNumber number = castFramework();
    floor_.readyAt(number, Stage::Survey);
    ASSERT_EQ(finish(number, kMaker), "");
    const std::string when = clock_.now().text();
    clock_.letPass(1);
    EXPECT_THAT(finish(number, kOther, Stage::Survey),
                AllOf(HasSubstr("survey was done already, by JT, " + when)));
    EXPECT_EQ(start(number, kMaker), "");
    EXPECT_THAT(start(number, kOther),
                HasSubstr("in hand already, by JT since " + clock_.now().text()));
}

TEST_F(Work, RefusesADecisionOnAVersionThatIsNoMore) {
    const OrderNumber number = castFramework();
    const std::int64_t seen = version(number);
    ASSERT_EQ(start(number, kMaker), "");
    const auto late = actions::start(lab(), {number}, {}, floor_.seeing(kOther, seen));
    ASSERT_FALSE(late);
    EXPECT_EQ(late.error().code, ErrorCode::Conflict);
    EXPECT_THAT(late.error().message,
                AllOf(HasSubstr("stage started by JT"), HasSubstr(clock_.now().text()),
                      HasSubstr("version " + std::to_string(seen + 1)), HasSubstr("look at it")));
    EXPECT_EQ(version(number), seen + 1);
    const auto fresh =
        actions::record(lab(), number, {}, floor_.records(number), floor_.seeing(kOther, seen + 1));
    EXPECT_TRUE(fresh) << fresh.error().message;
}

TEST_F(Work, TakesTwoScansWithinTenSecondsForOne) {
    const OrderNumber number = castFramework();
    const auto first = actions::scan(lab(), number, floor_.as(kMaker));
    ASSERT_TRUE(first) << first.error().message;
    EXPECT_FALSE(first->repeated);
    const std::int64_t once = version(number);
    clock_.letPass(0, 9'999'999);
    const auto again = actions::scan(lab(), number, floor_.as(kMaker));
    ASSERT_TRUE(again) << again.error().message;
    EXPECT_TRUE(again->repeated);
    EXPECT_EQ(again->order, first->order);
    EXPECT_EQ(version(number), once);
}

TEST_F(Work, TakesAScanAfterTenSecondsForAnother) {
    const OrderNumber number = castFramework();
    floor_.begin(number);
    ASSERT_EQ(saidBy(actions::record(lab(), number, {}, floor_.records(number), floor_.as(kMaker))),
              "");
    EXPECT_EQ(saidBy(actions::scan(lab(), number, floor_.as(kMaker))), "");
    EXPECT_EQ(step(number, Stage::Receipt).status, StageStatus::Done);
    clock_.letPass(0, 10'000'000);
    EXPECT_EQ(saidBy(actions::scan(lab(), number, floor_.as(kMaker))), "");
    EXPECT_EQ(step(number, Stage::Survey).status, StageStatus::InHand);
}

TEST_F(Work, TakesTheScanOfAnotherPersonForTheirOwn) {
    const OrderNumber number = castFramework();
    ASSERT_EQ(saidBy(actions::scan(lab(), number, floor_.as(kMaker))), "");
    // A scan by the other is a wish to finish what is in hand: its gate answers.
    EXPECT_THAT(saidBy(actions::scan(lab(), number, floor_.as(kOther))),
                HasSubstr("receipt lacks"));
}

TEST_F(Work, SeesTheSameScanWhenTheClockIsPutBack) {
    const OrderNumber number = castFramework();
    ASSERT_EQ(saidBy(actions::scan(lab(), number, floor_.as(kMaker))), "");
    const std::int64_t once = version(number);
    clock_.letPass(0, -5'000'000);
    const auto again = actions::scan(lab(), number, floor_.as(kMaker));
    ASSERT_TRUE(again) << again.error().message;
    EXPECT_TRUE(again->repeated);
    clock_.letPass(-60);
    EXPECT_EQ(saidBy(actions::record(lab(), number, {}, floor_.records(number), floor_.as(kMaker))),
              "");
    EXPECT_EQ(version(number), once + 1);
    EXPECT_GE(laboratoryTime(order(number), clock_.now()), 0);
    EXPECT_THAT(problems(), IsEmpty());
}

// Both read the same state, and both are told it is in hand: one transition, one of them repeated.
TEST_F(Work, IsStartedOnceByScansOfTwoConnectionsAtOnce) {
    for (int round = 0; round < 12; ++round) {
        const OrderNumber number = castFramework();
        const std::int64_t before = version(number);
        const auto who = floor_.as(kMaker);
        std::barrier together{2};
        std::vector<std::string> refused(2);
        std::vector<bool> repeated(2);
        std::vector<std::thread> scanners;
        for (std::size_t scanner = 0; scanner < 2; ++scanner)
            scanners.emplace_back([&, scanner] {
                const auto own =
                    actions::Laboratory::open(folder(), clock_, storage::HashCost::Light);
                together.arrive_and_wait();
                const auto outcome = actions::scan(*own, number, who);
                refused[scanner] = saidBy(outcome);
                repeated[scanner] = outcome && outcome->repeated;
            });
        for (std::thread& scanner : scanners) scanner.join();
        EXPECT_THAT(refused, testing::Each("")) << "round " << round;
        EXPECT_EQ(std::ranges::count(repeated, true), 1) << "round " << round;
        EXPECT_EQ(version(number), before + 1) << "round " << round;
    }
}

}  // namespace
