#include "apps/cli/secret_input.h"

#include <termios.h>
#include <unistd.h>

#include <csignal>
#include <iostream>

#include "apps/cli/output.h"
#include "apps/cli/typed_words.h"

namespace cli {
namespace {

using actions::Secret;
using domain::Result;

bool isAtTerminal() { return isatty(STDIN_FILENO) == 1; }

/// Keeps what is typed from being shown. Signals wait meanwhile, or the terminal would stay mute.
class Hidden {
public:
    Hidden() {
        sigset_t waiting;
        sigemptyset(&waiting);
        for (const int signal : {SIGINT, SIGTERM, SIGTSTP}) sigaddset(&waiting, signal);
        sigprocmask(SIG_BLOCK, &waiting, &signals_);
        tcgetattr(STDIN_FILENO, &shown_);
        termios mute = shown_;
        mute.c_lflag &= ~static_cast<tcflag_t>(ECHO);
        tcsetattr(STDIN_FILENO, TCSAFLUSH, &mute);
    }
    Hidden(const Hidden&) = delete;
    Hidden& operator=(const Hidden&) = delete;
    ~Hidden() {
        tcsetattr(STDIN_FILENO, TCSAFLUSH, &shown_);
        endAsked();
        sigprocmask(SIG_SETMASK, &signals_, nullptr);
    }

private:
    termios shown_{};
    sigset_t signals_{};
};

bool readLine(std::string_view what, std::string& line) {
    if (!isAtTerminal()) return static_cast<bool>(std::getline(std::cin, line));
    // Mute before it asks: whoever answers at once is not shown either.
    const Hidden hidden;
    ask(what);
    return static_cast<bool>(std::getline(std::cin, line));
}

}  // namespace

Result<Secret> readSecret(std::string_view what) {
    std::string line;
    if (!readLine(what, line))
        return unusable("a line with the " + std::string{what} + " was expected on standard input");
    if (line.ends_with('\r')) line.pop_back();
    return Secret{std::move(line)};
}

Result<Secret> readNewSecret(std::string_view what) {
    auto first = readSecret(what);
    if (!first || !isAtTerminal()) return first;
    const auto again = readSecret("the same again");
    if (!again) return again.error();
    if (again->text() != first->text())
        return unusable("the two were not the same; nothing was changed");
    return first;
}

}  // namespace cli
