/// Eight programs on one store, each writing what it decided from what it had read: nobody's work
/// is lost, and the same programs without their look at the version lose some.
#include <gmock/gmock.h>

#include <QCoreApplication>
#include <QProcess>
#include <QTemporaryDir>
#include <cstdlib>
#include <memory>

#include "apps/actions/system_clock.h"
#include "tests/concurrency/history.h"
#include "tests/support/designs.h"
#include "tests/support/working_laboratory.h"

namespace {

using concurrency::History;
using concurrency::Judgement;
using testing::Each;
using testing::IsEmpty;
using testing::Not;

constexpr int kProcesses = 8;
constexpr int kOrders = 4;
constexpr int kControlSeconds = 5;

/// FRAMEWRIGHT_CONCURRENCY_SECONDS, or half a minute.
int secondsAsked() {
    const char* given = std::getenv("FRAMEWRIGHT_CONCURRENCY_SECONDS");
    const int seconds = given == nullptr ? 30 : std::atoi(given);
    return seconds > 0 ? seconds : 30;
}

class ManyPrograms : public testing::Test {
protected:
    ManyPrograms() {
        for (int i = 0; i < kOrders; ++i) {
            const auto number = floor_.accepted(support::upperClassIIIMod1());
            floor_.bringTo(number, domain::Stage::BlockOut);
            orders_ << QString::fromStdString(number.text());
        }
    }

    /// All at once for so many seconds, and what came of it.
    Judgement run(const char* program, int seconds) {
        const QString token = QString::fromStdString(floor_.as(support::kMaker).token);
        std::vector<std::unique_ptr<QProcess>> processes;
        for (int i = 0; i < kProcesses; ++i) {
            auto& process = processes.emplace_back(std::make_unique<QProcess>());
            process->setEnvironment(QProcess::systemEnvironment()
                                    << "FRAMEWRIGHT_SESSION=" + token);
            process->setProcessChannelMode(QProcess::ForwardedErrorChannel);
            process->start(program,
                           QStringList{folder(), history(i), QString::number(i + 1),
                                       QString::number(seconds), QString::number(1000 + i)} +
                               orders_);
        }
        History all;
        for (int i = 0; i < kProcesses; ++i) {
            EXPECT_TRUE(
                processes[static_cast<std::size_t>(i)]->waitForFinished((seconds + 120) * 1000));
            EXPECT_EQ(processes[static_cast<std::size_t>(i)]->exitCode(), 0);
            EXPECT_TRUE(concurrency::read(history(i).toStdString(), all));
        }
        const Judgement judged = judge(*laboratory_, all);
        std::cout << kProcesses << " programs, " << seconds << " s: " << judged.acknowledged
                  << " writes acknowledged, " << judged.refused << " refused, " << judged.unknown
                  << " unknown; " << judged.counted << " numbers, " << judged.stages
                  << " starts and ends of stages; " << judged.lostUpdates.size()
                  << " lost updates\n";
        return judged;
    }

private:
    QString folder() const { return folder_.filePath("lab"); }
    QString history(int process) const {
        return folder_.filePath(QString{"history-%1"}.arg(process));
    }

    QTemporaryDir folder_{DISK_FOLDER "/records-XXXXXX"};  ///< on a disk, wherever TMPDIR is
    actions::SystemClock clock_;
    domain::Result<actions::Laboratory> laboratory_{
        actions::Laboratory::open(folder().toStdString(), clock_, storage::HashCost::Light)};
    support::Floor floor_{*laboratory_};
    QStringList orders_;
};

TEST_F(ManyPrograms, LoseNothingDoNothingTwiceAndLeaveTheRecordsWhole) {
    const Judgement judged = run(FLOOR_WRITER, secondsAsked());
    EXPECT_THAT(judged.lostUpdates, IsEmpty());
    EXPECT_THAT(judged.otherFaults, IsEmpty());
    EXPECT_GT(judged.acknowledged, 50) << "hardly anything was tried";
    EXPECT_GT(judged.refused, 0) << "nobody was ever too late";
    EXPECT_GT(judged.stages, 0);
    EXPECT_GT(judged.counted, 20);
}

// The control: that a lost update would be found.
TEST_F(ManyPrograms, LoseWorkWhereNobodyLooksWhetherTheOrderChanged) {
    const Judgement judged = run(CARELESS_FLOOR_WRITER, kControlSeconds);
    EXPECT_THAT(judged.lostUpdates, Not(IsEmpty()));
}

}  // namespace

int main(int count, char** words) {
    testing::InitGoogleTest(&count, words);
    const QCoreApplication application{count, words};
    return RUN_ALL_TESTS();
}
