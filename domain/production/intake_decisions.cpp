#include <algorithm>

#include "domain/production/decisions.h"
#include "domain/rules/rule.h"

namespace domain {
namespace {

using Happenings = std::vector<Happening>;

std::string joined(const std::vector<std::string>& words) {
    std::string list;
    for (const std::string& word : words) list += (list.empty() ? "" : ", ") + word;
    return list;
}

std::optional<Error> closed(const Order& order) {
    if (!isClosed(order)) return {};
    return refused(order, wordsOf(order.status) + " already");
}

RoutePlan planFor(const Workshop& workshop, Route route, const Prescription& prescription) {
    std::vector<RoutePlan> withIt;
    for (const Route extra : routesWithIt(prescription))
        withIt.push_back(workshop.planFor(extra, prescription.arch));
    return joined(workshop.planFor(route, prescription.arch), withIt);
}

/// A stage the prescription asks for that an edited route has no place for.
std::optional<Error> lost(const Deciding& deciding, const RoutePlan& plan) {
    const Prescription& prescription = deciding.order.prescription();
    for (const Route extra : routesWithIt(prescription))
        for (const StagePlan& step :
             deciding.occasion.workshop.planFor(extra, prescription.arch).stages)
            if (plan.find(step.stage) == nullptr)
                return refused(deciding.order, "its route has no place for " + wordsOf(step.stage) +
                                                   ", which comes after " +
                                                   wordsOf(*goesAfter(extra)));
    return {};
}

/// What is at the practice or at another site comes back before anything else is decided.
std::optional<Error> outOfTheHouse(const Order& order) {
    const StageStep* step = currentStep(order);
    // What the dentist wants made again has come back already.
    if (step == nullptr || step->status != StageStatus::InHand || order.remakeDue) return {};
    if (step->away)
        return refused(order, wordsOf(step->stage) + " is at site " + step->madeAt->text() +
                                  "; take it back first");
    if (rowOf(step->stage).kind != StageKind::AtPractice) return {};
    return refused(order, wordsOf(step->stage) + " is at the practice; record its return first");
}

/// Whether an answered prescription is still made the way the order was accepted for.
bool isSameMaking(const Order& order, const Prescription& answered) {
    return routeFor(answered) == order.route &&
           routesWithIt(answered) == routesWithIt(order.prescription());
}

}  // namespace

Error refused(const Order& order, std::string why) {
    return {ErrorCode::Refused, "order " + order.number.text() + ": " + std::move(why)};
}

std::string blockers(const Revision& revision) {
    const Notation notation = notationOf(revision.prescription);
    std::string list;
    for (const Finding& finding : revision.findings) {
        if (!refuses(finding)) continue;
        if (!list.empty()) list += ", ";
        list += finding.rule;
        if (finding.tooth) list += " (" + nameOf(*finding.tooth, notation) + ")";
    }
    return list;
}

/// "; the prescriber may keep as prescribed: clasp.rest", or nothing.
std::string whatMayBeKept(const Revision& revision) {
    std::vector<std::string> rules;
    for (const Finding& finding : revision.findings)
        if (refuses(finding) && mayBeKept(finding) && std::ranges::count(rules, finding.rule) == 0)
            rules.push_back(finding.rule);
    return rules.empty() ? "" : "; the prescriber may keep as prescribed: " + joined(rules);
}

std::optional<Error> standstill(const Order& order) {
    if (order.status == OrderStatus::Received)
        return refused(order, "not accepted yet; accept it before work begins");
    if (auto error = closed(order)) return error;
    if (!order.flags.empty())
        return refused(order, "stopped by a question (" + wordsOf(order.flags.front().reason) +
                                  "); record the dentist's answer first");
    if (blocks(order.revision.findings))
        return refused(
            order, "the answered prescription still has questions: " + blockers(order.revision));
    if (const auto cautions = untakenCautions(order); !cautions.empty())
        return refused(order, "the answer brought cautions nobody has taken: " + joined(cautions) +
                                  "; accept them with a reason");
    if (order.remakeDue)
        return refused(order, "the dentist asked for it to be made again; order the remake");
    return {};
}

Decision decideOn(const Deciding& deciding, const Receive&) {
    return refused(deciding.order, "this number is taken already");
}

Decision decideOn(const Deciding& deciding, const Accept& command) {
    const Order& order = deciding.order;
    if (auto error = closed(order)) return *std::move(error);
    const auto cautions = untakenCautions(order);
    if (order.status != OrderStatus::Received && cautions.empty())
        return refused(order, "accepted already");
    if (!order.flags.empty())
        return refused(order, "stopped by a question; record the dentist's answer first");
    if (blocks(order.revision.findings))
        return refused(order, "cannot be accepted while these stand: " + blockers(order.revision) +
                                  "; ask the dentist and record the answer" +
                                  whatMayBeKept(order.revision));
    if (!cautions.empty() && !command.reason)
        return refused(order, "accepting takes these cautions: " + joined(cautions) +
                                  "; give the reason for taking them");
    const auto route = routeFor(order.prescription());
    if (!route) return refused(order, "no route: appliance or way of making is not given");
    Happenings happenings{
        Accepted{*route, cautions, cautions.empty() ? std::nullopt : command.reason}};
    if (order.route) return happenings;
    const RoutePlan plan = planFor(deciding.occasion.workshop, *route, order.prescription());
    if (auto error = lost(deciding, plan)) return *std::move(error);
    happenings.emplace_back(Routed{plan});
    return happenings;
}

Decision decideOn(const Deciding& deciding, const Flag& command) {
    if (auto error = closed(deciding.order)) return *std::move(error);
    return Happenings{Flagged{command.reason, command.note}};
}

Decision decideOn(const Deciding& deciding, const Answer& command) {
    const Order& order = deciding.order;
    if (auto error = closed(order)) return *std::move(error);
    if (!command.words && !command.revision)
        return refused(order, "an answer needs words, a new prescription, or both");
    if (order.flags.empty() && order.revision.findings.empty())
        return refused(order, "nothing was asked");
    if (order.flags.empty() && !command.revision)
        return refused(order,
                       "the findings are answered by a completed prescription, or kept as "
                       "prescribed one by one, not by words alone");
    if (command.revision) {
        const Prescription& answered = command.revision->prescription;
        if (answered.arch != order.prescription().arch)
            return refused(order, "the answer is about the other arch: log it as a new order");
        if (order.route && !isSameMaking(order, answered))
            return refused(order, "the answer asks for another way of making than " +
                                      wordsOf(*order.route) + ": log it as a new order");
        if (auto error = outOfTheHouse(order)) return *std::move(error);
    }
    if (!command.revision) return Happenings{Answered{command.words, {}}};
    Revision revision = *command.revision;
    auto findings = keptAsPrescribed(
        stillKept(std::move(revision.findings), order.revision.findings), command.keeps,
        deciding.occasion.person, deciding.occasion.at.day(), notationOf(revision.prescription));
    if (!findings) return refused(order, findings.error().message);
    revision.findings = *std::move(findings);
    return Happenings{Answered{command.words, std::move(revision)}};
}

Decision decideOn(const Deciding& deciding, const JoinCase& command) {
    const Order& order = deciding.order;
    if (auto error = closed(order)) return *std::move(error);
    if (command.leader == order.number || order.caseLeader == command.leader)
        return refused(order, "it belongs to that case already");
    if (order.caseLeader)
        return refused(order, "it belongs to the case of " + order.caseLeader->text());
    const Parties& own = order.revision.parties;
    if (command.parties.patient != own.patient || command.parties.prescriber != own.prescriber)
        return refused(order, "order " + command.leader.text() +
                                  " is for another patient; a case is of one patient");
    if (!command.findings) return Happenings{CaseJoined{command.leader, {}}};
    return Happenings{
        CaseJoined{command.leader, stillKept(*command.findings, order.revision.findings)}};
}

Decision decideOn(const Deciding& deciding, const Withdraw& command) {
    const Order& order = deciding.order;
    if (auto error = closed(order)) return *std::move(error);
    if (!command.reason) return refused(order, "the reason it is withdrawn for was expected");
    return Happenings{Withdrawn{command.reason}};
}

Decision decideOn(const Deciding& deciding, const OrderRemake& command) {
    const Order& order = deciding.order;
    if (order.status == OrderStatus::Received)
        return refused(order, "not accepted yet; there is nothing to make again");
    if (order.replacedBy)
        return refused(order, "it is made again already, as " + order.replacedBy->text());
    if (order.status == OrderStatus::Withdrawn) return refused(order, "withdrawn already");
    if (order.purged) return refused(order, "purged: nothing is left to make again from");
    if (auto error = outOfTheHouse(order)) return *std::move(error);
    if (command.fault && std::ranges::count(order.steps, *command.fault, &StageStep::stage) == 0)
        return refused(order, wordsOf(*command.fault) + " is not a stage of its route");
    return Happenings{
        RemakeOrdered{command.replacement, command.reason, command.fault, command.note}};
}

Decision decideOn(const Deciding& deciding, const Purge& command) {
    const Order& order = deciding.order;
    if (order.purged) return refused(order, "purged already");
    if (!isClosed(order)) return refused(order, "work on it goes on: there is nothing to purge");
    // What was never delivered has no term of its own; it is kept as if delivered when it ended.
    const Date from = deliveredOn(order).value_or(order.changedAt.day());
    if (auto kept = mayPurge(from, command.terms, deciding.occasion.at.day()); !kept)
        return refused(order, kept.error().message);
    return Happenings{Purged{}};
}

}  // namespace domain
