/// The power fails at every point of a day at the records, and what then lies on the disk is opened
/// with the program's own code: nothing is corrupt, nothing half done, nothing acknowledged lost.
#include <gtest/gtest.h>

#include <algorithm>
#include <unordered_map>

#include <QSqlQuery>

#include "storage/projections.h"
#include "storage/transaction.h"
#include "tests/faults/day.h"
#include "tests/faults/scoreboard.h"

namespace {

using faults::Day;
using faults::Honesty;
using faults::Operation;
using faults::PowerCuts;
using faults::Random;
using faults::Stored;
using faults::Verdict;

constexpr std::uint64_t kSeed = 20'261'130;
constexpr std::int64_t kStates = 10'000;
constexpr std::int64_t kControlStates = 600;
constexpr std::int64_t kStatesWhileRecovering = 1'000;
constexpr std::int64_t kStatesWhileRebuilding = 2'000;

/// What was asked of the disk in a day, and after how much of it each step was acknowledged.
struct Trace {
    Stored before{};
    std::vector<Operation> operations{};
    std::vector<std::size_t> acknowledged{};

    std::size_t acknowledgedAfter(std::size_t operation) const {
        return static_cast<std::size_t>(std::ranges::upper_bound(acknowledged, operation) -
                                        acknowledged.begin());
    }
};

bool writesRecords(const Operation& operation) {
    return operation.kind == Operation::Kind::Write && operation.part == faults::Part::Records;
}

struct Tally {
    std::int64_t states{};
    std::int64_t notOpened{};
    std::int64_t corrupt{};
    std::int64_t torn{};
    std::int64_t lost{};
    std::int64_t byHand{};  ///< opened once the journal was moved elsewhere, as the program says
    std::string first{};    ///< what was wrong with the first that was

    std::int64_t failures() const { return notOpened + corrupt + torn + lost; }
    std::string words() const {
        return std::to_string(notOpened) + " not opened, " + std::to_string(corrupt) +
               " corrupt, " + std::to_string(torn) + " torn, " + std::to_string(lost) + " lost; " +
               std::to_string(byHand) + " opened once a spoilt journal was moved, as told";
    }
};

class PowerCut : public testing::Test {
protected:
    /// The whole day. `synchronous`: a mode of SQLite instead of the one the records are kept in.
    Trace trace(const char* synchronous = nullptr) {
        Trace trace{.before = day_.morning()};
        day_.layOut(trace.before);
        const faults::Recording recording{trace.operations};
        const auto laboratory = day_.open();
        EXPECT_TRUE(laboratory) << (laboratory ? "" : laboratory.error().message);
        if (synchronous != nullptr) {
            QSqlQuery mode{laboratory->records().database()};
            EXPECT_TRUE(mode.exec(QStringLiteral("PRAGMA synchronous = ") + synchronous));
        }
        for (const auto& step : day_.steps()) {
            const auto outcome = step.run(*laboratory);
            EXPECT_TRUE(outcome) << (outcome ? "" : outcome.error().message);
            trace.acknowledged.push_back(trace.operations.size());
        }
        return trace;
    }
    /// In the evening all that is derived from the ledger is written anew, with a cache so small
    /// that pages are written before the commit.
    Trace traceRebuilding() {
        trace();
        Trace rebuilding{.before = day_.found()};
        const faults::Recording recording{rebuilding.operations};
        const auto laboratory = day_.open();
        EXPECT_TRUE(laboratory) << (laboratory ? "" : laboratory.error().message);
        QSqlQuery cache{laboratory->records().database()};
        EXPECT_TRUE(cache.exec(QStringLiteral("PRAGMA cache_size = 1")));
        auto begun = storage::Transaction::begin(laboratory->records());
        EXPECT_TRUE(begun) << (begun ? "" : begun.error().message);
        storage::Transaction work = *std::move(begun);
        EXPECT_TRUE(storage::rebuildProjections(work));
        spilled_ = std::ranges::any_of(rebuilding.operations, writesRecords);
        EXPECT_TRUE(work.commit());
        rebuilding.acknowledged.assign(day_.steps().size(), 0);
        return rebuilding;
    }

    /// Some states at each operation that leaves anything pending, `wanted` in all.
    Tally sweep(const Trace& trace, Honesty honesty, std::int64_t wanted) {
        tally_ = {};
        std::vector<std::size_t> points;
        visit(trace, honesty, [&](const PowerCuts& cuts, std::size_t at) {
            if (cuts.hasPending()) points.push_back(at);
        });
        const auto each = wanted / std::ssize(points) + 1;
        visit(trace, honesty, [&](const PowerCuts& cuts, std::size_t at) {
            if (!cuts.hasPending()) return;
            for (std::int64_t state = 0; state < each && tally_.states < wanted; ++state)
                count(stateOf(cuts), trace.acknowledgedAfter(at + 1));
        });
        return tally_;
    }
    /// As sweep(), but the power fails a second time, while the records are opened again.
    Tally sweepRecovering(const Trace& trace, std::int64_t wanted) {
        tally_ = {};
        constexpr std::size_t kEvery = 7;
        visit(trace, Honesty::Forces, [&](const PowerCuts& cuts, std::size_t at) {
            if (!cuts.hasPending() || at % kEvery != 0 || tally_.states >= wanted) return;
            const Stored first = cuts.withSome(random_, false);
            Trace recovery;
            day_.layOut(first);
            {
                const faults::Recording recording{recovery.operations};
                (void)day_.open();
            }
            PowerCuts again{first, Honesty::Forces};
            for (const Operation& operation : recovery.operations) {
                again.take(operation);
                constexpr std::int64_t kEach = 4;
                for (std::int64_t state = 0; again.hasPending() && state < kEach; ++state)
                    count(stateOf(again), trace.acknowledgedAfter(at + 1));
            }
        });
        return tally_;
    }

    /// Whether rebuilding wrote to the records before its commit.
    bool spilled() const { return spilled_; }
    /// How many different records there were once they were opened.
    std::size_t differentRecords() const { return known_.size(); }

private:
    template <typename Visitor>
    void visit(const Trace& trace, Honesty honesty, const Visitor& visitor) {
        PowerCuts cuts{trace.before, honesty};
        for (std::size_t at = 0; at < trace.operations.size(); ++at) {
            cuts.take(trace.operations[at]);
            visitor(cuts, at);
        }
    }
    Stored stateOf(const PowerCuts& cuts) {
        enum Way { Without, All, First, FirstAgain, Some, SomeAgain, Spoilt, SpoiltAgain, Ways };
        switch (random_() % Ways) {
            case Without:
                return cuts.without();
            case All:
                return cuts.withAll();
            case First:
            case FirstAgain:
                return cuts.withFirst(random_);
            case Some:
            case SomeAgain:
                return cuts.withSome(random_, false);
            default:
                return cuts.withSome(random_, true);
        }
    }
    /// Opens a state. A journal whose first sector is garbage proves nothing: the program says so,
    /// leaves it alone, and the person moves it.
    domain::Result<domain::Done> open(const Stored& state) {
        day_.layOut(state);
        const auto opened = day_.open();
        if (opened) return domain::Done{};
        if (opened.error().message.find("move it elsewhere") == std::string::npos)
            return opened.error();
        ++tally_.byHand;
        Stored without = state;
        without.of(faults::Part::Journal) = {};
        day_.layOut(without);
        const auto again = day_.open();
        if (!again) return again.error();
        return domain::Done{};
    }
    /// Opens a state, and looks at what opening it made of it; the same bytes only once.
    const Verdict& judge(const Stored& state) {
        if (const auto opened = open(state); !opened)
            return refused_ = {.state = Verdict::State::NotOpened, .flaw = opened.error().message};
        const Stored found = day_.found();
        const std::string& bytes = found.of(faults::Part::Records).bytes;
        const auto [place, isNew] = known_.try_emplace(std::hash<std::string>{}(bytes));
        if (isNew) place->second = day_.judge();
        return place->second;
    }
    void count(const Stored& state, std::size_t acknowledged) {
        ++tally_.states;
        const Verdict& verdict = judge(state);
        const auto kept = Day::firstOf(verdict);
        std::string flaw = verdict.flaw;
        if (verdict.state == Verdict::State::NotOpened) {
            ++tally_.notOpened;
        } else if (verdict.state == Verdict::State::Corrupt) {
            ++tally_.corrupt;
        } else if (verdict.state == Verdict::State::Torn || !kept || *kept > acknowledged + 1) {
            ++tally_.torn;
        } else if (*kept < acknowledged) {
            ++tally_.lost;
            flaw = "of " + std::to_string(acknowledged) + " acknowledged steps " +
                   std::to_string(*kept) + " are kept";
        } else {
            return;
        }
        if (tally_.first.empty())
            tally_.first = "state " + std::to_string(tally_.states) + ": " + flaw;
    }

    Day day_{};
    Random random_{kSeed};
    Tally tally_{};
    bool spilled_{};
    Verdict refused_{};
    std::unordered_map<std::size_t, Verdict> known_{};
};

TEST_F(PowerCut, LosesNothingAcknowledgedAndLeavesNothingHalfDone) {
    const Trace day = trace();
    const auto tally =
        sweep(day, Honesty::Forces, faults::wanted("FRAMEWRIGHT_FAULTS_STATES", kStates));
    faults::scored({"power cuts", tally.states, kSeed, tally.failures(),
                    tally.words() + "; " + std::to_string(day.acknowledged.size()) + " steps, " +
                        std::to_string(day.operations.size()) + " operations, " +
                        std::to_string(differentRecords()) + " different records afterwards"});
    EXPECT_EQ(tally.failures(), 0) << tally.first;
}

TEST_F(PowerCut, MayComeASecondTimeWhileTheRecordsRecover) {
    const auto tally = sweepRecovering(trace(), kStatesWhileRecovering);
    faults::scored(
        {"power cuts while recovering", tally.states, kSeed, tally.failures(), tally.words()});
    EXPECT_GE(tally.states, kStatesWhileRecovering / 2);
    EXPECT_EQ(tally.failures(), 0) << tally.first;
}

TEST_F(PowerCut, LosesNothingWhileRebuildingWritesBeforeItsCommit) {
    const Trace rebuilding = traceRebuilding();
    ASSERT_TRUE(spilled());
    const auto tally = sweep(rebuilding, Honesty::Forces, kStatesWhileRebuilding);
    faults::scored(
        {"power cuts while rebuilding", tally.states, kSeed, tally.failures(),
         tally.words() + "; " + std::to_string(rebuilding.operations.size()) + " operations"});
    EXPECT_EQ(tally.failures(), 0) << tally.first;
}

TEST_F(PowerCut, DamagesRecordsThatAreNeverForcedToDisk) {
    const auto tally = sweep(trace("OFF"), Honesty::Forces, kControlStates);
    faults::scored({"control: synchronous=OFF", tally.states, kSeed, tally.failures(),
                    "must fail: " + tally.words()});
    EXPECT_GE(tally.corrupt + tally.notOpened, tally.states / 10);
    EXPECT_GE(tally.lost, 1);
}

TEST_F(PowerCut, DamagesRecordsOnADiskThatLiesAboutForcing) {
    const auto tally = sweep(trace(), Honesty::Lies, kControlStates);
    faults::scored({"control: lying fsync", tally.states, kSeed, tally.failures(),
                    "must fail: " + tally.words()});
    EXPECT_GE(tally.corrupt + tally.notOpened, tally.states / 10);
    EXPECT_GE(tally.lost, 1);
}

}  // namespace
