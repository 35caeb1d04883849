/// The window killed (SIGKILL) at random moments while a person works at it: the records are whole
/// each time, and what the window said was done is done.
#include <gmock/gmock.h>
#include <sys/wait.h>
#include <unistd.h>

#include <QCoreApplication>
#include <QTemporaryDir>
#include <csignal>
#include <cstdio>
#include <random>

#include "apps/actions/order_view.h"
#include "apps/actions/system_clock.h"
#include "apps/actions/verification.h"
#include "tests/faults/scoreboard.h"
#include "tests/support/people.h"

namespace {

constexpr std::uint32_t kSeed = 20'261'130;
constexpr std::int64_t kKills = 12;
constexpr int kOrdersOfOne = 1000;      // more than anybody lives to log
constexpr int kMostAcknowledged = 5;    // before the kill
constexpr int kLongestPause = 700'000;  // microseconds; a step takes about 200,000

std::vector<domain::Skill> everySkill() {
    std::vector<domain::Skill> skills;
    for (const auto& code : domain::enumCodes<domain::Skill>) skills.push_back(code.value);
    return skills;
}

class TheWindow : public testing::Test {
protected:
    /// Starts one, lets it acknowledge so much and a moment more, and kills it.
    void workAndBeKilled(int acknowledged, int pause) {
        std::string token = who_.token;
        std::vector<std::string> words{DESKTOP_DAY, folder(), std::to_string(kOrdersOfOne)};
        std::vector<char*> arguments;
        for (std::string& word : words) arguments.push_back(word.data());
        arguments.push_back(nullptr);
        int ends[2]{};
        ASSERT_EQ(pipe(ends), 0);
        const pid_t child = fork();
        if (child == 0) {
            dup2(ends[1], STDOUT_FILENO);
            close(ends[0]);
            close(ends[1]);
            setenv("FRAMEWRIGHT_SESSION", token.c_str(), 1);
            execv(arguments[0], arguments.data());
            _exit(127);
        }
        close(ends[1]);
        FILE* said = fdopen(ends[0], "r");
        for (int i = 0; i < acknowledged; ++i) hear(said);
        usleep(static_cast<useconds_t>(pause));
        kill(child, SIGKILL);
        while (hear(said)) {
        }
        std::fclose(said);
        int status = 0;
        ASSERT_EQ(waitpid(child, &status, 0), child);
        EXPECT_TRUE(WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL) << "it gave up: " << status;
    }
    /// What is wrong now; empty when the records are whole and hold everything that was said.
    std::string flaw() const {
        const auto verified = actions::verify(*laboratory_);
        if (!verified) return verified.error().message;
        if (!verified->problems.empty()) return verified->problems.front();
        for (const auto& [what, digits] : said_) {
            const auto number = domain::OrderNumber::parse(digits);
            if (!number) return "the window said \"" + digits + "\" for a number";
            const auto view = actions::order(*laboratory_, *number);
            if (!view) return view.error().message;
            const auto& order = view->order;
            const bool isAccepted = order.status == domain::OrderStatus::InWork;
            const bool isStarted = isAccepted && !order.steps.empty() &&
                                   order.steps.front().status == domain::StageStatus::InHand;
            if ((what == "accepted" && !isAccepted) || (what == "started" && !isStarted))
                return digits + " was " + what + ", the window said, and is not";
        }
        return {};
    }
    std::size_t saidSoFar() const { return said_.size(); }

private:
    bool hear(FILE* from) {
        char what[16]{};
        char number[32]{};
        if (std::fscanf(from, "%15s %31s", what, number) != 2) return false;
        said_.emplace_back(what, number);
        return true;
    }
    std::string folder() const { return folder_.filePath("lab").toStdString(); }

    QTemporaryDir folder_{};
    actions::SystemClock clock_{};
    domain::Result<actions::Laboratory> laboratory_{
        actions::Laboratory::open(folder(), clock_, storage::HashCost::Light)};
    actions::Who who_{support::signedIn(*laboratory_, "MK", domain::Role::Manager, everySkill())};
    std::vector<std::pair<std::string, std::string>> said_{};
};

TEST_F(TheWindow, IsKilledAtAnyMomentAndWhatItSaidIsKept) {
    std::mt19937 random{kSeed};
    const std::int64_t kills = faults::wanted("FRAMEWRIGHT_FAULTS_KILLS", kKills);
    std::int64_t failures = 0;
    std::string first;
    for (std::int64_t turn = 0; turn < kills && !HasFailure(); ++turn) {
        workAndBeKilled(static_cast<int>(random() % kMostAcknowledged),
                        static_cast<int>(random() % kLongestPause));
        const std::string wrong = flaw();
        if (wrong.empty()) continue;
        ++failures;
        if (first.empty()) first = wrong;
    }
    faults::scored({"kills of the window", kills, kSeed, failures,
                    std::to_string(saidSoFar()) + " steps it said were done"});
    EXPECT_EQ(failures, 0) << first;
    EXPECT_GE(static_cast<std::int64_t>(saidSoFar()), kills);
}

}  // namespace

int main(int count, char** words) {
    testing::InitGoogleTest(&count, words);
    const QCoreApplication application{count, words};
    return RUN_ALL_TESTS();
}
