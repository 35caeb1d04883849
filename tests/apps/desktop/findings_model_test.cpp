#include "apps/desktop/models/findings_model.h"

#include <gtest/gtest.h>

#include <QAbstractItemModelTester>

#include "apps/desktop/models/mark.h"

namespace {

using models::FindingsModel;
using models::Mark;

std::vector<domain::Finding> someFindings() {
    using namespace domain;
    return {{.rule = "clasp.reciprocation",
             .severity = Severity::Conflict,
             .tooth = 16_fdi,
             .found = "nothing opposes the arm",
             .requirement = "Every retentive arm is opposed.",
             .question = "What opposes it?",
             .source = "a textbook, chapter 4"},
            {.rule = "survey.present", .severity = Severity::Missing, .found = "no survey data"},
            {.rule = "alloy.nickel", .severity = Severity::Caution, .found = "nickel 61 %"}};
}

TEST(FindingsModel, KeepsTheModelContract) {
    FindingsModel model;
    QAbstractItemModelTester tester{&model, QAbstractItemModelTester::FailureReportingMode::Fatal};
    model.show({.findings = someFindings(), .notation = domain::Notation::Iso3950});
    model.show({});
    EXPECT_EQ(model.rowCount(), 0);
}

TEST(FindingsModel, NumbersTheFindingsAsTheFlagsOnThePicture) {
    FindingsModel model;
    model.show({.findings = someFindings(), .notation = domain::Notation::Iso3950});
    for (int row = 0; row < model.rowCount(); ++row)
        EXPECT_EQ(model.index(row, FindingsModel::Number).data().toInt(), row + 1);
}

TEST(FindingsModel, WritesTeethInTheNotationOfThePrescription) {
    FindingsModel model;
    model.show({.findings = someFindings(), .notation = domain::Notation::Universal});
    // ISO 3950 16 is 3 in the Universal notation: HL7 dental-data-exchange crosswalk D1.
    EXPECT_EQ(model.index(0, FindingsModel::Tooth).data().toString(), "3");
    EXPECT_EQ(model.index(1, FindingsModel::Tooth).data().toString(), "");
}

TEST(FindingsModel, GivesEachSeverityItsMark) {
    FindingsModel model;
    model.show({.findings = someFindings(), .notation = domain::Notation::Iso3950});
    const auto mark = [&](int row) {
        return static_cast<Mark>(model.index(row, 0).data(FindingsModel::MarkRole).toInt());
    };
    EXPECT_EQ(mark(0), Mark::Refused);
    EXPECT_EQ(mark(1), Mark::Asked);
    EXPECT_EQ(mark(2), Mark::Caution);
    EXPECT_EQ(model.index(2, FindingsModel::Severity).data().toString(), "caution");
}

TEST(FindingsModel, LeadsWithTheRuleAndEndsWithItsSource) {
    FindingsModel model;
    model.show({.findings = someFindings(), .notation = domain::Notation::Iso3950});
    EXPECT_EQ(model.index(0, FindingsModel::Rule).data().toString(), "clasp.reciprocation");
    EXPECT_EQ(model.index(0, FindingsModel::Source).data().toString(), "a textbook, chapter 4");
}

TEST(FindingsModel, PutsTheQuestionsOfTheBenchFirstAsTheQuestionSheetDoes) {
    using namespace domain;
    models::Asked asked{.findings = someFindings()};
    asked.atBench.push_back(
        {OpenFlag{.reason = FlagReason::CastDamaged, .person = PersonCode::parse("MK").value()},
         "cusp of 16 broken"});
    FindingsModel model;
    model.show(asked);
    EXPECT_EQ(asked.firstFinding(), 2);
    EXPECT_EQ(model.rowCount(), 4);
    EXPECT_EQ(model.index(0, FindingsModel::Found).data().toString(), "cusp of 16 broken");
    EXPECT_EQ(model.index(1, FindingsModel::Rule).data().toString(), "clasp.reciprocation");
    EXPECT_EQ(models::summaryOf(asked), "3 questions, 1 caution");
    EXPECT_EQ(models::summaryOf({}), "Nothing to ask");
}

TEST(FindingsModel, AsksForAnswersBeforeItTellsCautions) {
    auto findings = someFindings();
    std::swap(findings.front(), findings.back());
    const auto sorted = models::inOrderOfAsking(findings);
    EXPECT_EQ(sorted.front().rule, "survey.present");
    EXPECT_EQ(sorted.back().rule, "alloy.nickel");
}

TEST(FindingsModel, NamesWhoeverTookACaution) {
    models::Asked asked{.findings = someFindings(),
                        .cautionsTaken = {"alloy.nickel"},
                        .takenBy = domain::PersonCode::parse("RZ")};
    FindingsModel model;
    model.show(asked);
    EXPECT_EQ(model.index(2, FindingsModel::Severity).data().toString(), "caution, taken by RZ");
    asked.cautionsTaken.clear();
    model.show(asked);
    EXPECT_EQ(model.index(2, FindingsModel::Severity).data().toString(), "caution");
}

}  // namespace
