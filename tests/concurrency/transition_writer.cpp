// Carries out the transitions FIRST to LAST of a fixed list, one after the other, each under the
// key of its number, and says so on standard output after each: "17 done", or "17 repeated":
//   transition_writer FOLDER FIRST LAST ORDER...
// The session of its person comes in FRAMEWRIGHT_SESSION. It is made to be killed at any moment.
#include <unistd.h>

#include <QCoreApplication>
#include <cstdlib>
#include <iostream>

#include "apps/actions/system_clock.h"
#include "apps/actions/work.h"
#include "tests/support/numbered_key.h"
#include "tests/support/working_laboratory.h"

namespace {

using actions::Outcome;
using domain::OrderNumber;
using domain::Result;
using domain::Stage;

/// Every order begins its receipt, takes of a lot, and begins again, over and over.
Result<Outcome> transition(const actions::Laboratory& laboratory, const OrderNumber& number,
                           std::size_t turn, const actions::Who& who) {
    constexpr std::size_t kTurns = 3;
    if (turn % kTurns == 0) return actions::start(laboratory, {number}, {}, who);
    if (turn % kTurns == 1)
        return actions::record(
            laboratory, number, {},
            {{domain::BenchValue{"count", std::to_string(turn)}, {}},
             {domain::LotUsed{support::lotCode(domain::LotKind::Wire), {}, 7}, {}}},
            who);
    return actions::redo(laboratory, number, domain::RedoReason::Other, Stage::Receipt, {}, who.key,
                         who);
}

}  // namespace

int main(int count, char** words) {
    const QCoreApplication application{count, words};
    const std::vector<std::string> given(words + 1, words + count);
    if (given.size() < 4) return 2;
    const actions::SystemClock clock;
    const auto laboratory = actions::Laboratory::open(given[0], clock, storage::HashCost::Light);
    if (!laboratory) {
        std::cerr << laboratory.error().message << '\n';
        return 3;
    }
    const std::size_t orders = given.size() - 3;
    for (std::size_t i = std::stoul(given[1]); i <= std::stoul(given[2]); ++i) {
        const actions::Who who{.person = *domain::PersonCode::parse(support::kMaker),
                               .key = support::numberedKey(static_cast<int>(i)),
                               .token = std::getenv("FRAMEWRIGHT_SESSION")};
        const auto outcome = transition(*laboratory, *OrderNumber::parse(given[3 + i % orders]),
                                        (i - 1) / orders, who);
        if (!outcome) {
            std::cerr << who.key << ": " << outcome.error().message << '\n';
            return 1;
        }
        const std::string line =
            std::to_string(i) + (outcome->repeated ? " repeated\n" : " done\n");
        if (write(STDOUT_FILENO, line.data(), line.size()) != static_cast<ssize_t>(line.size()))
            return 3;
    }
    return 0;
}
