/// A window on real storage, worked with the keyboard alone.
#pragma once

#include <QLabel>
#include <QTableView>
#include <QTest>
#include <algorithm>

#include "apps/actions/floor.h"
#include "tests/apps/desktop/temporary_laboratory.h"

namespace desktop_tests {

class AtTheWindow : public testing::Test {
protected:
    AtTheWindow() {
        shell_.resize(1366, 768);
        shell_.show();
        shell_.activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&shell_));
        shell_.enter(desktop::RoomName::Floor);
    }

    /// Presses a key where the focus is, and lets a pressed control spring back.
    void press(Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier) {
        QWidget* focus = QApplication::focusWidget();
        QTest::keyClick(focus == nullptr ? &shell_ : focus, key, with);
        QTest::qWait(150);
    }
    void type(const QString& words) {
        for (const QChar letter : words)
            QTest::keyClick(QApplication::focusWidget(), letter.toLatin1());
        QTest::qWait(20);
    }

    std::vector<actions::FloorLine> floor() { return actions::floor(*laboratory_).value(); }
    actions::OrderView orderOf(const domain::OrderNumber& number) {
        return actions::order(*laboratory_, number).value();
    }
    domain::OrderNumber logged(const domain::Prescription& prescription) {
        return laboratory_.logged(prescription);
    }
    /// The sentence that stands in view at the place of the action, if any.
    std::string said() {
        std::string all;
        for (const auto* notice : shell_.findChildren<desktop::Notice*>())
            if (notice->isVisible()) all += notice->sentence().toStdString() + '\n';
        return all;
    }
    bool isOffered(const QString& word) {
        return std::ranges::any_of(
            shell_.findChildren<desktop::ActionButton*>(),
            [&](const auto* each) { return each->isVisible() && each->text().startsWith(word); });
    }
    desktop::ActionButton* button(const QString& word) {
        for (auto* each : shell_.findChildren<desktop::ActionButton*>())
            if (each->isVisible() && each->text().startsWith(word)) return each;
        ADD_FAILURE() << "no control " << word.toStdString();
        return nullptr;
    }

    TemporaryLaboratory laboratory_;
    AnsweredDialogs dialogs_;
    const desktop::Look look_{domain::Light::Light};
    desktop::Desk desk_{*laboratory_, dialogs_, look_, laboratory_.session()};
    desktop::Shell shell_{desk_};
};

}  // namespace desktop_tests
