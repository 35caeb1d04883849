/// A day at the records, with the keyboard alone and on real storage.
#include <gmock/gmock.h>

#include <QSqlQuery>

#include "tests/apps/desktop/at_the_window.h"

namespace {

using namespace desktop_tests;
using desktop::ActionButton;
using desktop::RoomName;
using domain::OrderStatus;
using testing::HasSubstr;

class Workday : public AtTheWindow {};

TEST_F(Workday, GoesFromAFileToTheFirstStageDoneWithTheKeyboardAlone) {
    dialogs_.file = laboratory_.write(support::upperClassIIIMod1(), "case.json");
    press(Qt::Key_F2);
    EXPECT_EQ(shell_.roomName(), RoomName::Intake);
    press(Qt::Key_F5);
    EXPECT_EQ(shell_.intake().form().prescription(), support::upperClassIIIMod1());
    press(Qt::Key_F6);
    ASSERT_EQ(shell_.roomName(), RoomName::Order) << said();
    const domain::OrderNumber number = floor().at(0).number;
    EXPECT_EQ(orderOf(number).order.status, OrderStatus::Received);
    press(Qt::Key_F9);
    ASSERT_EQ(orderOf(number).order.status, OrderStatus::InWork) << said();
    press(Qt::Key_F5);
    EXPECT_EQ(orderOf(number).order.steps.front().status, domain::StageStatus::InHand) << said();
    // The focus stands on the first line of the checklist.
    press(Qt::Key_Space);
    press(Qt::Key_Tab);
    press(Qt::Key_Space);
    press(Qt::Key_Tab);
    type(QStringLiteral("hypochlorite"));
    press(Qt::Key_Return);
    type(QStringLiteral("10"));
    press(Qt::Key_F6);
    EXPECT_EQ(orderOf(number).order.steps.front().status, domain::StageStatus::Done) << said();
    EXPECT_THAT(said(), HasSubstr("receipt done"));
    press(Qt::Key_Escape);
    EXPECT_EQ(shell_.roomName(), RoomName::Floor);
}

TEST_F(Workday, FillsTheFormByHandAndLogsTheOrder) {
    press(Qt::Key_F2);
    auto* form = shell_.findChild<desktop::FormView*>();
    ASSERT_TRUE(form->hasFocus());
    press(Qt::Key_Return);  // opens the group "identity"
    press(Qt::Key_Down);
    press(Qt::Key_Return);
    type(QStringLiteral("P-77"));
    press(Qt::Key_Return);
    EXPECT_EQ(shell_.intake().form().prescription().identity.patientReference, "P-77");
    press(Qt::Key_F6);
    ASSERT_EQ(floor().size(), 1U) << said();
    EXPECT_EQ(floor().front().patient, "P-77");
    EXPECT_EQ(shell_.roomName(), RoomName::Order);
}

TEST_F(Workday, ShowsNoNamesWhoseShowingCannotBeNoted) {
    const auto number = logged(support::upperClassIIIMod1());
    shell_.enter(RoomName::Floor);
    auto* rows = shell_.findChild<QTableView*>(QStringLiteral("floor"))->model();
    ASSERT_EQ(rows->rowCount(), 1);
    logged(support::lowerClassI());
    const auto run = [&](const char* sql) {
        QSqlQuery query{(*laboratory_).records().database()};
        return query.exec(QString::fromUtf8(sql));
    };
    ASSERT_TRUE(run("CREATE TEMP TABLE kept AS SELECT * FROM access_head"));
    ASSERT_TRUE(run("DELETE FROM access_head"));
    shell_.enter(RoomName::Stock);
    shell_.enter(RoomName::Floor);
    EXPECT_EQ(rows->rowCount(), 0);
    EXPECT_THAT(said(), HasSubstr("the head of the access log is missing"));
    laboratory_.clock.letPass(std::int64_t{24} * 60);
    shell_.openOrder(number);
    EXPECT_NE(shell_.roomName(), RoomName::Order);
    ASSERT_TRUE(run("INSERT INTO access_head SELECT * FROM kept"));
    shell_.enter(RoomName::Floor);
    EXPECT_EQ(rows->rowCount(), 2);
}

TEST_F(Workday, SaysInItsPlaceWhyAFileCannotBeRead) {
    dialogs_.file = laboratory_.folder();
    press(Qt::Key_F2);
    press(Qt::Key_F5);
    EXPECT_THAT(said(), HasSubstr("is a folder"));
    EXPECT_TRUE(floor().empty());
}

TEST_F(Workday, DoesNotLogAFormWithATextThatCannotBeRead) {
    press(Qt::Key_F2);
    auto& form = const_cast<models::PrescriptionFormModel&>(shell_.intake().form());
    form.show(support::upperClassIV());
    form.setData(form.index(2, models::PrescriptionFormModel::Content), "2026-02-30");
    EXPECT_THAT(said(), HasSubstr("cannot be read"));
    press(Qt::Key_F6);
    EXPECT_TRUE(floor().empty());
}

TEST_F(Workday, OpensAnOrderWhoseNumberIsScannedAnywhere) {
    const auto first = logged(support::upperClassIIIMod1());
    const auto second = logged(support::lowerClassI());
    shell_.openOrder(first);
    type(QString::fromStdString(second.text()));
    const auto* where = shell_.findChild<QLabel*>(QStringLiteral("where"));
    ASSERT_NE(where, nullptr);
    EXPECT_THAT(where->text().toStdString(), HasSubstr(second.text()));
}

TEST_F(Workday, TellsASlipOfAScannedNumberAndAnOrderThatIsNotThere) {
    std::string slip = logged(support::upperClassIIIMod1()).text();
    slip.back() = slip.back() == '0' ? '1' : '0';
    press(Qt::Key_F, Qt::ControlModifier);
    type(QString::fromStdString(slip));
    EXPECT_THAT(said(), HasSubstr("check digit does not fit"));
    press(Qt::Key_Escape);
    press(Qt::Key_F, Qt::ControlModifier);
    type(QString::fromStdString(domain::OrderNumber::make(26, 4711)->text()));
    EXPECT_THAT(said(), HasSubstr("no such order"));
}

TEST_F(Workday, SearchesAsOneTypes) {
    logged(support::upperClassIIIMod1());
    logged(support::lowerClassI());
    shell_.enter(RoomName::Floor);
    press(Qt::Key_F, Qt::ControlModifier);
    type(QStringLiteral("lower"));
    const auto* orders = shell_.findChild<QTableView*>(QStringLiteral("floor"));
    ASSERT_NE(orders, nullptr);
    EXPECT_EQ(orders->model()->rowCount(), 1);
    press(Qt::Key_Escape);
    EXPECT_EQ(orders->model()->rowCount(), 2);
    press(Qt::Key_Return);
    EXPECT_EQ(shell_.roomName(), RoomName::Order);
}

TEST_F(Workday, OffersOnlyTheAnswerWhileTheDentistIsAsked) {
    shell_.openOrder(logged(unsurveyed()));
    EXPECT_FALSE(button(QStringLiteral("Accept"))->isEnabled());
    EXPECT_FALSE(isOffered(QStringLiteral("Start")));
    EXPECT_TRUE(button(QStringLiteral("Record answer"))->isNext());
    dialogs_.answerGiven =
        desktop::AnswerGiven{.words = {}, .file = laboratory_.write(support::lowerClassI(), "a")};
    press(Qt::Key_F8);
    EXPECT_TRUE(button(QStringLiteral("Accept"))->isNext()) << said();
    EXPECT_EQ(orderOf(floor().front().number).order.revisionNumber, 2);
}

TEST_F(Workday, StopsAnOrderWithAFlagAndGoesOnAfterTheAnswer) {
    const auto number = logged(support::upperClassIIIMod1());
    shell_.openOrder(number);
    press(Qt::Key_F9);
    dialogs_.flagGiven = desktop::FlagGiven{domain::FlagReason::CastDamaged, "cusp of 16 broken"};
    press(Qt::Key_F7);
    EXPECT_FALSE(button(QStringLiteral("Start"))->isEnabled());
    EXPECT_THAT(button(QStringLiteral("Start"))->toolTip().toStdString(),
                HasSubstr("cast damaged"));
    EXPECT_EQ(orderOf(number).flagNotes, std::vector<std::string>{"cusp of 16 broken"});
    dialogs_.answerGiven = desktop::AnswerGiven{.words = "a new cast is on its way", .file = {}};
    press(Qt::Key_F8);
    EXPECT_TRUE(button(QStringLiteral("Start"))->isEnabled()) << said();
}

TEST_F(Workday, ARefusalStandsWhereThePersonLooks) {
    const auto number = logged(support::upperClassIIIMod1());
    shell_.openOrder(number);
    // Somebody else was faster, at another screen.
    ASSERT_TRUE(actions::accept(*laboratory_, number, {}, laboratory_.signIn()));
    press(Qt::Key_F9);
    EXPECT_THAT(said(), HasSubstr("accepted already"));
    EXPECT_TRUE(button(QStringLiteral("Start"))->isEnabled()) << "and the newest state is shown";
}

TEST_F(Workday, NothingHappensWhenThePersonGoesBack) {
    const auto number = logged(unsurveyed());
    shell_.openOrder(number);
    press(Qt::Key_F7);
    press(Qt::Key_F8);
    EXPECT_EQ(orderOf(number).history.size(), 1U);
}

TEST_F(Workday, PrintsTheSheetOfAnOrder) {
    shell_.openOrder(logged(support::upperClassIIIMod1()));
    press(Qt::Key_F10);
    ASSERT_EQ(dialogs_.papers.size(), 1U) << said();
    EXPECT_TRUE(std::filesystem::exists(dialogs_.papers.front()));
}

TEST_F(Workday, PointingAtAToothChangesThePrescription) {
    press(Qt::Key_F2);
    dialogs_.toothGroup = "is";
    dialogs_.toothWord = "missing";
    auto* picture = shell_.intake().findChild<desktop::ArchView*>();
    QTest::mouseClick(
        picture, Qt::LeftButton, {},
        picture->placeOf(domain::Tooth::at(domain::Arch::Upper, 3)).center().toPoint());
    EXPECT_EQ(shell_.intake().form().prescription().dentition.of(
                  domain::Tooth::at(domain::Arch::Upper, 3)),
              domain::ToothState::Missing);
}

}  // namespace
