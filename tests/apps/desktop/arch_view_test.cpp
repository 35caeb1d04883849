#include "apps/desktop/arch_view.h"

#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QTest>

#include "tests/support/designs.h"

namespace {

using namespace domain;
using desktop::ArchView;
using desktop::Look;

constexpr QSize kSize{640, 420};

class TheArchView : public testing::Test {
protected:
    TheArchView() {
        view_.resize(kSize);
        view_.letPoint();
        view_.show(support::upperClassIIIMod1(), {});
        connection_ = QObject::connect(&view_, &ArchView::toothPressed,
                                       [this](Tooth tooth, QPoint) { pressed_ = tooth; });
    }
    ~TheArchView() override { QObject::disconnect(connection_); }

    const Look look_{Light::Light};
    ArchView view_{look_};
    std::optional<Tooth> pressed_;

private:
    QMetaObject::Connection connection_;
};

TEST_F(TheArchView, KnowsEveryToothOfItsArchByItsPlace) {
    for (int position = 0; position < kTeethInArch; ++position) {
        const Tooth tooth = Tooth::at(Arch::Upper, position);
        EXPECT_EQ(view_.toothAt(view_.placeOf(tooth).center()), tooth) << tooth.text();
    }
    EXPECT_EQ(view_.toothAt({1, 1}), std::nullopt);
}

TEST_F(TheArchView, ShowsThePatientsRightOnTheViewersLeft) {
    EXPECT_LT(view_.placeOf(16_fdi).center().x(), view_.placeOf(26_fdi).center().x());
}

TEST_F(TheArchView, TellsWhichToothIsClicked) {
    QTest::mouseClick(&view_, Qt::LeftButton, {}, view_.placeOf(24_fdi).center().toPoint());
    EXPECT_EQ(pressed_, 24_fdi);
}

TEST_F(TheArchView, IsWalkedWithTheArrowKeys) {
    view_.setFocus();
    QTest::keyClick(&view_, Qt::Key_Home);
    QTest::keyClick(&view_, Qt::Key_Right);
    QTest::keyClick(&view_, Qt::Key_Return);
    EXPECT_EQ(pressed_, 17_fdi);
    QTest::keyClick(&view_, Qt::Key_End);
    QTest::keyClick(&view_, Qt::Key_Space);
    EXPECT_EQ(pressed_, 28_fdi);
}

TEST_F(TheArchView, SaysNothingWhereNobodyMayPoint) {
    ArchView shown{look_};
    shown.resize(kSize);
    shown.show(support::upperClassIIIMod1(), {});
    bool said = false;
    QObject::connect(&shown, &ArchView::toothPressed, [&] { said = true; });
    QTest::mouseClick(&shown, Qt::LeftButton, {}, shown.placeOf(24_fdi).center().toPoint());
    EXPECT_FALSE(said);
}

TEST_F(TheArchView, PaintsTheDesignAndNotABlankSheet) {
    const QImage design = view_.grab().toImage();
    QImage blank = design;
    blank.fill(look_.of(Colour::Sheet));
    EXPECT_NE(design, blank);
    view_.show(support::upperClassIV(), {});
    EXPECT_NE(view_.grab().toImage(), design);
    const Look dark{Light::Dark};
    ArchView night{dark};
    night.resize(kSize);
    night.show(support::upperClassIV(), {});
    EXPECT_NE(night.grab().toImage(), view_.grab().toImage());
}

}  // namespace
