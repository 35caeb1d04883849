/// The bench of an order: ticked, recorded, refused at the gate, done, sent, taken back, redone.
#include <gmock/gmock.h>

#include "apps/actions/workshop.h"
#include "apps/desktop/tick_row.h"
#include "tests/apps/desktop/at_the_window.h"

namespace {

using namespace desktop_tests;
using desktop::TickRow;
using domain::Stage;
using domain::StageStatus;
using testing::HasSubstr;
using testing::SizeIs;

class Bench : public AtTheWindow {
protected:
    domain::OrderNumber accepted() {
        const auto number = logged(support::upperClassIIIMod1());
        const auto outcome = actions::accept(*laboratory_, number, {}, laboratory_.signIn());
        EXPECT_TRUE(outcome) << (outcome ? "" : outcome.error().message);
        return number;
    }
    std::vector<TickRow*> rows() {
        std::vector<TickRow*> all;
        for (auto* row : shell_.findChildren<TickRow*>())
            if (row->isVisible()) all.push_back(row);
        return all;
    }
    desktop::LineField* field(const QString& name) {
        for (auto* each : shell_.findChildren<desktop::LineField*>())
            if (each->isVisible() && each->accessibleName().startsWith(name)) return each;
        ADD_FAILURE() << "no field " << name.toStdString();
        return nullptr;
    }
    int lacking() { return shell_.order().gate().rowCount(); }
    const domain::StageStep& step(const domain::OrderNumber& number, Stage stage) {
        view_ = orderOf(number);
        return *std::ranges::find(view_->order.steps, stage, &domain::StageStep::stage);
    }
    void tickEverything() {
        for (TickRow* row : rows())
            if (!row->isRecorded()) QTest::mouseClick(row, Qt::LeftButton);
    }
    void receive() {
        tickEverything();
        field(QStringLiteral("disinfected, with"))->setText(QStringLiteral("hypochlorite"));
        field(QStringLiteral("disinfected, contact"))->setText(QStringLiteral("10"));
        press(Qt::Key_F6);
    }
    void enterSurveyor(std::optional<domain::Date> due = {}) {
        ASSERT_TRUE(actions::enterEquipment(
            *laboratory_, *domain::ThingCode::parse("SV-1"),
            {.kind = domain::EquipmentKind::Surveyor, .serial = "1", .calibrationDue = due},
            laboratory_.signIn()));
    }

    std::optional<actions::OrderView> view_;
};

TEST_F(Bench, WhatIsTickedAndTypedIsRecordedAndTheGateLacksLess) {
    const auto number = accepted();
    shell_.openOrder(number);
    press(Qt::Key_F5);
    ASSERT_THAT(rows(), SizeIs(2));
    EXPECT_EQ(lacking(), 2) << "the checklist, and the disinfection";
    EXPECT_TRUE(button(QStringLiteral("Record"))->isNext());
    QTest::mouseClick(rows().front(), Qt::LeftButton);
    EXPECT_TRUE(orderOf(number).order.records.empty()) << "a slip of the glove is taken back";
    press(Qt::Key_Return, Qt::ControlModifier);
    EXPECT_THAT(orderOf(number).order.records, SizeIs(1));
    EXPECT_TRUE(rows().front()->isRecorded());
    tickEverything();
    field(QStringLiteral("disinfected, with"))->setText(QStringLiteral("hypochlorite 0.5 %"));
    field(QStringLiteral("disinfected, contact"))->setText(QStringLiteral("10"));
    press(Qt::Key_Return, Qt::ControlModifier);
    EXPECT_EQ(lacking(), 0) << said();
    EXPECT_TRUE(button(QStringLiteral("Done"))->isNext());
    press(Qt::Key_F6);
    EXPECT_EQ(step(number, Stage::Receipt).status, StageStatus::Done) << said();
}

TEST_F(Bench, AShutGateRefusesInWordsAndNothingTypedIsLost) {
    const auto number = accepted();
    shell_.openOrder(number);
    press(Qt::Key_F5);
    press(Qt::Key_F6);
    EXPECT_THAT(said(), HasSubstr("receipt lacks"));
    field(QStringLiteral("disinfected, with"))->setText(QStringLiteral("hypochlorite"));
    field(QStringLiteral("disinfected, contact"))->setText(QStringLiteral("a while"));
    press(Qt::Key_F6);
    EXPECT_THAT(said(), HasSubstr("\"a while\" is no time of contact; type it as \"10 min\""));
    EXPECT_EQ(field(QStringLiteral("disinfected, contact"))->text(), "a while");
    shell_.enter(desktop::RoomName::Floor);
    shell_.enter(desktop::RoomName::Order);
    EXPECT_EQ(field(QStringLiteral("disinfected, contact"))->text(), "a while");
}

TEST_F(Bench, TheSecondScanOfATicketStartsTheStageThatIsDue) {
    const auto number = accepted();
    const QString ticket = QString::fromStdString(number.text());
    type(ticket);
    EXPECT_EQ(step(number, Stage::Receipt).status, StageStatus::ToDo) << "the first only opens";
    type(ticket);
    EXPECT_EQ(step(number, Stage::Receipt).status, StageStatus::InHand) << said();
    receive();
    laboratory_.clock.letPass(1);
    ASSERT_EQ(step(number, Stage::Receipt).status, StageStatus::Done) << said();
}

TEST_F(Bench, ATicketScannedIntoAFieldIsATicketAllTheSame) {
    const auto number = accepted();
    const auto other = logged(support::lowerClassI());
    shell_.openOrder(number);
    press(Qt::Key_F5);
    auto* contact = field(QStringLiteral("disinfected, contact"));
    contact->setFocus();
    type(QString::fromStdString(other.text()));
    press(Qt::Key_Return);
    const auto* where = shell_.findChild<QLabel*>(QStringLiteral("where"));
    EXPECT_THAT(where->text().toStdString(), HasSubstr(other.text()));
}

TEST_F(Bench, UndercutsTripodAndSurveyorAreRecordedAtTheSurvey) {
    enterSurveyor();
    const auto number = accepted();
    shell_.openOrder(number);
    press(Qt::Key_F5);
    receive();
    press(Qt::Key_F5);
    ASSERT_EQ(step(number, Stage::Survey).status, StageStatus::InHand) << said();
    tickEverything();
    for (auto* each : shell_.findChildren<desktop::LineField*>())
        if (each->isVisible() && each->accessibleName().startsWith(QStringLiteral("undercut")))
            each->setText(QStringLiteral("0,25"));
    field(QStringLiteral("surveyor"))->setText(QStringLiteral("SV-1"));
    press(Qt::Key_F6);
    EXPECT_EQ(step(number, Stage::Survey).status, StageStatus::Done) << said();
}

TEST_F(Bench, TheLongestOfItsStagesFitsThePanelAndHasOneAccent) {
    enterSurveyor();
    shell_.openOrder(accepted());
    press(Qt::Key_F5);
    receive();
    press(Qt::Key_F5);
    EXPECT_EQ(lacking(), 4) << "checklist, undercuts, tripod marks, surveyor";
    EXPECT_EQ(shell_.size(), (QSize{1366, 768}));
    const auto buttons = shell_.findChildren<desktop::ActionButton*>();
    EXPECT_EQ(std::ranges::count_if(buttons,
                                    [](const auto* each) {
                                        return each->isVisible() && each->isEnabled() &&
                                               each->isNext();
                                    }),
              1);
}

TEST_F(Bench, AManagerAnswersInWritingForASurveyorThatIsOverdue) {
    enterSurveyor(domain::Date::parse("2026-11-01"));
    const auto number = accepted();
    shell_.openOrder(number);
    press(Qt::Key_F5);
    receive();
    press(Qt::Key_F5);
    field(QStringLiteral("surveyor, scanned"))->setText(QStringLiteral("SV-1"));
    press(Qt::Key_Return, Qt::ControlModifier);
    EXPECT_THAT(said(), HasSubstr("its calibration was due on 2026-11-01"));
    field(QStringLiteral("surveyor, if overdue"))->setText(QStringLiteral("checked by gauge"));
    press(Qt::Key_Return, Qt::ControlModifier);
    EXPECT_THAT(orderOf(number).order.records, SizeIs(4)) << said();
}

TEST_F(Bench, WorkBeginsAgainWithItsReason) {
    enterSurveyor();
    const auto number = accepted();
    shell_.openOrder(number);
    press(Qt::Key_F5);
    receive();
    press(Qt::Key_F5);
    press(Qt::Key_F12);
    EXPECT_EQ(dialogs_.stagesAsked, (std::vector{Stage::Receipt, Stage::Survey}));
    EXPECT_EQ(step(number, Stage::Survey).attempt, 1) << "Esc changes nothing";
    dialogs_.againGiven =
        desktop::AgainGiven{domain::RedoReason::DamagedCast, Stage::Survey, "chipped at 16"};
    press(Qt::Key_F12);
    EXPECT_EQ(step(number, Stage::Survey).attempt, 2) << said();
}

TEST_F(Bench, ATechnicianIsToldWhichSkillAStageAsksFor) {
    const auto number = accepted();
    const actions::Who viewer = laboratory_.signIn("JB", domain::Role::Technician, {});
    desk_.who = actions::Session{viewer.person, viewer.token, {}};
    shell_.openOrder(number);
    EXPECT_FALSE(button(QStringLiteral("Start"))->isEnabled());
    EXPECT_THAT(said(), HasSubstr("asks for the skill reception"));
}

TEST_F(Bench, TellsWhoWaitsForWhomAndHowLongTheLaboratoryHasHadIt) {
    const auto number = accepted();
    laboratory_.clock.letPass(4 * 60);
    const actions::Who who = laboratory_.signIn();
    desk_.who = actions::Session{who.person, who.token, {}};
    shell_.openOrder(number);
    EXPECT_THAT(said(), HasSubstr("waits for the bench, since 4 h · with the laboratory 4 h"));
}

TEST_F(Bench, HasRowsAndFieldsForAGlovedFinger) {
    constexpr int kLeast = 44;  // W3C WCAG 2.2, success criterion 2.5.5 (AAA)
    shell_.openOrder(accepted());
    press(Qt::Key_F5);
    ASSERT_FALSE(rows().empty());
    for (const TickRow* row : rows()) EXPECT_GE(row->height(), kLeast);
    EXPECT_GE(field(QStringLiteral("disinfected, with"))->height(), kLeast);
}

}  // namespace
