/// Questions to the dentist: an order stands still with them, and an answer undoes what it changes.
#include <gmock/gmock.h>

#include <algorithm>
#include <fstream>

#include "apps/actions/floor.h"
#include "apps/actions/papers.h"
#include "tests/apps/actions/floor_bench.h"

namespace {

using actions_tests::saidBy;
using domain::FlagReason;
using domain::OrderNumber;
using domain::Stage;
using domain::StageStatus;
using domain::WaitsFor;
using support::HandClock;
using support::kMaker;
using support::kManager;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr std::int64_t kHour = 3'600'000'000;

class Questions : public actions_tests::FloorBench {
protected:
    std::string flag(const OrderNumber& number, FlagReason reason, const char* note) {
        return saidBy(actions::flag(lab(), number, reason, note, floor_.as(kMaker)));
    }
    std::string answer(const OrderNumber& number, const char* words,
                       const std::optional<domain::Prescription>& prescription = {}) {
        return saidBy(actions::answer(lab(), number, {.words = words, .prescription = prescription},
                                      floor_.as(kManager)));
    }
    std::int64_t laboratoryHours(const OrderNumber& number) const {
        return laboratoryTime(order(number), clock_.now()) / kHour;
    }
};

TEST_F(Questions, StopTheWorkUntilTheyAreAnswered) {
    const OrderNumber number = castFramework();
    floor_.bringTo(number, Stage::Survey);
    floor_.begin(number);
    const auto given = floor_.records(number);
    ASSERT_EQ(flag(number, FlagReason::UndercutNotFound, "none at 16"), "");
    const std::string stopped = "stopped by a question (undercut not found)";
    EXPECT_THAT(saidBy(actions::record(lab(), number, {}, given, floor_.as(kMaker))),
                HasSubstr(stopped));
    EXPECT_THAT(saidBy(actions::finish(lab(), {number}, {}, floor_.as(kMaker))),
                HasSubstr(stopped));
    EXPECT_THAT(saidBy(actions::scan(lab(), number, floor_.as(kMaker))), HasSubstr(stopped));
    EXPECT_EQ(waitsFor(order(number)), WaitsFor::Dentist);
    EXPECT_EQ(answer(number, "use the distal one"), "");
    EXPECT_EQ(step(number, Stage::Survey).status, StageStatus::InHand) << "words undo nothing";
    EXPECT_EQ(saidBy(actions::record(lab(), number, {}, given, floor_.as(kMaker))), "");
    EXPECT_EQ(saidBy(actions::finish(lab(), {number}, {}, floor_.as(kMaker))), "");
}

TEST_F(Questions, LetTheClockOfTheLaboratoryStandStill) {
    const OrderNumber number = castFramework();
    clock_.letPass(3 * 60);
    EXPECT_EQ(laboratoryHours(number), 3);
    ASSERT_EQ(flag(number, FlagReason::CastDamaged, "a chip at 17"), "");
    clock_.letPass(40 * 60);
    EXPECT_EQ(laboratoryHours(number), 3);
    EXPECT_EQ(spentFor(order(number), WaitsFor::Dentist, clock_.now()) / kHour, 40);
    ASSERT_EQ(answer(number, "outside the design: go on"), "");
    clock_.letPass(2 * 60);
    EXPECT_EQ(laboratoryHours(number), 5);
    const auto lines = actions::floor(lab());
    ASSERT_TRUE(lines);
    EXPECT_EQ(lines->front().laboratoryTime / kHour, 5);
}

TEST_F(Questions, AnsweredByAnotherDesignBeginTheWorkAgainAtTheSurvey) {
    const OrderNumber number = castFramework();
    floor_.bringTo(number, Stage::WaxUp);
    ASSERT_EQ(flag(number, FlagReason::DesignUnclear, "strap or plate?"), "");
    auto other = support::upperClassIIIMod1();
    other.majorConnector->width = *other.majorConnector->width + domain::Microns::of(1000);
    ASSERT_EQ(answer(number, "a wider one", other), "");
    const auto standing = order(number);
    EXPECT_EQ(standing.revisionNumber, 2);
    EXPECT_EQ(floor_.due(number), Stage::Survey);
    EXPECT_EQ(step(number, Stage::Receipt).status, StageStatus::Done);
    for (const Stage undone : {Stage::Survey, Stage::BlockOut, Stage::Duplication}) {
        EXPECT_EQ(step(number, undone).status, StageStatus::ToDo);
        EXPECT_EQ(step(number, undone).attempt, 2) << codeOf(undone);
        EXPECT_THAT(recordsOf(standing, undone), IsEmpty()) << "the first attempt's do not count";
    }
    EXPECT_GT(std::ranges::count(standing.records, Stage::Survey, &domain::KeptRecord::stage), 0)
        << "what was recorded stays";
    floor_.deliver(number);
    EXPECT_THAT(problems(), IsEmpty());
}

TEST_F(Questions, AnsweredByAnotherShadeLeaveTheFrameworkAlone) {
    const OrderNumber number = castFramework();
    floor_.bringTo(number, Stage::Processing);
    ASSERT_EQ(flag(number, FlagReason::ShadeUnclear, "A3 looks dark"), "");
    auto other = support::upperClassIIIMod1();
    other.shades.front().tab = "A2";
    ASSERT_EQ(answer(number, "A2", other), "");
    EXPECT_EQ(floor_.due(number), Stage::ToothSetUp);
    EXPECT_EQ(step(number, Stage::Casting).attempt, 1);
    floor_.begin(number);
    auto wrong = floor_.records(number);
    for (actions::GivenRecord& each : wrong)
        if (auto* set = std::get_if<domain::TeethSet>(&each.record)) set->tab = "A3";
    ASSERT_EQ(saidBy(actions::record(lab(), number, {}, wrong, floor_.as(kMaker))), "");
    EXPECT_THAT(saidBy(actions::finish(lab(), {number}, {}, floor_.as(kMaker))),
                HasSubstr("shade A3 of A-D scale was not prescribed"));
}

TEST_F(Questions, AreRefusedAnAnswerThatIsNone) {
    const OrderNumber number = castFramework();
    EXPECT_THAT(answer(number, "yes"), HasSubstr("nothing was asked"));
    ASSERT_EQ(flag(number, FlagReason::DesignUnclear, "which?"), "");
    EXPECT_THAT(answer(number, ""), HasSubstr("an answer needs words"));
    EXPECT_THAT(answer(number, "", support::lowerClassI()), HasSubstr("the other arch"));
    auto milled = support::upperClassIIIMod1();
    milled.framework.making = domain::FrameworkMaking::Milled;
    EXPECT_THAT(answer(number, "", milled), HasSubstr("another way of making"));
    EXPECT_EQ(order(number).flags.size(), 1U);
}

TEST_F(Questions, AreNotAnsweredByAnotherDesignWhileTheWorkIsAtThePractice) {
    const OrderNumber number = castFramework();
    floor_.readyAt(number, Stage::FrameworkTryIn);
    floor_.begin(number);
    ASSERT_EQ(flag(number, FlagReason::DesignUnclear, "which?"), "");
    auto other = support::upperClassIIIMod1();
    other.shades.front().tab = "A2";
    EXPECT_THAT(answer(number, "", other), HasSubstr("record its return first"));
    EXPECT_EQ(answer(number, "as drawn"), "");
}

TEST_F(Questions, ArePrintedOnASheet) {
    const OrderNumber number = castFramework();
    EXPECT_THAT(
        saidBy(actions::print(lab(), number, actions::Paper::QuestionSheet, {}, floor_.as(kMaker))),
        HasSubstr("nothing to ask"));
    ASSERT_EQ(flag(number, FlagReason::ShadeUnclear, "which guide?"), "");
    const auto file =
        actions::print(lab(), number, actions::Paper::QuestionSheet, {}, floor_.as(kMaker));
    ASSERT_TRUE(file) << file.error().message;
    std::ifstream paper{*file, std::ios::binary};
    std::string head(5, ' ');
    paper.read(head.data(), 5);
    EXPECT_EQ(head, "%PDF-");
}

TEST_F(Questions, BringCautionsThatTheManagerTakes) {
    const OrderNumber number = castFramework();
    ASSERT_EQ(flag(number, FlagReason::EnclosureMissing, "no bite"), "");
    auto careless = support::upperClassIIIMod1();
    careless.enclosures.front().disinfection.reset();
    ASSERT_EQ(answer(number, "here it is", careless), "");
    ASSERT_FALSE(untakenCautions(order(number)).empty());
    EXPECT_THAT(saidBy(actions::start(lab(), {number}, {}, floor_.as(kMaker))),
                HasSubstr("cautions nobody has taken"));
    EXPECT_THAT(saidBy(actions::accept(lab(), number, {}, floor_.as(kManager))),
                HasSubstr("give the reason"));
    EXPECT_EQ(saidBy(actions::accept(lab(), number, "disinfected here", floor_.as(kManager))), "");
    EXPECT_EQ(saidBy(actions::start(lab(), {number}, {}, floor_.as(kMaker))), "");
}

}  // namespace
