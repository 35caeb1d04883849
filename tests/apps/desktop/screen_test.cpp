/// What every screen keeps to: names for those who cannot see it, keys for those who cannot point,
/// sizes for those with gloves on.
#include <gtest/gtest.h>

#include <QAbstractItemView>
#include <QAccessible>
#include <QTest>
#include <set>

#include "apps/desktop/rail_button.h"
#include "tests/apps/desktop/temporary_laboratory.h"

namespace {

using namespace desktop_tests;
using desktop::ActionButton;
using desktop::RoomName;

constexpr QSize kPanel{1366, 768};
constexpr RoomName kRooms[] = {RoomName::Floor, RoomName::Intake, RoomName::Order, RoomName::Stock};

class EveryScreen : public testing::TestWithParam<domain::Light> {
protected:
    EveryScreen() {
        const auto clean = laboratory_.logged(support::upperClassIIIMod1());
        laboratory_.logged(unsurveyed());
        shell_.resize(kPanel);
        shell_.show();
        shell_.openOrder(clean);
        shell_.intake().open(laboratory_.write(unsurveyed(), "case.json"));
    }

    void enter(RoomName room) {
        shell_.enter(room);
        QTest::qWait(20);
    }
    template <typename Control>
    std::vector<Control*> inView() {
        std::vector<Control*> controls;
        for (auto* each : shell_.findChildren<Control*>())
            if (each->isVisible()) controls.push_back(each);
        return controls;
    }

    TemporaryLaboratory laboratory_;
    AnsweredDialogs dialogs_;
    const desktop::Look look_{GetParam()};
    desktop::Desk desk_{*laboratory_, dialogs_, look_, laboratory_.session()};
    desktop::Shell shell_{desk_};
};

/// Walks what a screen reader meets and collects what has no name.
void namelessIn(QAccessibleInterface* thing, std::vector<std::string>& nameless) {
    if (thing == nullptr || thing->state().invisible) return;
    static const std::set<QAccessible::Role> kNeedName{
        QAccessible::Button,   QAccessible::RadioButton, QAccessible::EditableText,
        QAccessible::ComboBox, QAccessible::Table,       QAccessible::Tree,
        QAccessible::List};
    if (kNeedName.contains(thing->role()) && thing->text(QAccessible::Name).isEmpty())
        nameless.emplace_back(
            thing->object() == nullptr ? "something" : thing->object()->metaObject()->className());
    if (thing->role() == QAccessible::Table || thing->role() == QAccessible::Tree) return;
    for (int i = 0; i < thing->childCount(); ++i) namelessIn(thing->child(i), nameless);
}

TEST_P(EveryScreen, NamesEveryControlToAScreenReader) {
    for (const RoomName room : kRooms) {
        enter(room);
        std::vector<std::string> nameless;
        namelessIn(QAccessible::queryAccessibleInterface(&shell_), nameless);
        EXPECT_EQ(nameless, std::vector<std::string>{}) << domain::codeOf(room);
    }
}

TEST_P(EveryScreen, ShowsAKeyBesideEveryActionAndGivesEachKeyOnce) {
    for (const RoomName room : kRooms) {
        enter(room);
        std::multiset<QString> keys;
        for (const auto* each : inView<ActionButton>()) keys.insert(each->keyShown());
        for (const auto* each : inView<desktop::RailButton>()) keys.insert(each->keyShown());
        for (const auto* each : inView<desktop::LineField>())
            EXPECT_TRUE(each->accessibleDescription().startsWith("key "));
        EXPECT_EQ(keys.count({}), 0U);
        for (const QString& key : keys)
            EXPECT_EQ(keys.count(key), 1U) << key.toStdString() << " in " << domain::codeOf(room);
    }
}

TEST_P(EveryScreen, AccentsTheOneThingToDoNext) {
    for (const RoomName room : kRooms) {
        enter(room);
        int accented = 0;
        for (const auto* each : inView<ActionButton>())
            accented += each->isNext() && each->isEnabled() ? 1 : 0;
        EXPECT_EQ(accented, 1) << domain::codeOf(room);
    }
}

/// Least sizes of a target: 24 px, W3C WCAG 2.2 success criterion 2.5.8 (AA); 44 px for a gloved
/// finger, success criterion 2.5.5 (AAA).
TEST_P(EveryScreen, HasTargetsForAGlovedFinger) {
    constexpr int kLeast = 44;
    for (const RoomName room : kRooms) {
        enter(room);
        for (const auto* each : inView<ActionButton>()) {
            EXPECT_GE(each->height(), kLeast) << each->text().toStdString();
            EXPECT_GE(each->width(), kLeast) << each->text().toStdString();
            EXPECT_GE(each->width(), each->sizeHint().width()) << each->text().toStdString();
        }
        for (const auto* each : inView<desktop::LineField>()) EXPECT_GE(each->height(), kLeast);
        for (const auto* each : inView<desktop::RailButton>()) EXPECT_GE(each->height(), kLeast);
    }
}

TEST_P(EveryScreen, ShowsEachToothAtLeastTwentyEightPixelsWide) {
    for (const RoomName room : {RoomName::Intake, RoomName::Order}) {
        enter(room);
        const auto pictures = inView<desktop::ArchView>();
        ASSERT_EQ(pictures.size(), 1U);
        const auto arch = room == RoomName::Order ? domain::Arch::Upper : domain::Arch::Lower;
        for (int position = 0; position < domain::kTeethInArch; ++position) {
            const domain::Tooth tooth = domain::Tooth::at(arch, position);
            const QRectF place = pictures.front()->placeOf(tooth);
            EXPECT_GE(std::max(place.width(), place.height()), 28) << tooth.text();
            EXPECT_GE(std::min(place.width(), place.height()), 28) << tooth.text();
        }
    }
}

TEST_P(EveryScreen, FitsThePanelWithoutBeingCut) {
    for (const RoomName room : kRooms) {
        enter(room);
        EXPECT_EQ(shell_.size(), kPanel) << domain::codeOf(room);
        for (const auto* each : inView<ActionButton>())
            EXPECT_TRUE(
                shell_.rect().contains(QRect{each->mapTo(&shell_, QPoint{0, 0}), each->size()}))
                << each->text().toStdString();
    }
}

TEST_P(EveryScreen, PaintsRoomsThatDifferFromABlankSheetAndFromEachOther) {
    std::vector<QImage> pictures;
    for (const RoomName room : kRooms) {
        enter(room);
        pictures.push_back(shell_.grab().toImage());
        QImage blank = pictures.back();
        blank.fill(look_.of(domain::Colour::Sheet));
        EXPECT_NE(pictures.back(), blank);
    }
    EXPECT_NE(pictures[0], pictures[1]);
    EXPECT_NE(pictures[1], pictures[2]);
    EXPECT_NE(pictures[2], pictures[3]);
}

INSTANTIATE_TEST_SUITE_P(Screens, EveryScreen,
                         testing::Values(domain::Light::Light, domain::Light::Dark));

}  // namespace
