/// Who may stand at the window: badge and PIN, name and password, the first person, and the lock.
#include <gmock/gmock.h>

#include <QComboBox>

#include "apps/actions/workshop.h"
#include "apps/desktop/remembered.h"
#include "tests/apps/desktop/at_the_window.h"

namespace {

using namespace desktop_tests;
using desktop::RoomName;
using testing::HasSubstr;
using Way = desktop::SignInPage::Way;

constexpr const char* kBadge = "4711-0815-42";
constexpr const char* kPin = "271828";

class SignIn : public AtTheWindow {
protected:
    void lock() { press(Qt::Key_L, Qt::ControlModifier); }
    void enterLine(const QString& words) {
        type(words);
        press(Qt::Key_Return);
    }
    void giveBadge() {
        const auto given =
            actions::giveBadge(*laboratory_, support::codeOfPerson("MK"), actions::Secret{kBadge},
                               actions::Secret{kPin}, laboratory_.signIn());
        ASSERT_TRUE(given) << given.error().message;
    }
    std::string whoStands() {
        return shell_.findChild<QLabel*>(QStringLiteral("who"))->text().toStdString();
    }
};

TEST_F(SignIn, TheRoomsAreOutOfSightWhileNobodyIsSignedIn) {
    EXPECT_EQ(whoStands(), "MK, manager");
    lock();
    EXPECT_EQ(desk_.who, std::nullopt);
    EXPECT_TRUE(shell_.signIn().isVisible());
    EXPECT_FALSE(shell_.intake().isVisible());
    press(Qt::Key_F2);
    EXPECT_EQ(shell_.signIn().way(), Way::Name) << "F2 belongs to the page now, not to the rail";
    EXPECT_EQ(shell_.roomName(), RoomName::Floor);
}

TEST_F(SignIn, NothingOfTheRecordsIsReadBeforeSomebodyHasSignedIn) {
    const domain::OrderNumber number = logged(support::upperClassIIIMod1());
    lock();
    const auto before = (*laboratory_).records().statements();
    shell_.enter(RoomName::Floor);
    shell_.openOrder(number);
    EXPECT_EQ((*laboratory_).records().statements(), before);
    press(Qt::Key_F2);
    enterLine(QStringLiteral("MK"));
    enterLine(QString::fromLatin1(support::kPassword));
    ASSERT_FALSE(shell_.isLocked()) << said();
    EXPECT_TRUE(shell_.order().shows(number)) << "what was wanted is opened then";
}

TEST_F(SignIn, LockingEndsTheSessionItself) {
    const actions::Who before = desktop::asWho(*desk_.who);
    lock();
    EXPECT_FALSE(actions::use(*laboratory_, before));
}

TEST_F(SignIn, OneFieldTakesTheBadgeAndThenThePin) {
    giveBadge();
    lock();
    ASSERT_EQ(shell_.signIn().way(), Way::Badge);
    enterLine(QString::fromLatin1(kBadge));
    EXPECT_THAT(said(), HasSubstr("Badge read"));
    EXPECT_TRUE(shell_.isLocked());
    enterLine(QString::fromLatin1(kPin));
    ASSERT_TRUE(desk_.who) << said();
    EXPECT_EQ(desk_.who->person.text(), "MK");
    EXPECT_FALSE(shell_.signIn().isVisible());
}

TEST_F(SignIn, AWrongPinIsRefusedWhereThePersonLooksAndTheBadgeIsScannedAnew) {
    giveBadge();
    lock();
    enterLine(QString::fromLatin1(kBadge));
    enterLine(QStringLiteral("000000"));
    EXPECT_TRUE(shell_.isLocked());
    EXPECT_NE(said(), "");
    enterLine(QString::fromLatin1(kBadge));
    enterLine(QString::fromLatin1(kPin));
    EXPECT_FALSE(shell_.isLocked()) << said();
}

TEST_F(SignIn, ByNameAndPassword) {
    lock();
    press(Qt::Key_F2);
    enterLine(QStringLiteral("MK"));
    enterLine(QStringLiteral("not the password"));
    EXPECT_TRUE(shell_.isLocked());
    EXPECT_NE(said(), "");
    enterLine(QString::fromLatin1(support::kPassword));
    ASSERT_FALSE(shell_.isLocked()) << said();
    EXPECT_EQ(whoStands(), "MK, manager");
}

TEST_F(SignIn, APasswordSomebodyElseGaveIsReplacedOnTheSpot) {
    const auto once = actions::resetPassword(*laboratory_, support::codeOfPerson("MK"),
                                             support::chief(*laboratory_));
    ASSERT_TRUE(once);
    shell_.lock();
    press(Qt::Key_F2);
    enterLine(QStringLiteral("MK"));
    enterLine(QString::fromStdString(once->text()));
    ASSERT_EQ(shell_.signIn().way(), Way::Replace) << said();
    enterLine(QString::fromStdString(once->text()));
    enterLine(QStringLiteral("wax on every bench"));
    enterLine(QStringLiteral("wax on every binch"));
    EXPECT_THAT(said(), HasSubstr("differ"));
    enterLine(QStringLiteral("wax on every bench"));
    EXPECT_TRUE(shell_.isLocked()) << "Enter goes on to the second line";
    enterLine(QStringLiteral("wax on every bench"));
    EXPECT_FALSE(shell_.isLocked()) << said();
}

TEST_F(SignIn, TheStationIsChosenAmongThoseEnteredAndRemembered) {
    for (const char* code : {"SURVEY-1", "WAX-1"})
        ASSERT_TRUE(actions::enterStation(*laboratory_, *domain::ThingCode::parse(code),
                                          domain::StationKind::WaxBench, laboratory_.signIn()));
    lock();
    auto* station = shell_.signIn().findChild<QComboBox*>();
    ASSERT_EQ(station->count(), 2);
    station->setCurrentIndex(1);
    press(Qt::Key_F2);
    enterLine(QStringLiteral("MK"));
    enterLine(QString::fromLatin1(support::kPassword));
    ASSERT_TRUE(desk_.who) << said();
    EXPECT_EQ(desk_.who->station, "WAX-1");
    EXPECT_EQ(whoStands(), "MK, manager, at WAX-1");
    EXPECT_EQ(desktop::rememberedStation(*laboratory_), "WAX-1");
    lock();
    EXPECT_EQ(station->currentData().toString(), "WAX-1");
}

TEST_F(SignIn, WhatWasTypedStandsAsItWasAfterTheLock) {
    shell_.enter(RoomName::Intake);
    shell_.intake().open(laboratory_.write(support::upperClassIV(), "case.json"));
    lock();
    press(Qt::Key_F2);
    enterLine(QStringLiteral("MK"));
    enterLine(QString::fromLatin1(support::kPassword));
    EXPECT_EQ(shell_.roomName(), RoomName::Intake);
    EXPECT_EQ(shell_.intake().form().prescription(), support::upperClassIV());
}

TEST_F(SignIn, TheWindowLocksWhenNothingIsPressedForTheIdleMinutes) {
    laboratory_.clock.letPass(15 - 1);
    shell_.lookAtTheClock();
    EXPECT_FALSE(shell_.isLocked());
    laboratory_.clock.letPass(1);
    shell_.lookAtTheClock();
    EXPECT_TRUE(shell_.isLocked());
    EXPECT_THAT(said(), HasSubstr("nothing was pressed for 15 minutes"));
}

TEST_F(SignIn, EveryPressCountsAsUseOfTheSession) {
    for (int i = 0; i < 3; ++i) {
        laboratory_.clock.letPass(15 - 1);
        press(Qt::Key_F1);
    }
    EXPECT_FALSE(shell_.isLocked());
    EXPECT_TRUE(actions::use(*laboratory_, desktop::asWho(*desk_.who)));
}

TEST_F(SignIn, APressThatComesTooLateOnlyLocks) {
    laboratory_.clock.letPass(15);
    press(Qt::Key_F2);
    EXPECT_TRUE(shell_.isLocked());
    EXPECT_EQ(shell_.roomName(), RoomName::Floor);
}

TEST_F(SignIn, ASessionThatEndedElsewhereLocksAtTheNextPress) {
    ASSERT_TRUE(actions::signOut(*laboratory_, desktop::asWho(*desk_.who)));
    laboratory_.clock.letPass(2);
    press(Qt::Key_F2);
    EXPECT_TRUE(shell_.isLocked());
    EXPECT_THAT(said(), HasSubstr("ended"));
}

TEST(FirstRun, ANewLaboratoryEntersItsFirstManagerAtTheWindow) {
    const TemporaryLaboratory laboratory;
    AnsweredDialogs dialogs;
    const desktop::Look look{domain::Light::Light};
    desktop::Desk desk{*laboratory, dialogs, look, {}};
    desktop::Shell shell{desk};
    shell.show();
    shell.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&shell));
    EXPECT_EQ(shell.signIn().way(), Way::SetUp);
    for (const char* line : {"AB", "a kiln in the cellar", "a kiln in the cellar"}) {
        QTest::keyClicks(QApplication::focusWidget(), QString::fromLatin1(line));
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    }
    ASSERT_TRUE(desk.who);
    EXPECT_EQ(desk.who->person.text(), "AB");
    const auto people = actions::people(*laboratory);
    ASSERT_EQ(people->size(), 1U);
    EXPECT_EQ(people->front().person.role, domain::Role::Manager);
}

}  // namespace
