#include "domain/production/decide.h"

#include <algorithm>

namespace domain {
namespace {

using Decision = Result<std::vector<Happening>>;

Error refused(const Order& order, std::string why) {
    return {ErrorCode::Refused, "order " + order.number.text() + ": " + std::move(why)};
}

/// "survey.present, clasp.undercut-given (44)": what blocks the order.
std::string blockers(const Revision& revision) {
    const Notation notation = notationOf(revision.prescription);
    std::string list;
    for (const Finding& finding : revision.findings) {
        if (finding.severity == Severity::Caution) continue;
        if (!list.empty()) list += ", ";
        list += finding.rule;
        if (finding.tooth) list += " (" + nameOf(*finding.tooth, notation) + ")";
    }
    return list;
}

std::string joined(const std::vector<std::string>& words) {
    std::string list;
    for (const std::string& word : words) list += (list.empty() ? "" : ", ") + word;
    return list;
}

/// Why no work may go on, or nothing.
std::optional<Error> standstill(const Order& order) {
    if (order.status == OrderStatus::Received)
        return refused(order, "not accepted yet; accept it before work begins");
    if (order.status == OrderStatus::Delivered) return refused(order, "delivered already");
    if (!order.flags.empty())
        return refused(order, "stopped by a question (" + wordsOf(order.flags.front().reason) +
                                  "); record the dentist's answer first");
    if (blocks(order.revision.findings))
        return refused(
            order, "the answered prescription still has questions: " + blockers(order.revision));
    if (const auto cautions = untakenCautions(order); !cautions.empty())
        return refused(order, "the answer brought cautions nobody has taken: " + joined(cautions) +
                                  "; accept them with a reason");
    return {};
}

struct Decide {
    const Order& order;

    Decision operator()(const Receive&) const {
        return refused(order, "this number is taken already");
    }

    Decision operator()(const Accept& command) const {
        const auto cautions = untakenCautions(order);
        if (order.status != OrderStatus::Received && cautions.empty())
            return refused(order, "accepted already");
        if (!order.flags.empty())
            return refused(order, "stopped by a question; record the dentist's answer first");
        if (blocks(order.revision.findings))
            return refused(order,
                           "cannot be accepted while these stand: " + blockers(order.revision) +
                               "; ask the dentist and record the answer");
        if (!cautions.empty() && !command.reason)
            return refused(order, "accepting takes these cautions: " + joined(cautions) +
                                      "; give the reason for taking them");
        const auto route = routeFor(order.prescription());
        if (!route) return refused(order, "no route: appliance or way of making is not given");
        return std::vector<Happening>{
            Accepted{*route, cautions, cautions.empty() ? std::nullopt : command.reason}};
    }

    Decision operator()(const Start& command) const {
        if (auto error = standstill(order)) return *std::move(error);
        const StageStep& due = *currentStep(order);
        const Stage stage = command.stage.value_or(due.stage);
        if (due.status == StageStatus::InHand)
            return refused(order, wordsOf(due.stage) + " is in hand already, by " +
                                      due.person->text() + " since " + due.since->text());
        if (stage != due.stage)
            return refused(
                order, wordsOf(stage) + " cannot start: the stage due is " + wordsOf(due.stage));
        return std::vector<Happening>{StageStarted{stage}};
    }

    Decision operator()(const Finish& command) const {
        if (auto error = standstill(order)) return *std::move(error);
        const StageStep& due = *currentStep(order);
        const Stage stage = command.stage.value_or(due.stage);
        if (due.status != StageStatus::InHand)
            return refused(
                order, wordsOf(stage) + " is not in hand: start " + wordsOf(due.stage) + " first");
        if (stage != due.stage)
            return refused(order, wordsOf(stage) + " is not in hand: the stage in hand is " +
                                      wordsOf(due.stage));
        return std::vector<Happening>{StageDone{stage}};
    }

    Decision operator()(const Flag& command) const {
        if (order.status == OrderStatus::Delivered) return refused(order, "delivered already");
        return std::vector<Happening>{Flagged{command.reason, command.note}};
    }

    Decision operator()(const Answer& command) const {
        if (order.status == OrderStatus::Delivered) return refused(order, "delivered already");
        if (!command.words && !command.revision)
            return refused(order, "an answer needs words, a new prescription, or both");
        if (order.flags.empty() && order.revision.findings.empty())
            return refused(order, "nothing was asked");
        if (order.flags.empty() && !command.revision)
            return refused(order,
                           "the findings are answered by a completed prescription, not by "
                           "words alone");
        if (command.revision) {
            if (command.revision->prescription.arch != order.prescription().arch)
                return refused(order, "the answer is about the other arch: log it as a new order");
            if (order.route && routeFor(command.revision->prescription) != order.route)
                return refused(order, "the answer asks for another way of making than " +
                                          wordsOf(*order.route) + ": log it as a new order");
        }
        return std::vector<Happening>{Answered{command.words, command.revision}};
    }
};

Decision decideWhat(const std::optional<Order>& order, const Command& command) {
    if (order) return std::visit(Decide{*order}, command);
    if (const auto* receive = std::get_if<Receive>(&command))
        return std::vector<Happening>{Received{receive->revision}};
    return Error{ErrorCode::Unusable, "no such order"};
}

}  // namespace

Result<std::vector<Event>> decide(const std::optional<Order>& order, const Command& command,
                                  const Occasion& occasion) {
    auto happenings = decideWhat(order, command);
    if (!happenings) return happenings.error();
    const auto* receive = std::get_if<Receive>(&command);
    std::vector<Event> events;
    std::int64_t version = order ? order->version : 0;
    for (Happening& what : *std::move(happenings))
        events.push_back({.order = order ? order->number : receive->number,
                          .version = ++version,
                          .at = occasion.at,
                          .person = occasion.person,
                          .key = occasion.key,
                          .what = std::move(what)});
    return events;
}

}  // namespace domain
