/// How the records behave when there are many; see run.sh.
///   records_bench FOLDER [COUNT...]         makes records of so many orders each in a folder of
///   the
///                                           disk, measures, and prints one table
///   records_bench make FOLDER COUNT [SEED]  only makes them
///   records_bench repeat WHAT FOLDER COUNT  start, log, view or floor, for a profiler
/// and, as parts of the first, in processes of their own:
///   records_bench alone WHAT FOLDER
///   records_bench writer FOLDER START SECONDS ORDER...
#include <QCoreApplication>
#include <chrono>
#include <cstdlib>
#include <iostream>

#include "tests/bench/many_orders.h"
#include "tests/bench/measures.h"
#include "tests/bench/raw_writes.h"
#include "tests/bench/sqlite_probe.h"
#include "tests/bench/writers.h"

namespace {

namespace fs = std::filesystem;
using bench::Figure;
using Words = std::vector<std::string>;

const fs::path kMemory{"/dev/shm"};
constexpr const char* kPrefix = "records-bench";

/// Makes the records; the seconds it took, or nothing.
std::optional<double> make(const fs::path& folder, int orders, std::uint64_t seed) {
    support::HandClock clock;
    const auto laboratory = actions::Laboratory::open(folder, clock, storage::HashCost::Light);
    if (!laboratory) {
        std::cerr << laboratory.error().message << '\n';
        return {};
    }
    const auto begin = std::chrono::steady_clock::now();
    const auto made = bench::makeOrders(*laboratory, clock, orders, seed);
    if (!made) {
        std::cerr << made.error().message << '\n';
        return {};
    }
    bench::write(*made, folder);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begin;
    std::cerr << made->orders << " orders, " << made->entries << " entries in " << took.count()
              << " s\n";
    return took.count();
}

void add(std::vector<Figure>& figures, const std::vector<Figure>& more) {
    for (const Figure& each : more) std::cout << bench::jsonOf(each) << std::endl;
    figures.insert(figures.end(), more.begin(), more.end());
}

/// Everything about records of one size.
void measure(std::vector<Figure>& figures, const std::string& program, const fs::path& folder,
             int orders) {
    const fs::path records = folder / std::to_string(orders);
    fs::remove_all(records);
    const auto took = make(records, orders, 1);
    if (!took) return;
    add(figures, {{orders, "making them", "s", *took, {}}});
    add(figures, {{orders,
                   "size of the records",
                   "MB",
                   static_cast<double>(fs::file_size(records / "records.db")) / 1e6,
                   {}}});
    for (const char* what : {"open", "verify", "rebuild"})
        add(figures, bench::readAlone(program, what, records));
    const fs::path memory = kMemory / (kPrefix + std::to_string(orders));
    fs::create_directories(memory);
    // Before the orders are worked on below.
    add(figures,
        bench::compareWithRaw(records, {{"on the disk", folder, 0, {}},
                                        {"in memory", memory, 0, {}},
                                        {"a sync 4 ms", memory, 4000, bench::atLeast(0.7)},
                                        {"a sync 50 us", memory, 50, bench::atLeast(0.3)}}));
    add(figures, bench::measureWriters(program, records, folder, "on the disk"));
    add(figures, bench::measureWriters(program, records, memory, "in memory"));
    fs::remove_all(memory);
    add(figures, bench::measureActions(records));
    fs::remove_all(records);
}

int measureAll(const std::string& program, const Words& words) {
    const fs::path folder{words.front()};
    fs::create_directories(folder);
    std::vector<Figure> figures;
    double load = 0;
    getloadavg(&load, 1);
    add(figures, {{0, "load of the machine before", "programs", load, {}}});
    add(figures, {{0, "a sync on the disk", "us", bench::syncTime(folder), {}},
                  {0, "a sync in memory", "us", bench::syncTime(kMemory), {}}});
    for (std::size_t i = 1; i < words.size(); ++i)
        measure(figures, program, folder, std::stoi(words[i]));
    add(figures, bench::growth(figures));
    std::cout << '\n';
    bench::printTable(std::cout, figures);
    return 0;
}

}  // namespace

int main(int count, char** words) {
    const QCoreApplication application{count, words};
    const Words given(words + 1, words + count);
    bench::installProbe();
    if (given.size() >= 3 && given[0] == "make")
        return make(given[1], std::stoi(given[2]), given.size() > 3 ? std::stoull(given[3]) : 1)
                   ? 0
                   : 1;
    if (given.size() == 4 && given[0] == "repeat")
        return bench::repeat(given[1], given[2], std::stoi(given[3]));
    if (given.size() == 3 && given[0] == "alone") return bench::measureAlone(given[1], given[2]);
    if (given.size() > 4 && given[0] == "writer")
        return bench::runWriter(given[1], std::stoll(given[2]), std::stod(given[3]),
                                Words(given.begin() + 4, given.end()));
    if (given.size() >= 2) return measureAll(words[0], given);
    std::cerr << "usage: records_bench FOLDER COUNT...\n";
    return 2;
}
