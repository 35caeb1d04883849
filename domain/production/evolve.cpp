#include "domain/production/evolve.h"

#include <algorithm>
#include <cassert>

namespace domain {
namespace {

void lay(Order& order, const RoutePlan& plan) {
    order.plan = plan;
    order.steps.clear();
    for (const StagePlan& stage : plan.stages) order.steps.push_back({.stage = stage.stage});
}

StageStep& stepOf(Order& order, Stage stage) {
    return *std::ranges::find(order.steps, stage, &StageStep::stage);
}

void note(StageStep& step, const PersonCode& person) {
    if (std::ranges::count(step.hands, person) == 0) step.hands.push_back(person);
}

void mark(Order& order, Stage stage, StageStatus status, const Event& event) {
    StageStep& step = stepOf(order, stage);
    step.status = status;
    step.person = event.person;
    step.since = event.at;
}

/// Work begins again here; a stage nobody had begun stays as it is. What goes to the practice is
/// recorded before it leaves, and so has begun.
void undo(const Order& order, StageStep& step) {
    const bool isRecorded = std::ranges::any_of(order.records, [&](const KeptRecord& kept) {
        return kept.stage == step.stage && kept.attempt == step.attempt;
    });
    if (step.status == StageStatus::ToDo && !isRecorded) return;
    step = {.stage = step.stage, .attempt = step.attempt + 1};
}

void undoFrom(Order& order, Stage first) {
    const auto from = std::ranges::find(order.steps, first, &StageStep::stage);
    for (auto step = from; step != order.steps.end(); ++step) undo(order, *step);
}

/// Where the work a new prescription undoes begins; on a route without that stage, after receipt.
Stage beginningIn(const Order& order, Stage stage) {
    const bool there = std::ranges::count(order.steps, stage, &StageStep::stage) > 0;
    return there ? stage : order.steps[1].stage;
}

struct Change {
    Order& order;
    const Event& event;

    void operator()(const Received& happened) const {
        order.revision = happened.revision;
        order.receivedAt = event.at;
    }
    void operator()(const Accepted& happened) const {
        if (!order.route) lay(order, shippedPlan(happened.route, order.prescription().arch));
        order.route = happened.route;
        order.status = OrderStatus::InWork;
        order.cautionsTaken.insert(order.cautionsTaken.end(), happened.cautions.begin(),
                                   happened.cautions.end());
        if (happened.reason) order.cautionReasons.push_back(*happened.reason);
        order.acceptedBy = event.person;
    }
    void operator()(const StageStarted& happened) const {
        mark(order, happened.stage, StageStatus::InHand, event);
        note(stepOf(order, happened.stage), event.person);
    }
    void operator()(const StageDone& happened) const {
        mark(order, happened.stage, StageStatus::Done, event);
        note(stepOf(order, happened.stage), event.person);
        if (happened.stage == Stage::Delivery) order.status = OrderStatus::Delivered;
    }
    void operator()(const Flagged& happened) const {
        order.flags.push_back({happened.reason, happened.note, event.person, event.at});
    }
    void operator()(const Answered& happened) const {
        order.flags.clear();
        if (!happened.revision) return;
        const auto undone = firstUndone(order.prescription(), happened.revision->prescription);
        if (undone && order.steps.size() > 1) undoFrom(order, beginningIn(order, *undone));
        order.revision = *happened.revision;
        ++order.revisionNumber;
    }
    void operator()(const Routed& happened) const { lay(order, happened.plan); }
    void operator()(const Recorded& happened) const {
        StageStep& step = stepOf(order, happened.stage);
        note(step, event.person);
        for (const StageRecord& record : happened.records)
            order.records.push_back({happened.stage, step.attempt, event.person, event.at, record});
    }
    void operator()(const Returned& happened) const {
        mark(order, happened.stage, StageStatus::Done, event);
        if (happened.verdict == ReturnVerdict::Remake) {
            stepOf(order, happened.stage).status = StageStatus::InHand;
            order.remakeDue = true;
        }
        if (happened.backTo) undoFrom(order, *happened.backTo);
    }
    void operator()(const Redone& happened) const { undoFrom(order, happened.from); }
    void operator()(const RemakeOrdered& happened) const {
        if (order.status != OrderStatus::Delivered) order.status = OrderStatus::Remade;
        order.remakeDue = false;
        order.replacedBy = happened.replacement;
    }
    void operator()(const RemakeBegun& happened) const { order.replaces = happened.first; }
    void operator()(const CaseJoined& happened) const {
        order.caseLeader = happened.leader;
        if (happened.findings) order.revision.findings = *happened.findings;
    }
    void operator()(const WorkSent& happened) const {
        mark(order, happened.stage, StageStatus::InHand, event);
        stepOf(order, happened.stage).madeAt = happened.site;
        stepOf(order, happened.stage).away = true;
    }
    void operator()(const WorkBack& happened) const {
        StageStep& step = stepOf(order, happened.stage);
        step.away = false;
        if (!happened.passed) undo(order, step);
    }
    void operator()(const Withdrawn&) const { order.status = OrderStatus::Withdrawn; }
    void operator()(const Purged&) const { order.purged = true; }
};

/// Time goes to the account of whom the order waited for until this event.
void keepTime(Order& next, Instant before, const Event& event) {
    auto& [whom, since, spent] = next.waiting;
    spent[static_cast<std::size_t>(whom)] +=
        std::max<std::int64_t>(0, event.at.microseconds() - before.microseconds());
    const WaitsFor now = waitsFor(next);
    if (now != whom) since = event.at;
    whom = now;
}

}  // namespace

Order evolve(std::optional<Order> order, const Event& event) {
    assert(order || std::holds_alternative<Received>(event.what));
    Order next =
        order ? *std::move(order)
              : Order{.number = event.order, .changedAt = event.at, .waiting = {.since = event.at}};
    const Instant before = next.changedAt;
    std::visit(Change{next, event}, event.what);
    keepTime(next, before, event);
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
