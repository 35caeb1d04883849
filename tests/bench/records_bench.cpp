/// How the records behave when there are many: see run.sh.
///   records_bench make FOLDER COUNT [SEED]
#include <QCoreApplication>
#include <chrono>
#include <iostream>

#include "tests/bench/many_orders.h"

namespace {

int make(const std::vector<std::string>& words) {
    support::HandClock clock;
    const auto laboratory = actions::Laboratory::open(words.at(1), clock, storage::HashCost::Light);
    if (!laboratory) {
        std::cerr << laboratory.error().message << '\n';
        return 3;
    }
    const auto begin = std::chrono::steady_clock::now();
    const auto made = bench::makeOrders(*laboratory, clock, std::stoi(words.at(2)), 1);
    if (!made) {
        std::cerr << made.error().message << '\n';
        return 1;
    }
    bench::write(*made, words.at(1));
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begin;
    std::cout << made->orders << " orders, " << made->entries << " entries in " << took.count()
              << " s\n";
    return 0;
}

}  // namespace

int main(int count, char** words) {
    const QCoreApplication application{count, words};
    const std::vector<std::string> given(words + 1, words + count);
    if (given.size() >= 3 && given[0] == "make") return make(given);
    std::cerr << "usage: records_bench make FOLDER COUNT\n";
    return 2;
}
