/// Work that comes back or is done again: returns of try-ins, stages begun again, remakes.
#include <gmock/gmock.h>

#include <algorithm>

#include "apps/actions/floor.h"
#include "tests/apps/actions/floor_bench.h"

namespace {

using actions_tests::saidBy;
using domain::OrderNumber;
using domain::OrderStatus;
using domain::RedoReason;
using domain::RemakeReason;
using domain::ReturnVerdict;
using domain::Stage;
using domain::StageStatus;
using domain::WaitsFor;
using support::kMaker;
using support::kManager;
using testing::HasSubstr;
using testing::IsEmpty;

const domain::Disinfection kDisinfection{"alcohol 70 %", domain::Minutes::of(5)};

class Again : public actions_tests::FloorBench {
protected:
    OrderNumber atThePractice(Stage stage = Stage::FrameworkTryIn) {
        const OrderNumber number = castFramework();
        floor_.readyAt(number, stage);
        floor_.begin(number);
        return number;
    }
    std::string returned(const OrderNumber& number, ReturnVerdict verdict,
                         std::optional<Stage> backTo, std::optional<std::string> findings,
                         domain::Disinfection disinfection = kDisinfection) {
        return saidBy(actions::takeReturn(
            lab(), {number}, {verdict, backTo, std::move(findings), std::move(disinfection)},
            floor_.as(kMaker)));
    }
    std::string redo(const OrderNumber& number, RedoReason reason, Stage from,
                     std::optional<Stage> fault = {}, const std::optional<std::string>& note = {}) {
        return saidBy(actions::redo(lab(), number, reason, from, fault, note, floor_.as(kMaker)));
    }
    domain::Result<actions::Outcome> remake(const OrderNumber& number, const char* key = "") {
        return actions::remake(lab(), number, RemakeReason::DoesNotFit, Stage::Survey,
                               "rocks on the cast", floor_.keyed(kManager, key));
    }
};

TEST_F(Again, ATryInThatFitsGoesOn) {
    const OrderNumber number = atThePractice();
    EXPECT_EQ(waitsFor(order(number)), WaitsFor::Dentist);
    EXPECT_THAT(saidBy(actions::finish(lab(), {number}, {}, floor_.as(kMaker))),
                HasSubstr("record its return"));
    EXPECT_EQ(returned(number, ReturnVerdict::GoOn, {}, {}), "");
    EXPECT_EQ(floor_.due(number), Stage::ToothSetUp);
    EXPECT_THAT(returned(number, ReturnVerdict::GoOn, {}, {}),
                HasSubstr("nothing of it is at the practice"));
}

TEST_F(Again, ATryInThatDoesNotFitGoesBackWithWhatTheDentistFound) {
    const OrderNumber number = atThePractice();
    EXPECT_THAT(returned(number, ReturnVerdict::GoBack, Stage::WaxUp, {}),
                HasSubstr("what the dentist found was expected"));
    EXPECT_THAT(returned(number, ReturnVerdict::GoBack, {}, "rocks"),
                HasSubstr("stage to go back"));
    EXPECT_THAT(returned(number, ReturnVerdict::GoOn, Stage::WaxUp, "fits"),
                HasSubstr("only to that"));
    EXPECT_THAT(returned(number, ReturnVerdict::GoBack, Stage::Receipt, "rocks"),
                HasSubstr("cannot go back to receipt"));
    EXPECT_THAT(returned(number, ReturnVerdict::GoBack, Stage::WaxUp, "rocks", {"", {}}),
                HasSubstr("disinfected first"));
    ASSERT_EQ(returned(number, ReturnVerdict::GoBack, Stage::WaxUp, "rocks on 16"), "");
    EXPECT_EQ(floor_.due(number), Stage::WaxUp);
    EXPECT_EQ(step(number, Stage::FrameworkTryIn).attempt, 2);
    EXPECT_EQ(step(number, Stage::Duplication).attempt, 1);
    EXPECT_EQ(actions::order(lab(), number)->history.back().words, "rocks on 16");
    floor_.deliver(number);
    EXPECT_THAT(problems(), IsEmpty());
}

TEST_F(Again, ATryInThatCannotBeMendedIsMadeAgain) {
    const OrderNumber number = atThePractice();
    ASSERT_EQ(returned(number, ReturnVerdict::Remake, {}, "another arch altogether"), "");
    EXPECT_EQ(waitsFor(order(number)), WaitsFor::Manager);
    EXPECT_THAT(saidBy(actions::start(lab(), {number}, {}, floor_.as(kMaker))),
                HasSubstr("order the remake"));
    const auto second = remake(number);
    ASSERT_TRUE(second) << second.error().message;
    EXPECT_EQ(order(number).status, OrderStatus::Remade);
    EXPECT_EQ(second->order.replaces, number);
}

TEST_F(Again, AStageDoneAgainKeepsWhatTheFirstAttemptRecorded) {
    const OrderNumber number = castFramework();
    floor_.bringTo(number, Stage::Finishing);
    const auto first = order(number).records;
    ASSERT_EQ(redo(number, RedoReason::Porosity, Stage::WaxUp, Stage::Investing), "");
    EXPECT_EQ(floor_.due(number), Stage::WaxUp);
    floor_.bringTo(number, Stage::Finishing);
    const auto both = order(number).records;
    ASSERT_GT(both.size(), first.size());
    EXPECT_TRUE(std::equal(first.begin(), first.end(), both.begin()));
    for (const Stage again : {Stage::WaxUp, Stage::Investing, Stage::Casting})
        EXPECT_EQ(step(number, again).attempt, 2) << codeOf(again);
    const auto events = eventsOf(number);
    const auto redone = std::ranges::find(events, domain::EventKind::Redone,
                                          [](const domain::Event& event) { return kindOf(event); });
    ASSERT_NE(redone, events.end());
    EXPECT_EQ(std::get<domain::Redone>(redone->what).fault, Stage::Investing);
}

// Disinfection is of what leaves: what was disinfected before the work on it went on counts no
// more.
TEST_F(Again, WhatWasDisinfectedBeforeTheWorkBeganAgainIsDisinfectedAnew) {
    const OrderNumber number = castFramework();
    floor_.readyAt(number, Stage::FrameworkTryIn);
    ASSERT_EQ(redo(number, RedoReason::PoorFit, Stage::Finishing), "");
    floor_.bringTo(number, Stage::FrameworkTryIn);
    EXPECT_THAT(saidBy(actions::start(lab(), {number}, {}, floor_.as(kMaker))),
                HasSubstr("disinfection not recorded"));
}

TEST_F(Again, AStageIsDoneAgainOnlyWhereItsRouteGoesBackTo) {
    const OrderNumber number = castFramework();
    floor_.bringTo(number, Stage::Casting);
    EXPECT_THAT(redo(number, RedoReason::Porosity, Stage::Receipt),
                HasSubstr("cannot begin again at receipt"));
    EXPECT_THAT(redo(number, RedoReason::Porosity, Stage::WaxUp, Stage::Milling),
                HasSubstr("milling is not a stage"));
    EXPECT_THAT(redo(number, RedoReason::Other, Stage::WaxUp), HasSubstr("needs a note"));
    EXPECT_EQ(redo(number, RedoReason::Other, Stage::WaxUp, {}, "fell off the table"), "");
    EXPECT_THAT(redo(atThePractice(), RedoReason::PoorFit, Stage::Finishing),
                HasSubstr("record its return"));
}

TEST_F(Again, ARemakeNamesTheFirstOrderWhichStaysAsItWas) {
    const OrderNumber number = castFramework();
    floor_.deliver(number);
    const auto first = order(number);
    const auto second = remake(number);
    ASSERT_TRUE(second) << second.error().message;
    EXPECT_NE(second->order.number, number);
    EXPECT_EQ(second->order.replaces, number);
    EXPECT_EQ(second->order.status, OrderStatus::Received);
    EXPECT_EQ(second->order.prescription().remake->reason, RemakeReason::DoesNotFit);
    EXPECT_EQ(second->order.revision.parties.patient, first.revision.parties.patient);
    const auto after = order(number);
    EXPECT_EQ(after.status, OrderStatus::Delivered) << "it was delivered all the same";
    EXPECT_EQ(after.replacedBy, second->order.number);
    EXPECT_EQ(after.records, first.records);
    EXPECT_EQ(after.steps, first.steps);
    EXPECT_THAT(saidBy(remake(number)), HasSubstr("made again already, as "));
}

TEST_F(Again, ARemakeIsReviewedForTheFaultBeforeItIsRepeated) {
    const OrderNumber number = castFramework();
    floor_.deliver(number);
    const OrderNumber second = remake(number)->order.number;
    ASSERT_EQ(saidBy(actions::accept(lab(), second, "once more", floor_.as(kManager))), "");
    floor_.pass(second);
    EXPECT_EQ(floor_.due(second), Stage::FaultReview);
    floor_.deliver(second);
    EXPECT_THAT(problems(), IsEmpty());
}

TEST_F(Again, TheSameKeyGivesTheSameRemake) {
    const OrderNumber number = castFramework();
    const auto second = remake(number, "again-1");
    ASSERT_TRUE(second) << second.error().message;
    const auto repeated = remake(number, "again-1");
    ASSERT_TRUE(repeated) << repeated.error().message;
    EXPECT_TRUE(repeated->repeated);
    EXPECT_EQ(repeated->order.number, second->order.number);
    EXPECT_EQ(actions::floor(lab())->size() + actions::closedPage(lab())->size(), 2U);
}

}  // namespace
