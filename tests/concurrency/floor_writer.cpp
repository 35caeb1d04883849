// One of several processes at work on the same orders, each deciding from what it read:
//   floor_writer FOLDER HISTORY SERIES SECONDS SEED ORDER...
// The session of its person comes in FRAMEWRIGHT_SESSION. It writes what it tried and what came of
// it, a line each, to the file HISTORY; see history.h.
#include <QCoreApplication>
#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <random>

#include "apps/actions/order_view.h"
#include "apps/actions/orders.h"
#include "apps/actions/system_clock.h"
#include "apps/actions/work.h"
#include "tests/concurrency/history.h"
#include "tests/support/numbered_key.h"
#include "tests/support/working_laboratory.h"

namespace {

using actions::Outcome;
using concurrency::Deed;
using domain::Order;
using domain::OrderNumber;
using domain::Result;
using domain::Stage;
using domain::StageStatus;

/// What somebody decides to do with an order as they see it, at the stage of blocking out.
Deed decided(const Order& order, bool onwards) {
    const domain::StageStep& step = *currentStep(order);
    if (step.stage != Stage::BlockOut) return Deed::Redo;
    if (step.status == StageStatus::ToDo) return Deed::Start;
    if (!onwards) return Deed::Count;
    const bool ticked =
        std::ranges::any_of(recordsOf(order, Stage::BlockOut), [](const domain::StageRecord& each) {
            return std::holds_alternative<domain::Ticked>(each);
        });
    return ticked ? Deed::Finish : Deed::Tick;
}

Result<Outcome> carriedOut(const actions::Laboratory& laboratory, const Order& order, Deed deed,
                           const actions::Who& who) {
    const OrderNumber& number = order.number;
    switch (deed) {
        case Deed::Start:
            return actions::start(laboratory, {number}, {}, who);
        case Deed::Finish:
            return actions::finish(laboratory, {number}, {}, who);
        case Deed::Redo:
            return actions::redo(laboratory, number, domain::RedoReason::PoorFit, Stage::BlockOut,
                                 {}, {}, who);
        case Deed::Tick: {
            std::vector<actions::GivenRecord> ticks;
            for (const std::string& item : planOf(order, Stage::BlockOut).checklist)
                ticks.push_back({domain::Ticked{item}, {}});
            return actions::record(laboratory, number, {}, ticks, who);
        }
        case Deed::Count:
            return actions::record(
                laboratory, number, {},
                {{domain::BenchValue{concurrency::kCount,
                                     std::to_string(concurrency::countIn(order) + 1)},
                  {}}},
                who);
    }
    std::abort();
}

std::string resultOf(const Result<Outcome>& outcome) {
    if (outcome) return "ok " + std::to_string(outcome->order.version);
    return outcome.error().code == domain::ErrorCode::Unavailable ? "unknown 0" : "fail 0";
}

}  // namespace

int main(int count, char** words) {
    const QCoreApplication application{count, words};
    const std::vector<std::string> given(words + 1, words + count);
    if (given.size() < 6) return 2;
    const actions::SystemClock clock;
    const auto laboratory = actions::Laboratory::open(given[0], clock, storage::HashCost::Light);
    if (!laboratory) {
        std::cerr << laboratory.error().message << '\n';
        return 3;
    }
    std::ofstream history{given[1]};
    actions::Who who{.person = *domain::PersonCode::parse(support::kMaker),
                     .token = std::getenv("FRAMEWRIGHT_SESSION")};
    std::mt19937 random{static_cast<std::mt19937::result_type>(std::stoul(given[4]))};
    const auto end = std::chrono::steady_clock::now() + std::chrono::seconds{std::stoi(given[3])};
    for (int i = 0; std::chrono::steady_clock::now() < end; ++i) {
        const auto number = *OrderNumber::parse(given[5 + random() % (given.size() - 5)]);
        const auto view = actions::order(*laboratory, number);
        if (!view) continue;
        const Deed deed = decided(view->order, random() % 8 == 0);
        who.key = support::numberedKey(i, std::stoi(given[2]));
        who.seen = view->order.version;
        history << "invoke " << who.key << ' ' << number.text() << ' ' << domain::codeOf(deed)
                << ' ' << view->order.version << '\n'
                << std::flush;
        const auto outcome = carriedOut(*laboratory, view->order, deed, who);
        history << "return " << who.key << ' ' << resultOf(outcome) << '\n' << std::flush;
        if (!outcome && outcome.error().code == domain::ErrorCode::Unavailable)
            std::cerr << outcome.error().message << '\n';
    }
    return 0;
}
