/// A program killed with SIGKILL at random moments, and started again from the last transition it
/// had acknowledged: nothing acknowledged is lost, and nothing takes effect twice.
#include <gmock/gmock.h>
#include <sys/wait.h>
#include <unistd.h>

#include <QCoreApplication>
#include <QTemporaryDir>
#include <algorithm>
#include <csignal>
#include <cstdio>
#include <random>

#include "apps/actions/system_clock.h"
#include "apps/actions/verification.h"
#include "storage/ledger.h"
#include "storage/lot_uses.h"
#include "storage/order_register.h"
#include "storage/projections.h"
#include "tests/support/designs.h"
#include "tests/support/numbered_key.h"
#include "tests/support/working_laboratory.h"

namespace {

using testing::IsEmpty;

constexpr int kTransitions = 1000;
constexpr int kOrders = 5;
constexpr int kMostBetweenKills = 48;  // transitions: some forty kills on the way
constexpr int kLongestPause = 25'000;  // microseconds; a transition takes about as long

class Killed : public testing::Test {
protected:
    Killed() {
        orders_.reserve(kOrders);
        for (int i = 0; i < kOrders; ++i)
            orders_.push_back(floor_.accepted(support::upperClassIIIMod1()).text());
    }

    /// A writer that goes on from a transition, and the end of the pipe it acknowledges on.
    std::pair<pid_t, FILE*> started(int first) {
        const std::string token = floor_.as(support::kMaker).token;
        std::vector<std::string> words{TRANSITION_WRITER, folder(), std::to_string(first),
                                       std::to_string(kTransitions)};
        words.insert(words.end(), orders_.begin(), orders_.end());
        std::vector<char*> arguments;
        for (std::string& word : words) arguments.push_back(word.data());
        arguments.push_back(nullptr);
        int ends[2]{};
        EXPECT_EQ(pipe(ends), 0);
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
        return {child, fdopen(ends[0], "r")};
    }
    /// The next transition that was acknowledged; 0 at the end of the pipe.
    int acknowledged(FILE* pipe) {
        int number = 0;
        char how[16]{};
        if (std::fscanf(pipe, "%d %15s", &number, how) != 2) return 0;
        EXPECT_EQ(number, last_ + 1) << "out of turn";
        if (std::string_view{how} == "repeated") ++repeated_;
        last_ = number;
        return number;
    }
    /// Lets a writer work until it has acknowledged so many more, and a moment longer.
    void workAndBeKilled(int more, int pause) {
        const auto [child, pipe] = started(last_ + 1);
        const int until = std::min(last_ + more, kTransitions);
        while (last_ < until && acknowledged(pipe) != 0) {
        }
        ASSERT_GE(last_, until) << "the writer gave up";
        usleep(static_cast<useconds_t>(pause));
        if (until < kTransitions) kill(child, SIGKILL);
        while (acknowledged(pipe) != 0) {
        }
        std::fclose(pipe);
        int status = 0;
        ASSERT_EQ(waitpid(child, &status, 0), child);
        if (WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL) ++kills_;
    }
    std::string folder() const { return folder_.filePath("lab").toStdString(); }
    const actions::Laboratory& lab() const { return *laboratory_; }

    std::vector<std::string> orders_{};
    int last_{0};      ///< acknowledged
    int repeated_{0};  ///< had taken effect before the kill, which came before the acknowledgement
    int kills_{0};

private:
    QTemporaryDir folder_{DISK_FOLDER "/records-XXXXXX"};  ///< on a disk, wherever TMPDIR is
    actions::SystemClock clock_;
    domain::Result<actions::Laboratory> laboratory_{
        actions::Laboratory::open(folder(), clock_, storage::HashCost::Light)};

protected:
    support::Floor floor_{*laboratory_};
};

TEST_F(Killed, LosesNothingItAcknowledgedAndDoesNothingTwice) {
    std::mt19937 random{20'261'125};
    int forgotten = 0;
    while (last_ < kTransitions && !HasFailure()) {
        workAndBeKilled(1 + static_cast<int>(random() % kMostBetweenKills),
                        static_cast<int>(random() % kLongestPause));
        // Now and then the acknowledgement is lost as well, and what took effect is tried again.
        if (last_ == kTransitions || random() % 2 == 0) continue;
        --last_;
        ++forgotten;
    }
    std::cout << kTransitions << " transitions, " << kills_ << " kills, " << forgotten
              << " acknowledgements lost, " << repeated_ << " commands had taken effect already\n";
    EXPECT_GE(kills_, 25);
    EXPECT_GE(forgotten, 10);
    EXPECT_GE(repeated_, forgotten);
    EXPECT_LE(repeated_, forgotten + kills_);

    std::vector<int> effects(kTransitions + 1, 0);
    std::vector<std::string> strangers;
    const auto visited = storage::Ledger{lab().records()}.visit([&](const domain::Event& event) {
        const int number = support::numberIn(event.key);
        if (number == 0) return;
        if (number < 1 || number > kTransitions)
            strangers.push_back(event.key);
        else
            ++effects[static_cast<std::size_t>(number)];
    });
    ASSERT_TRUE(visited) << visited.error().message;
    EXPECT_THAT(strangers, IsEmpty());
    EXPECT_EQ(std::count(effects.begin() + 1, effects.end(), 1), kTransitions);
    const auto verified = actions::verify(lab());
    ASSERT_TRUE(verified) << verified.error().message;
    EXPECT_THAT(verified->problems, IsEmpty());

    const storage::OrderRegister rows{lab().records()};
    const storage::LotUses uses{lab().records()};
    const auto wire = support::lotCode(domain::LotKind::Wire);
    const auto liveRows = *rows.all();
    const auto liveUses = *uses.ofLot(wire);
    EXPECT_EQ(liveRows.size(), orders_.size());
    EXPECT_EQ(std::ssize(liveUses), 67 * kOrders) << "67 of the 200 turns of each take of the lot";
    auto begun = storage::Transaction::begin(lab().records());
    ASSERT_TRUE(begun);
    storage::Transaction work = *std::move(begun);
    ASSERT_TRUE(storage::rebuildProjections(work));
    ASSERT_TRUE(work.commit());
    EXPECT_EQ(*rows.all(), liveRows);
    EXPECT_EQ(*uses.ofLot(wire), liveUses);
}

}  // namespace

int main(int count, char** words) {
    testing::InitGoogleTest(&count, words);
    const QCoreApplication application{count, words};
    return RUN_ALL_TESTS();
}
