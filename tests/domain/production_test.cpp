#include <gtest/gtest.h>

#include "domain/production/decide.h"
#include "domain/production/evolve.h"
#include "tests/support/floor.h"

namespace {

using namespace domain;
using support::Bench;

Finding finding(Severity severity, std::string rule) {
    return {.rule = std::move(rule), .severity = severity};
}

Revision revisionOf(std::vector<Finding> findings = {}) {
    Revision revision{.findings = std::move(findings)};
    revision.prescription.appliance = Appliance::MetalFramework;
    revision.prescription.framework.making = FrameworkMaking::Cast;
    return revision;
}

Bench received(std::vector<Finding> findings = {}) {
    Bench bench;
    EXPECT_TRUE(bench.give(Receive{*OrderNumber::make(26, 1), revisionOf(std::move(findings))}));
    return bench;
}

Bench accepted() {
    Bench bench = received();
    EXPECT_TRUE(bench.give(Accept{}));
    return bench;
}

TEST(Decide, BringsACastFrameworkFromReceiptToDelivery) {
    Bench bench = accepted();
    const Stage expected[] = {Stage::Receipt,     Stage::Survey,     Stage::BlockOut,
                              Stage::Duplication, Stage::WaxUp,      Stage::Investing,
                              Stage::Casting,     Stage::Finishing,  Stage::FrameworkTryIn,
                              Stage::ToothSetUp,  Stage::ToothTryIn, Stage::Processing,
                              Stage::Polishing,   Stage::Inspection, Stage::Delivery};
    for (const Stage stage : expected) {
        ASSERT_EQ(bench.due(), stage);
        bench.passStage();
        ASSERT_FALSE(HasFatalFailure());
    }
    EXPECT_EQ(bench.order->status, OrderStatus::Delivered);
    EXPECT_EQ(waitsFor(*bench.order), WaitsFor::Nobody);
    EXPECT_NE(bench.refusal(Start{}).find("delivered already"), std::string::npos);
}

TEST(Decide, DoesNotAcceptWhileSomethingIsMissingOrInConflict) {
    for (const Severity severity : {Severity::Missing, Severity::Conflict}) {
        Bench bench = received({finding(severity, "survey.present")});
        EXPECT_EQ(waitsFor(*bench.order), WaitsFor::Dentist);
        EXPECT_NE(bench.refusal(Accept{SealedText{}}).find("survey.present"), std::string::npos);
    }
}

TEST(Decide, TakesACautionOnlyWithAReason) {
    Bench bench = received({finding(Severity::Caution, "alloy.uncommon")});
    EXPECT_EQ(waitsFor(*bench.order), WaitsFor::Manager);
    EXPECT_NE(bench.refusal(Accept{}).find("reason"), std::string::npos);
    ASSERT_TRUE(bench.give(Accept{SealedText{"T000001", "digest"}}));
    EXPECT_EQ(bench.order->cautionsTaken, std::vector<std::string>{"alloy.uncommon"});
    EXPECT_EQ(bench.order->acceptedBy->text(), "MK");
}

TEST(Decide, RefusesStagesOutOfOrder) {
    Bench bench = received();
    EXPECT_NE(bench.refusal(Start{}).find("not accepted yet"), std::string::npos);
    ASSERT_TRUE(bench.give(Accept{}));
    EXPECT_NE(bench.refusal(Accept{}).find("accepted already"), std::string::npos);
    EXPECT_NE(bench.refusal(Start{Stage::Casting}).find("the stage due is receipt"),
              std::string::npos);
    EXPECT_NE(bench.refusal(Finish{}).find("not in hand"), std::string::npos);
    ASSERT_TRUE(bench.give(Start{}));
    EXPECT_NE(bench.refusal(Start{}).find("in hand already, by MK"), std::string::npos);
    EXPECT_NE(bench.refusal(Finish{Stage::Survey}).find("the stage due is receipt"),
              std::string::npos);
}

TEST(Decide, StopsAtAFlagUntilItIsAnswered) {
    Bench bench = accepted();
    ASSERT_TRUE(bench.give(Flag{FlagReason::CastDamaged, {}}));
    EXPECT_EQ(waitsFor(*bench.order), WaitsFor::Dentist);
    EXPECT_EQ(holdUp(*bench.order), "1 question");
    EXPECT_NE(bench.refusal(Start{}).find("stopped by a question"), std::string::npos);
    EXPECT_NE(bench.refusal(Answer{}).find("needs words"), std::string::npos);
    ASSERT_TRUE(bench.give(Answer{.words = SealedText{"T000001", "digest"}}));
    EXPECT_TRUE(bench.give(Start{}));
}

TEST(Decide, TakesAnAnswerOnlyToWhatWasAsked) {
    Bench bench = accepted();
    EXPECT_NE(bench.refusal(Answer{.words = SealedText{}}).find("nothing was asked"),
              std::string::npos);
    Bench asked = received({finding(Severity::Missing, "shade.given")});
    EXPECT_NE(asked.refusal(Answer{.words = SealedText{}}).find("completed prescription"),
              std::string::npos);
    ASSERT_TRUE(asked.give(Answer{.revision = revisionOf()}));
    EXPECT_EQ(asked.order->revisionNumber, 2);
    EXPECT_TRUE(asked.give(Accept{}));
}

TEST(Decide, RefusesAnAnswerThatIsAnotherOrder) {
    Bench bench = accepted();
    ASSERT_TRUE(bench.give(Flag{FlagReason::DesignUnclear, {}}));
    Revision other = revisionOf();
    other.prescription.arch = Arch::Lower;
    EXPECT_NE(bench.refusal(Answer{.revision = other}).find("other arch"), std::string::npos);
    Revision milled = revisionOf();
    milled.prescription.framework.making = FrameworkMaking::Milled;
    EXPECT_NE(bench.refusal(Answer{.revision = milled}).find("another way of making"),
              std::string::npos);
}

TEST(Decide, HoldsWorkWhenAnAnswerBringsNewFindings) {
    Bench bench = accepted();
    ASSERT_TRUE(bench.give(Flag{FlagReason::DesignUnclear, {}}));
    ASSERT_TRUE(
        bench.give(Answer{.revision = revisionOf({finding(Severity::Caution, "survey.tilt")})}));
    EXPECT_NE(bench.refusal(Start{}).find("cautions nobody has taken: survey.tilt"),
              std::string::npos);
    ASSERT_TRUE(bench.give(Accept{SealedText{"T000001", "digest"}}));
    EXPECT_TRUE(bench.give(Start{}));
}

TEST(Decide, KnowsNoOrderBeforeItIsReceivedAndNoneTwice) {
    Bench bench;
    for (const Command& command : {Command{Accept{}}, Command{Start{}}, Command{Finish{}},
                                   Command{Flag{}}, Command{Answer{}}})
        EXPECT_EQ(bench.refusal(command), "no such order");
    Bench twice = received();
    EXPECT_NE(twice.refusal(Receive{*OrderNumber::make(26, 1), {}}).find("taken already"),
              std::string::npos);
}

TEST(Evolve, UndoesOnlyTheWorkAnAnswerTouches) {
    const Prescription before = revisionOf().prescription;
    Prescription shade = before;
    shade.shades = {{.guide = "A-D", .tab = "A2"}};
    EXPECT_EQ(firstUndone(before, shade), Stage::ToothSetUp);
    Prescription design = shade;
    design.rests = {{.tooth = 14_fdi}};
    EXPECT_EQ(firstUndone(before, design), Stage::Survey);
    Prescription paper = before;
    paper.needed = Date::parse("2026-12-24");
    EXPECT_FALSE(firstUndone(before, paper));
}

TEST(Evolve, SendsAnOrderBackToTheStageTheAnswerUndid) {
    Bench bench = accepted();
    bench.passUpTo(Stage::Processing);
    ASSERT_FALSE(HasFatalFailure());
    ASSERT_TRUE(bench.give(Flag{FlagReason::ShadeUnclear, {}}));
    Revision revision = revisionOf();
    revision.prescription.shades = {{.guide = "A-D", .tab = "A2"}};
    ASSERT_TRUE(bench.give(Answer{.revision = revision}));
    EXPECT_EQ(currentStep(*bench.order)->stage, Stage::ToothSetUp);
    EXPECT_EQ(currentStep(*bench.order)->status, StageStatus::ToDo);
}

TEST(Route, EndsInInspectionAndDeliveryWhateverIsMade) {
    for (const auto& code : enumCodes<Route>) {
        if (goesAfter(code.value)) continue;
        const auto stages = stagesOf(code.value);
        ASSERT_GE(stages.size(), 4U);
        EXPECT_EQ(stages.front(), Stage::Receipt);
        EXPECT_EQ(stages[stages.size() - 2], Stage::Inspection);
        EXPECT_EQ(stages.back(), Stage::Delivery);
    }
}

}  // namespace
