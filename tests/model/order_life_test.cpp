// Random lives of an order, legal and illegal steps mixed, against a small model of it.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <iostream>

#include "domain/production/evolve.h"
#include "storage/event_codec.h"
#include "tests/model/order_model.h"

namespace model {

/// For the report of a life that failed.
void showValue(const Move& move, std::ostream& out) {
    out << "{" << move.kind << ", " << move.variant << ", " << move.who << ", " << move.minutes
        << "}";
}

}  // namespace model

namespace {

using namespace domain;
using model::Attempt;
using model::Model;
using model::Move;

/// How often each edge of the workflow was taken.
struct Taken {
    std::map<std::string, int> allowed{};
    std::map<std::string, int> refused{};
    std::map<OrderStatus, int> ended{};
    std::int64_t commands{};
    std::int64_t events{};
};

rc::Gen<Move> anyMove() {
    return rc::gen::map(rc::gen::tuple(rc::gen::inRange(0, 30), rc::gen::inRange(0, 360),
                                       rc::gen::inRange(0, 6), rc::gen::inRange(-400, 1200)),
                        [](const std::tuple<int, int, int, int>& four) {
                            return Move{std::get<0>(four), std::get<1>(four), std::get<2>(four),
                                        std::get<3>(four)};
                        });
}

/// An order lived twice: by the domain, its events through bytes, and by the model.
struct Life {
    support::Bench bench{};
    Model model{};
    std::vector<Event> kept{};  ///< as they were read back from their bytes
    Taken& taken;

    explicit Life(Taken& counts) : taken{counts} {
        for (auto& [code, lot] : bench.workshop.lots) {
            // Little enough to run out within one life.
            lot.lot.amount = lot.lot.kind == LotKind::Wire ? 4'000 : 400;
            model.left[lot.lot.kind] = lot.lot.amount;
        }
    }

    void step(const Move& move) {
        const Attempt attempt = attemptOf(move, model, bench);
        give(move, attempt);
        // The same once more, as from a button pressed twice.
        if (move.variant % 17 == 0) give(move, attemptOf(move, model, bench));
        if (move.variant % 23 == 0) reload();
    }

    void give(const Move& move, const Attempt& attempt) {
        const std::int64_t before = bench.minutes;
        bench.minutes += move.minutes + attempt.daysLater * 24 * 60;
        bench.person = attempt.person;
        const auto events = bench.give(attempt.command);
        if (attempt.daysLater > 0) bench.minutes = before;
        if (bool{events} != attempt.allowed)
            RC_FAIL(attempt.name + (events ? ": was taken" : ": " + events.error().message));
        ++taken.commands;
        ++(events ? taken.allowed : taken.refused)[attempt.name];
        if (!events) return;
        take(*events, attempt);
    }

    void take(const std::vector<Event>& events, const Attempt& attempt) {
        RC_ASSERT(std::ssize(events) == attempt.events);
        taken.events += std::ssize(events);
        attempt.happens(model, attempt);
        model.version += static_cast<int>(events.size());
        if (std::holds_alternative<Receive>(attempt.command))
            model.version = static_cast<int>(events.size());
        model.settle();
        for (const Event& event : events) {
            const auto read = storage::decodeOrderEvent(storage::encodeEvent(event));
            RC_ASSERT(bool{read});
            RC_ASSERT(*read == event);
            kept.push_back(*read);
        }
        compare();
    }

    /// The order as it is found again when the program starts anew.
    void reload() {
        if (kept.empty()) return;
        std::optional<Order> again;
        for (const Event& event : kept) again = evolve(std::move(again), event);
        RC_ASSERT(again == bench.order);
        bench.order = again;
    }

    void compare() const {
        const Order& order = *bench.order;
        RC_ASSERT(order.version == model.version);
        RC_ASSERT(order.status == model.facts.status);
        RC_ASSERT(std::ssize(order.flags) == model.questions);
        RC_ASSERT(std::ssize(order.records) == model.records);
        RC_ASSERT(order.remakeDue == model.facts.remakeDue);
        RC_ASSERT(order.purged == model.facts.purged);
        RC_ASSERT(order.replacedBy.has_value() == model.facts.replaced);
        RC_ASSERT(order.caseLeader.has_value() == model.joined);
        RC_ASSERT(order.steps.size() == model.stages.size());
        RC_ASSERT(std::ranges::equal(order.steps, model.stages, &Life::isSame));
        for (const auto& [code, lot] : bench.workshop.lots) {
            RC_ASSERT(lot.left() == model.left.at(lot.lot.kind));
            RC_ASSERT(lot.left() >= 0);
        }
        RC_ASSERT(std::ranges::all_of(order.waiting.spent, [](auto spent) { return spent >= 0; }));
        if (order.status == OrderStatus::Delivered) RC_ASSERT(leftProperly(order));
    }

    static bool isSame(const StageStep& step, const model::ModelStage& stage) {
        return step.stage == stage.stage && step.attempt == stage.attempt &&
               static_cast<int>(step.status) == static_cast<int>(stage.progress);
    }

    /// Disinfected, with its statement, and inspected by somebody who did not make it.
    bool leftProperly(const Order& order) const {
        return newest<Disinfected>(order, Stage::Delivery) &&
               newest<StatementIssued>(order, Stage::Delivery) && !model.inspectedBy.empty() &&
               !model.isMaker(model.inspectedBy);
    }
};

void expectEveryEdge(const std::set<std::string>& edges, const std::map<std::string, int>& taken,
                     const std::string& how) {
    for (const std::string& edge : edges) {
        const auto found = taken.find(edge);
        EXPECT_NE(found, taken.end()) << edge << ", never " << how;
    }
    for (const auto& [edge, count] : taken) {
        EXPECT_TRUE(edges.contains(edge)) << edge << " was " << how;
        std::cout << "  " << edge << ", " << how << ": " << count << '\n';
    }
}

TEST(AnOrdersLife, AgreesWithTheModelWhateverIsTried) {
    Taken taken;
    const bool agreed = rc::check("an order's life agrees with the model", [&] {
        const auto moves = *rc::gen::container<std::vector<Move>>(anyMove());
        Life life{taken};
        for (const Move& move : moves) life.step(move);
        life.reload();
        if (life.bench.order) ++taken.ended[life.bench.order->status];
    });
    EXPECT_TRUE(agreed);
    std::cout << taken.commands << " commands, " << taken.events << " events\n";
    for (const auto& [status, count] : taken.ended)
        std::cout << "  ended " << codeOf(status) << ": " << count << '\n';
    const auto edges = model::everyEdge();
    expectEveryEdge(edges.allowed, taken.allowed, "allowed");
    expectEveryEdge(edges.refused, taken.refused, "refused");
    for (const auto& status : enumCodes<OrderStatus>)
        EXPECT_GT(taken.ended[status.value], 0) << status.word;
}

}  // namespace
