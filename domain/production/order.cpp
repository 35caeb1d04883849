#include "domain/production/order.h"

#include <algorithm>

namespace domain {
namespace {

std::size_t questions(const Order& order) {
    return static_cast<std::size_t>(std::ranges::count_if(order.revision.findings, refuses));
}

}  // namespace

const StageStep* currentStep(const Order& order) {
    const auto step = std::ranges::find_if(
        order.steps, [](const StageStep& each) { return each.status != StageStatus::Done; });
    return step == order.steps.end() ? nullptr : &*step;
}

bool isClosed(const Order& order) noexcept {
    return order.status == OrderStatus::Delivered || order.status == OrderStatus::Remade ||
           order.status == OrderStatus::Withdrawn;
}

std::optional<Date> deliveredOn(const Order& order) {
    if (order.status != OrderStatus::Delivered || !order.steps.back().since) return {};
    return order.steps.back().since->day();
}

StagePlan planOf(const Order& order, Stage stage) {
    const auto in = [&](const RoutePlan& plan) {
        const StagePlan* step = plan.find(stage);
        return step != nullptr ? *step : StagePlan{.stage = stage};
    };
    return order.plan ? in(*order.plan) : in(shippedPlan(*order.route, order.prescription().arch));
}

std::vector<StageRecord> recordsOf(const Order& order, Stage stage) {
    std::vector<StageRecord> records;
    const auto step = std::ranges::find(order.steps, stage, &StageStep::stage);
    if (step == order.steps.end()) return records;
    for (const KeptRecord& kept : order.records)
        if (kept.stage == stage && kept.attempt == step->attempt) records.push_back(kept.record);
    return records;
}

std::vector<std::string> untakenCautions(const Order& order) {
    std::vector<std::string> rules;
    for (const Finding& finding : order.revision.findings)
        if (finding.severity == Severity::Caution &&
            std::ranges::count(order.cautionsTaken, finding.rule) == 0 &&
            std::ranges::count(rules, finding.rule) == 0)
            rules.push_back(finding.rule);
    return rules;
}

WaitsFor waitsFor(const Order& order) {
    if (isClosed(order)) return WaitsFor::Nobody;
    if (!order.flags.empty() || blocks(order.revision.findings)) return WaitsFor::Dentist;
    const StageStep* step = currentStep(order);
    if (step == nullptr || order.remakeDue || !untakenCautions(order).empty())
        return WaitsFor::Manager;
    if (step->away) return WaitsFor::Site;
    const bool atPractice =
        step->status == StageStatus::InHand && rowOf(step->stage).kind == StageKind::AtPractice;
    return atPractice ? WaitsFor::Dentist : WaitsFor::Bench;
}

std::int64_t spentFor(const Order& order, WaitsFor whom, Instant now) {
    std::int64_t spent = order.waiting.spent[static_cast<std::size_t>(whom)];
    if (order.waiting.whom == whom)
        spent += std::max<std::int64_t>(0, now.microseconds() - order.changedAt.microseconds());
    return spent;
}

std::int64_t laboratoryTime(const Order& order, Instant now) {
    return spentFor(order, WaitsFor::Manager, now) + spentFor(order, WaitsFor::Bench, now);
}

std::string holdUp(const Order& order) {
    if (isClosed(order)) return wordsOf(order.status);
    if (const std::size_t asked = questions(order) + order.flags.size(); asked > 0)
        return counted(asked, "question");
    const StageStep* step = currentStep(order);
    const std::size_t cautions = untakenCautions(order).size();
    if (cautions > 0) return "to accept, " + counted(cautions, "caution");
    if (step == nullptr) return "to accept";
    const std::string name = wordsOf(step->stage);
    if (order.remakeDue) return name + ": to be made again";
    if (step->away) return name + ": at site " + step->madeAt->text();
    const bool again = step->attempt > 1;
    if (step->status == StageStatus::ToDo) return name + (again ? ": to do again" : ": to do");
    return rowOf(step->stage).kind == StageKind::AtPractice ? name + ": at the practice"
                                                            : name + ": in hand";
}

std::vector<PersonCode> makersOf(const Order& order) {
    std::vector<PersonCode> makers;
    for (const StageStep& step : order.steps) {
        if (rowOf(step.stage).makes)
            makers.insert(makers.end(), step.hands.begin(), step.hands.end());
    }
    return makers;
}

}  // namespace domain
