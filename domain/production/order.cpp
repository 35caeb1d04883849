#include "domain/production/order.h"

#include <algorithm>

namespace domain {
namespace {

std::string counted(std::size_t count, std::string_view thing) {
    return std::to_string(count) + ' ' + std::string{thing} + (count == 1 ? "" : "s");
}

std::size_t questions(const Order& order) {
    return static_cast<std::size_t>(std::ranges::count_if(
        order.revision.findings,
        [](const Finding& finding) { return finding.severity != Severity::Caution; }));
}

}  // namespace

const StageStep* currentStep(const Order& order) {
    const auto step = std::ranges::find_if(
        order.steps, [](const StageStep& each) { return each.status != StageStatus::Done; });
    return step == order.steps.end() ? nullptr : &*step;
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
    if (order.status == OrderStatus::Delivered) return WaitsFor::Nobody;
    if (!order.flags.empty() || blocks(order.revision.findings)) return WaitsFor::Dentist;
    const StageStep* step = currentStep(order);
    if (step == nullptr || !untakenCautions(order).empty()) return WaitsFor::Manager;
    const bool away =
        step->status == StageStatus::InHand && rowOf(step->stage).kind == StageKind::AtPractice;
    return away ? WaitsFor::Dentist : WaitsFor::Bench;
}

std::string holdUp(const Order& order) {
    if (order.status == OrderStatus::Delivered) return "delivered";
    if (const std::size_t asked = questions(order) + order.flags.size(); asked > 0)
        return counted(asked, "question");
    const StageStep* step = currentStep(order);
    const std::size_t cautions = untakenCautions(order).size();
    if (cautions > 0) return "to accept, " + counted(cautions, "caution");
    if (step == nullptr) return "to accept";
    const std::string name = wordsOf(step->stage);
    if (step->status == StageStatus::ToDo) return name + ": to do";
    return rowOf(step->stage).kind == StageKind::AtPractice ? name + ": at the practice"
                                                            : name + ": in hand";
}

}  // namespace domain
