/// Every access to the disk, and every allocation of SQLite, fails in its turn, once and for ever,
/// while orders are logged, started, recorded and finished: it is told, nothing is corrupt or half
/// done, and repeated under the same keys everything takes effect exactly once.
#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <numeric>
#include <random>

#include "tests/faults/allocations.h"
#include "tests/faults/day.h"
#include "tests/faults/scoreboard.h"

namespace {

using actions::Laboratory;
using domain::ErrorCode;
using faults::Day;
using faults::Lasting;
using faults::Verdict;

constexpr std::uint64_t kSeed = 20'261'130;
/// Steps of the day: an order is logged, accepted, and its first stage done.
constexpr std::size_t kSteps = 5;
constexpr std::int64_t kFaultsOfAKind = 20;  // each once and for ever, of each of nine kinds
constexpr std::int64_t kAllocations = 150;

/// Something that can be made to fail.
struct Failing {
    std::string words{};
    std::function<void(std::int64_t turn, Lasting lasting)> begin{};
    std::function<std::int64_t()> end{};
};

class Faults : public testing::Test {
protected:
    /// Makes it fail in each of its turns, or in so many of them, once and for ever.
    void failInTurn(const Failing& failing, std::int64_t most) {
        failing.begin(0, Lasting::Once);
        day_.layOut(day_.morning());
        ASSERT_EQ(work(), kSteps);
        std::vector<std::int64_t> turns(static_cast<std::size_t>(failing.end()));
        const auto whole = day_.judge();
        std::iota(turns.begin(), turns.end(), 1);
        std::ranges::shuffle(turns, random_);
        if (std::ssize(turns) > most) turns.resize(static_cast<std::size_t>(most));
        for (const std::int64_t turn : turns)
            for (const Lasting lasting : {Lasting::Once, Lasting::ForEver})
                tryOne(failing, turn, lasting, whole.entries);
    }
    void score(const std::string& what) const {
        faults::scored({what, tried_, kSeed, failed_,
                        std::to_string(told_) + " steps told of it, " + std::to_string(repeated_) +
                            " done when repeated at once, " + std::to_string(keptUntold_) +
                            " of them had been kept"});
    }

private:
    /// Does the steps from one on until one fails, twice; how many are done then.
    std::size_t work(std::size_t from = 0) {
        const auto laboratory = day_.open();
        return laboratory ? workIn(*laboratory, from) : from;
    }
    std::size_t workIn(const Laboratory& laboratory, std::size_t from) {
        for (std::size_t at = from; at < kSteps; ++at)
            if (!done(laboratory, at) && !doneAgain(laboratory, at)) return at;
        return kSteps;
    }
    bool done(const Laboratory& laboratory, std::size_t at) {
        const auto outcome = day_.steps()[at].run(laboratory);
        if (outcome) return true;
        ++told_;
        lastTold_ = outcome.error().message;
        // A disk that fails is not a person who may not.
        if (outcome.error().code != ErrorCode::Unavailable)
            flaw("step " + std::to_string(at + 1) + " was refused: " + lastTold_);
        return false;
    }
    /// Repeated at once, under the same key.
    bool doneAgain(const Laboratory& laboratory, std::size_t at) {
        const auto outcome = day_.steps()[at].run(laboratory);
        if (!outcome) return false;
        ++repeated_;
        if (outcome->repeated) ++keptUntold_;
        return true;
    }
    void tryOne(const Failing& failing, std::int64_t turn, Lasting lasting, std::int64_t entries) {
        ++tried_;
        isFlawed_ = false;
        now_ = failing.words + ", turn " + std::to_string(turn) +
               (lasting == Lasting::Once ? ", once" : ", for ever");
        day_.layOut(day_.morning());
        failing.begin(turn, lasting);
        std::size_t acknowledged = 0;
        {
            const auto laboratory = day_.open();
            if (laboratory) acknowledged = workIn(*laboratory, 0);
            // Half of the programs go on at a disk that works again; the others end before.
            if (turn % 2 == 0) failing.end();
            if (turn % 2 == 0 && laboratory && workIn(*laboratory, acknowledged) != kSteps)
                flaw("the program cannot go on: " + lastTold_);
        }
        failing.end();
        const Verdict verdict = day_.judge();
        const auto kept = Day::firstOf(verdict);
        if (verdict.state != Verdict::State::Whole)
            flaw(verdict.flaw);
        else if (!kept || *kept < acknowledged)
            flaw("what was acknowledged is lost");
        if (work() != kSteps) flaw("the day cannot be finished");
        const Verdict atLast = day_.judge();
        if (atLast.entries != entries)
            flaw("there are " + std::to_string(atLast.entries) + " entries at last, not " +
                 std::to_string(entries) + ' ' + atLast.flaw);
    }
    void flaw(const std::string& what) {
        if (!isFlawed_) ++failed_;
        isFlawed_ = true;
        constexpr int kMostTold = 10;
        if (failed_ <= kMostTold) ADD_FAILURE() << now_ << ": " << what;
    }

    Day day_{};
    std::mt19937_64 random_{kSeed};
    std::string now_{};
    bool isFlawed_{};
    std::int64_t tried_{};
    std::int64_t failed_{};
    std::int64_t told_{};
    std::int64_t repeated_{};
    std::string lastTold_{};
    std::int64_t keptUntold_{};
};

TEST_F(Faults, OfTheDiskAreToldAndNothingIsHalfDone) {
    for (const faults::FaultKind& kind : faults::kFaultKinds)
        failInTurn(
            {std::string{kind.words},
             [&](std::int64_t turn, Lasting lasting) { faults::failAccess(kind, turn, lasting); },
             &faults::failNoAccess},
            faults::wanted("FRAMEWRIGHT_FAULTS_IO", kFaultsOfAKind));
    score("faults of the disk");
}

TEST_F(Faults, OfMemoryAreToldAndNothingIsHalfDone) {
    failInTurn({"no memory", &faults::failAllocation, &faults::failNoAllocation},
               faults::wanted("FRAMEWRIGHT_FAULTS_MEMORY", kAllocations));
    score("allocations that fail");
}

}  // namespace
