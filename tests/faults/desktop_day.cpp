// Works at the window of a laboratory with the keyboard, order after order, and says on standard
// output what the window said was done: "logged 26-000017", "accepted ...", "started ...".
//   desktop_day FOLDER COUNT
// The session of its person comes in FRAMEWRIGHT_SESSION. It is made to be killed at any moment.
#include <unistd.h>

#include <QApplication>
#include <QLabel>
#include <QTest>
#include <cstdlib>
#include <iostream>

#include "apps/actions/system_clock.h"
#include "apps/desktop/action_button.h"
#include "tests/apps/desktop/temporary_laboratory.h"

namespace {

constexpr int kLongestWait = 20'000;  // milliseconds

class Window {
public:
    Window(const actions::Laboratory& laboratory, const actions::Session& session)
        : desk_{laboratory, dialogs_, look_, session} {
        shell_.resize(1366, 768);
        shell_.show();
        shell_.activateWindow();
        (void)QTest::qWaitForWindowActive(&shell_);
    }

    /// From a file to the first stage in hand; false when the window did not follow.
    bool work(const std::filesystem::path& file) {
        dialogs_.file = file;
        shell_.enter(desktop::RoomName::Floor);
        press(Qt::Key_F2);
        press(Qt::Key_F5);
        if (!follows(Qt::Key_F6, [&] { return shell_.roomName() == desktop::RoomName::Order; }))
            return false;
        say("logged");
        if (!follows(Qt::Key_F9, [&] { return isEnabled(QStringLiteral("Start")); })) return false;
        say("accepted");
        if (!follows(Qt::Key_F5, [&] { return isEnabled(QStringLiteral("Done")); })) return false;
        say("started");
        return true;
    }

private:
    void press(Qt::Key key) {
        QWidget* focus = QApplication::focusWidget();
        QTest::keyClick(focus == nullptr ? &shell_ : focus, key);
        QTest::qWait(150);  // a pressed control springs back
    }
    template <typename Shows>
    bool follows(Qt::Key key, const Shows& shows) {
        press(key);
        return QTest::qWaitFor(shows, kLongestWait);
    }
    bool isEnabled(const QString& word) const {
        for (const auto* each : shell_.findChildren<desktop::ActionButton*>())
            if (each->isVisible() && each->isEnabled() && each->text().startsWith(word))
                return true;
        return false;
    }
    void say(const std::string& what) const {
        const auto* where = shell_.findChild<QLabel*>(QStringLiteral("where"));
        const std::string line = what + ' ' + where->text().section(' ', -1).toStdString() + '\n';
        if (write(STDOUT_FILENO, line.data(), line.size()) != static_cast<ssize_t>(line.size()))
            std::exit(3);
    }

    desktop_tests::AnsweredDialogs dialogs_;
    const desktop::Look look_{domain::Light::Light};
    desktop::Desk desk_;
    desktop::Shell shell_{desk_};
};

}  // namespace

int main(int count, char** words) {
    QApplication application{count, words};
    if (count != 3) return 2;
    desktop::wearHouseStyle();
    const actions::SystemClock clock;
    const std::filesystem::path folder{words[1]};
    const auto laboratory = actions::Laboratory::openExisting(folder, clock);
    if (!laboratory) {
        std::cerr << laboratory.error().message << '\n';
        return 3;
    }
    const char* token = std::getenv("FRAMEWRIGHT_SESSION");
    Window window{*laboratory,
                  {*domain::PersonCode::parse("MK"), token == nullptr ? "" : token, {}}};
    for (int order = 0; order < std::atoi(words[2]); ++order) {
        // Another patient each time: the same file is logged once only.
        auto prescription = support::upperClassIIIMod1();
        prescription.identity.patientReference =
            "P-" + std::to_string(getpid()) + '-' + std::to_string(order);
        const auto file = folder.parent_path() / "case.json";
        std::ofstream{file} << storage::writePrescription(prescription);
        if (!window.work(file)) return 1;
    }
    return 0;
}
