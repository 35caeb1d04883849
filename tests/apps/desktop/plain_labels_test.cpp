/// What people typed is shown as they typed it: markup in a name is no markup on the screen.
#include <gtest/gtest.h>

#include <QToolTip>

#include "tests/apps/desktop/at_the_window.h"

namespace {

using namespace desktop_tests;
using desktop::RoomName;

constexpr const char* kMarkup = "<b>P-1041</b><br><img src=x>";

class PlainLabels : public AtTheWindow {
protected:
    /// The labels in view that hold the text.
    std::vector<QLabel*> holding(const QString& text) {
        std::vector<QLabel*> labels;
        for (auto* each : shell_.findChildren<QLabel*>())
            if (each->isVisible() && each->text().contains(text)) labels.push_back(each);
        return labels;
    }
};

TEST_F(PlainLabels, ShowTheMarkupInANameOfAnOrder) {
    domain::Prescription prescription = support::upperClassIIIMod1();
    prescription.identity.patientReference = kMarkup;
    prescription.identity.prescriberName = kMarkup;
    shell_.openOrder(logged(prescription));
    QTest::qWait(20);
    const auto labels = holding(QString::fromUtf8(kMarkup));
    ASSERT_FALSE(labels.empty());
    for (const QLabel* label : labels) {
        EXPECT_EQ(label->textFormat(), Qt::PlainText);
        // Markup read as such is narrower than the letters it is written in.
        EXPECT_GE(label->sizeHint().width(), label->fontMetrics().horizontalAdvance(label->text()));
    }
}

TEST_F(PlainLabels, AreAllThatAnyRoomShows) {
    shell_.openOrder(logged(support::upperClassIIIMod1()));
    for (const RoomName room :
         {RoomName::Floor, RoomName::Intake, RoomName::Order, RoomName::Stock}) {
        shell_.enter(room);
        QTest::qWait(20);
        int seen = 0;
        for (const auto* each : shell_.findChildren<QLabel*>()) {
            if (!each->isVisible()) continue;
            ++seen;
            EXPECT_EQ(each->textFormat(), Qt::PlainText) << each->text().toStdString();
        }
        EXPECT_GT(seen, 0) << domain::codeOf(room);
    }
}

TEST_F(PlainLabels, AreToolTipsToo) {
    QToolTip::showText(shell_.mapToGlobal(QPoint{10, 10}), QString::fromUtf8(kMarkup), &shell_);
    QTest::qWait(20);
    const QLabel* tip = nullptr;
    for (const QWidget* each : QApplication::topLevelWidgets())
        if (each->inherits("QTipLabel") && each->isVisible())
            tip = qobject_cast<const QLabel*>(each);
    ASSERT_NE(tip, nullptr);
    EXPECT_EQ(tip->text(), QString::fromUtf8(kMarkup));
    EXPECT_EQ(tip->textFormat(), Qt::PlainText);
    QToolTip::hideText();
}

}  // namespace
