#include "tests/bench/measures.h"

#include <QProcess>
#include <algorithm>
#include <cmath>
#include <ctime>
#include <fstream>
#include <functional>
#include <iostream>
#include <set>
#include <stdexcept>

#include "apps/actions/floor.h"
#include "apps/actions/lots.h"
#include "apps/actions/order_view.h"
#include "apps/actions/orders.h"
#include "apps/actions/verification.h"
#include "tests/bench/bench_laboratory.h"
#include "tests/bench/bench_work.h"
#include "tests/bench/bulk_records.h"
#include "tests/bench/many_orders.h"
#include "tests/bench/sqlite_probe.h"
#include "tests/support/designs.h"

namespace bench {
namespace {

namespace fs = std::filesystem;
using actions::Laboratory;
using domain::OrderNumber;

constexpr double kActionGoal = 5;      // ms CPU
constexpr double kTraceGoal = 0.05;    // ms CPU for a device: 5 s for 100,000
constexpr double kMemoryGoal = 100;    // MB
constexpr double kReadOnceGoal = 1.5;  // times the file: one pass, and what it looks up
constexpr double kSyncsGoal = 5;
constexpr int kTimes = 20;
constexpr std::int64_t kMoment = 100'000;  // microseconds of the laboratory's clock
constexpr double kEnough = 3;              // seconds for one thing, unless it takes longer once
constexpr const char* kCpu = "ms CPU";
constexpr const char* kWall = "ms";

/// Processor seconds of this process, and seconds on the wall.
struct Moment {
    double cpu{};
    double wall{};

    static Moment now() {
        const auto of = [](clockid_t clock) {
            timespec time{};
            clock_gettime(clock, &time);
            return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_nsec) / 1e9;
        };
        return {of(CLOCK_PROCESS_CPUTIME_ID), of(CLOCK_MONOTONIC)};
    }
};

template <typename T>
T must(domain::Result<T> result) {
    if (!result) throw std::runtime_error{result.error().message};
    return *std::move(result);
}

double median(std::vector<double> values) {
    std::ranges::sort(values);
    return values[values.size() / 2];
}

/// The records of a folder, open, with somebody signed in for each sort of work.
struct Open {
    support::HandClock clock{};
    Laboratory laboratory;
    actions::Who technician;
    actions::Who manager;

    explicit Open(const fs::path& folder)
        : clock{onLastDay()},
          laboratory{must(Laboratory::open(folder, clock, storage::HashCost::Light))},
          technician{must(signedIn(laboratory, kTechnicians[0]))},
          manager{must(signedIn(laboratory, kManager))} {}

private:
    static support::HandClock onLastDay() {
        support::HandClock clock;
        clock.goTo(lastDay());
        clock.letPass(std::int64_t{10} * 60);
        return clock;
    }
};

class Measuring {
public:
    Measuring(std::int64_t orders, support::HandClock& clock, std::vector<Figure>& figures)
        : orders_{orders}, clock_{clock}, figures_{figures} {}

    /// Repeats what is done with a count: 0, 1, 2 ..., for some seconds and so many times at most.
    /// The median of each. Answers how often it was done.
    int time(const std::string& what, const std::function<void(int)>& once,
             std::optional<Goal> goal, int most = kTimes) {
        std::vector<double> cpu;
        std::vector<double> wall;
        const double until = Moment::now().wall + kEnough;
        for (int i = 0; i < most && (i == 0 || Moment::now().wall < until); ++i) {
            clock_.letPass(0, kMoment);
            const Moment begin = Moment::now();
            once(i);
            const Moment end = Moment::now();
            cpu.push_back((end.cpu - begin.cpu) * 1000);
            wall.push_back((end.wall - begin.wall) * 1000);
        }
        figures_.push_back({orders_, what, kCpu, median(cpu), goal});
        figures_.push_back({orders_, what, kWall, median(wall), {}});
        return static_cast<int>(cpu.size());
    }
    /// What SQLite does for it, once.
    void count(const std::string& what, const std::function<void()>& once, bool isTransition) {
        clock_.letPass(0, kMoment);
        countStatements(true);
        const SqliteCounts before = countsSoFar();
        once();
        const SqliteCounts done = countsSoFar() - before;
        countStatements(false);
        const auto add = [&](const char* unit, std::int64_t value, std::optional<Goal> goal) {
            figures_.push_back({orders_, what, unit, static_cast<double>(value), goal});
        };
        add("statements", done.statements, {});
        if (!isTransition) return;
        add("commits", done.commits, below(2));
        add("syncs", done.syncs, below(kSyncsGoal + 1));
    }

private:
    std::int64_t orders_;
    support::HandClock& clock_;
    std::vector<Figure>& figures_;
};

domain::Prescription freshPrescription(int count) {
    domain::Prescription made = support::upperClassIIIMod1();
    made.identity.patientName = "Newly Logged";
    made.identity.patientReference = "N-" + std::to_string(count);
    made.issued = lastDay();
    made.needed = lastDay().plusDays(28);
    return made;
}

std::size_t ordersOnAPage(const Laboratory& laboratory) {
    return must(actions::floorPage(laboratory)).size();
}
bool isFound(const Laboratory& laboratory, const std::string& patient) {
    return std::ranges::count(must(actions::findOrders(laboratory, patient)), patient,
                              &actions::FloorLine::patient) > 0;
}

/// The transitions, each on orders of its own; the times first, then the counts.
void measureTransitions(Measuring& measuring, const Open& open, const Made& made) {
    const auto orderAt = [&](int place) { return made.inWork.at(static_cast<std::size_t>(place)); };
    const auto start = [&](int place) {
        return must(actions::start(open.laboratory, {orderAt(place)}, {}, open.technician)).order;
    };
    const auto goal = below(kActionGoal);
    std::vector<domain::Order> started;
    const int starts = measuring.time("start", [&](int i) { started.push_back(start(i)); }, goal);
    const auto record = [&](const domain::Order& order) {
        must(recordAll(open.laboratory, order, open.technician));
    };
    const int records = measuring.time(
        "record", [&](int i) { record(started[static_cast<std::size_t>(i)]); }, goal, starts);
    const auto finish = [&](int place) {
        must(actions::finish(open.laboratory, {orderAt(place)}, {}, open.technician));
    };
    measuring.time("finish", finish, goal, records);
    int logged = 0;
    const auto log = [&] {
        must(actions::log(open.laboratory, freshPrescription(++logged), open.manager));
    };
    measuring.time("log", [&](int) { log(); }, goal);
    const int next = kTimes;
    domain::Order order{.number = orderAt(next)};
    measuring.count("start", [&] { order = start(next); }, true);
    measuring.count("record", [&] { record(order); }, true);
    measuring.count("finish", [&] { finish(next); }, true);
    measuring.count("log", log, true);
}

void measureViews(Measuring& measuring, const Open& open, const Made& made) {
    const Laboratory& laboratory = open.laboratory;
    const auto view = [&](int i) {
        must(actions::order(
            laboratory,
            made.inWork[static_cast<std::size_t>(kTimes + 1 + i) % made.inWork.size()]));
    };
    const auto goal = below(kActionGoal);
    measuring.time("order view", view, goal);
    measuring.count("order view", [&] { view(0); }, false);
    measuring.time("floor page", [&](int) { ordersOnAPage(laboratory); }, goal);
    measuring.count("floor page", [&] { ordersOnAPage(laboratory); }, false);
    measuring.time(
        "search for a patient",
        [&](int) {
            if (!isFound(laboratory, made.patient))
                throw std::runtime_error{"nobody was found of the name " + made.patient};
        },
        goal);
    std::size_t devices = 0;
    const auto trace = [&](int) {
        devices = must(actions::traceLot(laboratory, std::string{kPooledLot}, open.manager))
                      .front()
                      .devices.size();
    };
    trace(0);
    measuring.time("trace of a lot in " + std::to_string(devices) + " devices", trace,
                   below(kTraceGoal * static_cast<double>(devices)));
}

double peakMegabytes() {
    std::ifstream status{"/proc/self/status"};
    std::string line;
    while (std::getline(status, line))
        if (line.starts_with("VmHWM:")) return std::stod(line.substr(6)) / 1024;
    return 0;
}

}  // namespace

std::vector<Figure> measureActions(const fs::path& folder) {
    std::vector<Figure> figures;
    try {
        const Made made = readMade(folder);
        Open open{folder};
        Measuring measuring{made.orders, open.clock, figures};
        measureTransitions(measuring, open, made);
        measureViews(measuring, open, made);
    } catch (const std::exception& failure) {
        std::cerr << "measuring " << folder.string() << ": " << failure.what() << '\n';
    }
    return figures;
}

int repeat(const std::string& what, const fs::path& folder, int times) try {
    const Made made = readMade(folder);
    Open open{folder};
    for (int i = 0; i < times; ++i) {
        const auto& number = made.inWork[static_cast<std::size_t>(i) % made.inWork.size()];
        open.clock.letPass(0, kMoment);
        if (what == "start") must(actions::start(open.laboratory, {number}, {}, open.technician));
        if (what == "log") must(actions::log(open.laboratory, freshPrescription(i), open.manager));
        if (what == "view") must(actions::order(open.laboratory, number));
        if (what == "floor") ordersOnAPage(open.laboratory);
    }
    return 0;
} catch (const std::exception& failure) {
    std::cerr << what << ": " << failure.what() << '\n';
    return 1;
}

int measureAlone(const std::string& what, const fs::path& folder) try {
    support::HandClock clock;
    const SqliteCounts before = countsSoFar();
    const Moment begin = Moment::now();
    const Laboratory laboratory = must(Laboratory::open(folder, clock, storage::HashCost::Light));
    if (what == "verify")
        if (const auto problems = must(actions::verify(laboratory)).problems; !problems.empty())
            throw std::runtime_error{problems.front()};
    if (what == "rebuild") must(rebuild(laboratory));
    const Moment end = Moment::now();
    constexpr double kPage = 4096;
    const double size = static_cast<double>(fs::file_size(folder / "records.db"));
    std::cout << (end.cpu - begin.cpu) * 1000 << ' ' << (end.wall - begin.wall) * 1000 << ' '
              << peakMegabytes() << ' '
              << static_cast<double>((countsSoFar() - before).reads) * kPage / size << '\n';
    return 0;
} catch (const std::exception& failure) {
    std::cerr << what << ": " << failure.what() << '\n';
    return 1;
}

std::vector<Figure> readAlone(const std::string& program, const std::string& what,
                              const fs::path& folder) {
    QProcess process;
    process.setProcessChannelMode(QProcess::ForwardedErrorChannel);
    process.start(QString::fromStdString(program),
                  {"alone", QString::fromStdString(what), QString::fromStdString(folder.string())});
    if (!process.waitForFinished(-1) || process.exitCode() != 0) return {};
    const QList<QByteArray> words = process.readAllStandardOutput().simplified().split(' ');
    const auto orders = readMade(folder).orders;
    const bool isSmall = what == "open";
    const auto goal = [&](Goal wanted) { return isSmall ? std::nullopt : std::optional{wanted}; };
    return {{orders, what, kCpu, words.value(0).toDouble(),
             isSmall ? std::optional{below(kActionGoal)} : std::nullopt},
            {orders, what, kWall, words.value(1).toDouble(), {}},
            {orders, what, "MB at most", words.value(2).toDouble(), goal(below(kMemoryGoal))},
            {orders, what, "times the file read", words.value(3).toDouble(),
             goal(below(kReadOnceGoal))}};
}

std::vector<Figure> growth(const std::vector<Figure>& figures) {
    std::vector<Figure> grown;
    const auto logarithm = [](std::int64_t orders) {
        return std::log(static_cast<double>(orders));
    };
    std::set<std::string> told;
    for (const Figure& few : figures) {
        if (few.unit != kCpu || !few.goal || few.goal->bound != kActionGoal) continue;
        if (!told.insert(few.what).second) continue;
        const Figure* many = &few;
        for (const Figure& each : figures)
            if (each.what == few.what && each.unit == kCpu && each.orders > many->orders)
                many = &each;
        if (many == &few) continue;
        // Twice what the logarithm allows: caches grow cold, and clocks are coarse.
        const double allowed = 2 * logarithm(many->orders) / logarithm(few.orders);
        grown.push_back({many->orders, few.what + ": against " + std::to_string(few.orders),
                         "times the CPU", many->value / few.value, below(allowed)});
    }
    return grown;
}

}  // namespace bench
