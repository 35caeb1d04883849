#include "domain/production/evolve.h"

#include <algorithm>
#include <cassert>

namespace domain {
namespace {

void lay(Order& order, Route route) {
    order.route = route;
    order.steps.clear();
    for (const Stage stage : stagesOf(route)) order.steps.push_back({.stage = stage});
}

void mark(Order& order, Stage stage, StageStatus status, const Event& event) {
    for (StageStep& step : order.steps)
        if (step.stage == stage) step = {stage, status, event.person, event.at};
}

void undoFrom(Order& order, Stage first) {
    const auto from = std::ranges::find(order.steps, first, &StageStep::stage);
    for (auto step = from; step != order.steps.end(); ++step) *step = {.stage = step->stage};
}

struct Change {
    Order& order;
    const Event& event;

    void operator()(const Received& happened) const {
        order.revision = happened.revision;
        order.receivedAt = event.at;
    }
    void operator()(const Accepted& happened) const {
        if (!order.route) lay(order, happened.route);
        order.status = OrderStatus::InWork;
        order.cautionsTaken.insert(order.cautionsTaken.end(), happened.cautions.begin(),
                                   happened.cautions.end());
        if (happened.reason) order.cautionReasons.push_back(*happened.reason);
        order.acceptedBy = event.person;
    }
    void operator()(const StageStarted& happened) const {
        mark(order, happened.stage, StageStatus::InHand, event);
    }
    void operator()(const StageDone& happened) const {
        mark(order, happened.stage, StageStatus::Done, event);
        if (happened.stage == Stage::Delivery) order.status = OrderStatus::Delivered;
    }
    void operator()(const Flagged& happened) const {
        order.flags.push_back({happened.reason, happened.note, event.person, event.at});
    }
    void operator()(const Answered& happened) const {
        order.flags.clear();
        if (!happened.revision) return;
        const auto undone = firstUndone(order.prescription(), happened.revision->prescription);
        if (undone) undoFrom(order, *undone);
        order.revision = *happened.revision;
        ++order.revisionNumber;
    }
};

}  // namespace

Order evolve(std::optional<Order> order, const Event& event) {
    assert(order || std::holds_alternative<Received>(event.what));
    Order next = order ? *std::move(order) : Order{.number = event.order};
    std::visit(Change{next, event}, event.what);
    next.version = event.version;
    next.changedAt = event.at;
    return next;
}

std::optional<Stage> firstUndone(const Prescription& before, const Prescription& after) {
    // What only the set-up of the teeth depends on; everything else may change the framework.
    Prescription compared = before;
    compared.base = after.base;
    compared.teeth = after.teeth;
    compared.shades = after.shades;
    compared.occlusion = after.occlusion;
    const bool teethChanged = compared != before;
    // What changes the paper and no work at all.
    compared.identity = after.identity;
    compared.issued = after.issued;
    compared.needed = after.needed;
    compared.signature = after.signature;
    compared.enclosures = after.enclosures;
    compared.statedClass = after.statedClass;
    compared.statedSupport = after.statedSupport;
    if (compared != after) return Stage::Survey;
    return teethChanged ? std::optional{Stage::ToothSetUp} : std::nullopt;
}

}  // namespace domain
