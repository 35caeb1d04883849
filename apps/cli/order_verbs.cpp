#include "apps/cli/order_verbs.h"

#include <algorithm>
#include <iostream>
#include <nlohmann/json.hpp>

#include "apps/actions/papers.h"
#include "apps/actions/verification.h"
#include "apps/cli/lab_option.h"
#include "apps/cli/order_call.h"
#include "apps/cli/output.h"
#include "apps/cli/typed_words.h"
#include "apps/cli/who_option.h"

namespace cli {
namespace {

using actions::Laboratory;
using actions::Who;
using domain::OrderNumber;
using domain::Result;

std::string dayOrDash(const std::optional<domain::Date>& day) { return day ? day->text() : "-"; }

/// "waits for dentist since ...; laboratory 2 d 3 h, dentist 4 h", and what it belongs to.
std::string waits(const actions::OrderView& view) {
    const domain::Order& order = view.order;
    const domain::Instant now = machineClock().now();
    std::string text = "waits for " + wordsOf(waitsFor(order)) + " since " +
                       order.waiting.since.text() + "; laboratory " +
                       spanText(laboratoryTime(order, now)) + ", dentist " +
                       spanText(spentFor(order, domain::WaitsFor::Dentist, now)) + '\n';
    if (order.replaces) text += "makes " + order.replaces->text() + " again\n";
    if (order.replacedBy) text += "is made again as " + order.replacedBy->text() + '\n';
    for (const OrderNumber& companion : view.companions)
        text += "travels with " + companion.text() + '\n';
    return text;
}

std::string shown(const actions::OrderView& view) {
    const domain::Order& order = view.order;
    const auto& identity = view.prescription.identity;
    std::string text = "order " + order.number.text() + "  revision " +
                       std::to_string(order.revisionNumber) + "  " + holdUp(order) + '\n';
    text += "patient " + identity.patientReference.value_or(order.revision.parties.patient) +
            "  prescriber " + identity.prescriberName.value_or(order.revision.parties.prescriber) +
            "  needed " + dayOrDash(view.prescription.needed) + '\n' + waits(view) + '\n';
    text +=
        report({view.prescription, classify(order.prescription()), {}, order.revision.findings});
    std::vector<std::vector<std::string>> steps;
    for (const domain::StageStep& step : order.steps)
        steps.push_back({std::string{codeOf(step.stage)}, wordsOf(step.status),
                         step.person ? step.person->text() : "",
                         step.since ? step.since->text() : "",
                         step.attempt > 1 ? std::to_string(step.attempt) : "",
                         step.madeAt ? step.madeAt->text() : ""});
    if (!steps.empty())
        text += '\n' + table({"stage", "is", "by", "since", "attempt", "site"}, steps);
    std::vector<std::vector<std::string>> history;
    for (const actions::HistoryLine& line : view.history)
        history.push_back({line.event.at.text(), line.event.person.text(), line.says, line.words});
    return text + '\n' + table({"when", "who", "what", "words"}, history);
}

/// " 3 h": how long it has waited for whom it waits for; nothing where it waits for nobody.
std::string waited(const actions::FloorLine& line) {
    if (line.waitsFor == domain::WaitsFor::Nobody) return {};
    const std::int64_t span =
        machineClock().now().microseconds() - line.waitingSince.microseconds();
    return ' ' + spanText(std::max<std::int64_t>(span, 0));
}

}  // namespace

Result<Exit> log(const Call& call) {
    const auto who = whoOf(call);
    if (!who) return who.error();
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    const auto outcome = actions::log(*laboratory, call.arguments().front(), *who);
    if (!outcome) return outcome.error();
    return tell(call, *outcome);
}

Result<Exit> accept(const Call& call) {
    return actOnOrder(call,
                      [&](const Laboratory& laboratory, const OrderNumber& number, const Who& who) {
                          return actions::accept(laboratory, number, call.option("reason"), who);
                      });
}

Result<Exit> flag(const Call& call) {
    const auto reason = wordOf<domain::FlagReason>(call.arguments()[1], "reason");
    if (!reason) return reason.error();
    return actOnOrder(
        call, [&](const Laboratory& laboratory, const OrderNumber& number, const Who& who) {
            return actions::flag(laboratory, number, *reason, call.option("note"), who);
        });
}

Result<Exit> answer(const Call& call) {
    std::optional<domain::Prescription> prescription;
    if (const auto file = call.option("file")) {
        auto read = actions::readPrescription(*file);
        if (!read) return read.error();
        prescription = *std::move(read);
    }
    return actOnOrder(
        call, [&](const Laboratory& laboratory, const OrderNumber& number, const Who& who) {
            return actions::answer(laboratory, number, call.option("words"), prescription, who);
        });
}

Result<Exit> order(const Call& call) {
    const auto number = numberOf(call.arguments().front());
    if (!number) return number.error();
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    const auto view = actions::order(*laboratory, *number);
    if (!view) return view.error();
    if (call.has("json"))
        print("order-1", json(*view));
    else
        std::cout << shown(*view);
    return Exit::Done;
}

Result<Exit> floor(const Call& call) {
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    const auto lines = actions::floor(*laboratory);
    if (!lines) return lines.error();
    if (call.has("json")) {
        print("floor-1", json(*lines));
        return Exit::Done;
    }
    std::vector<std::vector<std::string>> rows;
    for (const actions::FloorLine& line : *lines)
        rows.push_back({line.number.text(), dayOrDash(line.due), line.description, line.holdUp,
                        wordsOf(line.waitsFor) + waited(line), spanText(line.laboratoryTime),
                        line.patient, line.prescriber});
    std::cout << (rows.empty() ? "no orders yet; log a prescription to begin\n"
                               : table({"order", "needed", "what", "held by", "waits for",
                                        "in our hands", "patient", "prescriber"},
                                       rows));
    return Exit::Done;
}

Result<Exit> print(const Call& call) {
    const auto number = numberOf(call.arguments().front());
    if (!number) return number.error();
    const auto paper = wordOf<actions::Paper>(call.arguments()[1], "paper");
    if (!paper) return paper.error();
    const auto who = whoOf(call);
    if (!who) return who.error();
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    const auto file = actions::print(*laboratory, *number, *paper,
                                     call.option("to").value_or(std::string{}), *who);
    if (!file) return file.error();
    if (call.has("json"))
        print("paper-1", Json{{"file", file->string()}});
    else
        std::cout << file->string() << '\n';
    return Exit::Done;
}

Result<Exit> verify(const Call& call) {
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    const auto verification = actions::verify(*laboratory);
    if (!verification) return verification.error();
    if (call.has("json")) {
        print("verification-1", json(*verification));
    } else {
        if (!verification->head.empty())
            std::cout << verification->entries << " entries, " << verification->orders
                      << " orders, head " << verification->head << '\n';
        for (const std::string& problem : verification->problems) std::cout << problem << '\n';
        std::cout << (verification->problems.empty() ? "the records are whole\n"
                                                     : "THE RECORDS WERE CHANGED\n");
    }
    return verification->problems.empty() ? Exit::Done : Exit::Storage;
}

Result<Exit> letterhead(const Call& call) {
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    auto current = actions::letterhead(*laboratory);
    if (!current) return current.error();
    actions::Letterhead head = *current;
    head.name = call.option("name").value_or(head.name);
    head.address = call.option("address").value_or(head.address);
    head.contact = call.option("contact").value_or(head.contact);
    if (call.has("name") || call.has("address") || call.has("contact")) {
        const auto who = whoOf(call);
        if (!who) return who.error();
        if (const auto written = actions::writeLetterhead(*laboratory, head, *who); !written)
            return written.error();
    }
    if (call.has("json"))
        print("letterhead-1",
              {{"name", head.name}, {"address", head.address}, {"contact", head.contact}});
    else
        std::cout << head.name << '\n' << head.address << '\n' << head.contact << '\n';
    return Exit::Done;
}

Result<Exit> withdraw(const Call& call) {
    return actOnOrder(
        call, [&](const Laboratory& laboratory, const OrderNumber& number, const Who& who) {
            return actions::withdraw(laboratory, number, call.option("reason").value_or(""), who);
        });
}

Result<Exit> joinCase(const Call& call) {
    const auto leader = numberOf(call.arguments()[1]);
    if (!leader) return leader.error();
    return actOnOrder(call,
                      [&](const Laboratory& laboratory, const OrderNumber& number, const Who& who) {
                          return actions::joinCase(laboratory, number, *leader, who);
                      });
}

Result<Exit> remake(const Call& call) {
    const auto reason = wordOf<domain::RemakeReason>(call.arguments()[1], "reason");
    if (!reason) return reason.error();
    const auto fault = wordIn<domain::Stage>(call, "fault");
    if (!fault) return fault.error();
    return actOnOrder(
        call, [&](const Laboratory& laboratory, const OrderNumber& number, const Who& who) {
            return actions::remake(laboratory, number, *reason, *fault, call.option("note"), who);
        });
}

Result<Exit> purge(const Call& call) {
    return actOnOrder(call,
                      [&](const Laboratory& laboratory, const OrderNumber& number, const Who& who) {
                          return actions::purge(laboratory, number, who);
                      });
}

}  // namespace cli
