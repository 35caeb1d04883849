#include "tests/bench/writers.h"

#include <QProcess>
#include <algorithm>
#include <chrono>
#include <iostream>
#include <memory>
#include <set>
#include <thread>

#include "tests/bench/bench_laboratory.h"
#include "tests/bench/bench_work.h"
#include "tests/bench/many_orders.h"

namespace bench {
namespace {

namespace fs = std::filesystem;
using Clock = std::chrono::steady_clock;

constexpr int kWriters = 8;
constexpr int kOrdersEach = 4;
constexpr double kSeconds = 6;
constexpr double kThroughputGoal = 0.8;
constexpr double kWaitGoal = 1000;  // ms

struct Written {
    double count{};
    double failed{};
    double worst{};  ///< ms
};

/// So many writers at once for some seconds; empty when one of them gave up.
std::vector<Written> run(const std::string& program, const fs::path& folder, int writers,
                         const Made& made) {
    const auto start = Clock::now() + std::chrono::milliseconds{1500};
    const auto micros =
        std::chrono::duration_cast<std::chrono::microseconds>(start.time_since_epoch()).count();
    std::vector<std::unique_ptr<QProcess>> processes;
    for (int i = 0; i < writers; ++i) {
        QStringList words{"writer", QString::fromStdString(folder.string()),
                          QString::number(micros), QString::number(kSeconds)};
        for (int j = 0; j < kOrdersEach; ++j)
            words << QString::fromStdString(
                made.inWork.at(static_cast<std::size_t>(i * kOrdersEach + j)).text());
        auto& process = processes.emplace_back(std::make_unique<QProcess>());
        process->setProcessChannelMode(QProcess::ForwardedErrorChannel);
        process->start(QString::fromStdString(program), words);
    }
    std::vector<Written> all;
    bool went = true;
    for (auto& process : processes) {
        went = process->waitForFinished(-1) && process->exitCode() == 0 && went;
        const auto words = process->readAllStandardOutput().simplified().split(' ');
        all.push_back(
            {words.value(0).toDouble(), words.value(1).toDouble(), words.value(2).toDouble()});
    }
    return went ? all : std::vector<Written>{};
}

double total(const std::vector<Written>& all, double Written::* what) {
    double sum = 0;
    for (const Written& each : all) sum += each.*what;
    return sum;
}

}  // namespace

int runWriter(const fs::path& folder, std::int64_t start, double seconds,
              const std::vector<std::string>& orders) {
    support::HandClock clock;
    clock.goTo(lastDay());
    clock.letPass(std::int64_t{11} * 60);
    const auto laboratory = actions::Laboratory::open(folder, clock, storage::HashCost::Light);
    const auto who = laboratory ? signedIn(*laboratory, kTechnicians[0])
                                : domain::Result<actions::Who>{laboratory.error()};
    if (!who) {
        std::cerr << who.error().message << '\n';
        return 3;
    }
    const Clock::time_point begin{std::chrono::microseconds{start}};
    const auto end =
        begin + std::chrono::duration_cast<Clock::duration>(std::chrono::duration<double>{seconds});
    std::this_thread::sleep_until(begin);
    std::vector<Turns> work;
    for (const std::string& number : orders) work.emplace_back(*domain::OrderNumber::parse(number));
    int count = 0;
    int failed = 0;
    double worst = 0;
    std::set<std::string> told;
    for (auto last = Clock::now(); last < end; ++count) {
        const auto done =
            work[static_cast<std::size_t>(count) % work.size()].next(*laboratory, *who);
        const auto now = Clock::now();
        worst = std::max(worst, std::chrono::duration<double, std::milli>(now - last).count());
        last = now;
        clock.letPass(0, 1000);
        if (done) continue;
        ++failed;
        if (told.insert(done.error().message).second) std::cerr << done.error().message << '\n';
    }
    std::cout << count << ' ' << failed << ' ' << worst << '\n';
    return 0;
}

std::vector<Figure> measureWriters(const std::string& program, const fs::path& source,
                                   const fs::path& scratch, const std::string& name) {
    const Made made = readMade(source);
    const fs::path folder = scratch / "writers";
    fs::remove_all(folder);
    fs::create_directories(folder);
    fs::copy_file(source / "records.db", folder / "records.db");
    const auto alone = run(program, folder, 1, made);
    fs::copy_file(source / "records.db", folder / "records.db",
                  fs::copy_options::overwrite_existing);
    const auto together = run(program, folder, kWriters, made);
    fs::remove_all(folder);
    if (alone.empty() || together.empty()) return {};
    const auto [fewest, most] = std::ranges::minmax(together, {}, &Written::count);
    const double worst = std::ranges::max(together, {}, &Written::worst).worst;
    const std::string where = "8 writers, " + name;
    const double one = total(alone, &Written::count) / kSeconds;
    const double eight = total(together, &Written::count) / kSeconds;
    return {{made.orders, where + ": one alone", "a second", one, {}},
            {made.orders, where + ": all together", "a second", eight, {}},
            {made.orders, where + ": throughput against one", "", eight / one,
             atLeast(kThroughputGoal)},
            {made.orders, where + ": worst wait", "ms", worst, below(kWaitGoal)},
            {made.orders, where + ": worst wait of one alone", "ms", alone.front().worst, {}},
            {made.orders, where + ": fewest against most", "", fewest.count / most.count, {}},
            {made.orders, where + ": refused or failed", "commands",
             total(together, &Written::failed), below(1)}};
}

}  // namespace bench
