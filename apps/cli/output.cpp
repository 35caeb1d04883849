#include "apps/cli/output.h"

#include <unistd.h>

#include <array>
#include <cstdio>
#include <iostream>
#include <nlohmann/json.hpp>

#include "domain/base/plain_text.h"

namespace cli {
namespace {

using domain::codeOf;
using domain::wordsOf;

template <typename T>
Json orNull(const std::optional<T>& value) {
    return value ? Json(*value) : Json();
}

Json numberOrNull(const std::optional<domain::OrderNumber>& number) {
    return number ? Json(number->text()) : Json();
}

template <typename E>
Json codeOrNull(const std::optional<E>& value) {
    return value ? Json(std::string{codeOf(*value)}) : Json();
}

/// "\\u202e", and two of them for what lies beyond U+FFFF (RFC 8259, section 7).
std::string jsonEscape(char32_t code) {
    if (code > 0xFFFF)
        return jsonEscape(0xD800 + ((code - 0x10000) >> 10)) + jsonEscape(0xDC00 + (code & 0x3FF));
    std::array<char, 8> written{};
    std::snprintf(written.data(), written.size(), "\\u%04x", static_cast<unsigned>(code));
    return written.data();
}

/// JSON with what would steer a terminal or stay unseen as escapes. Line breaks are left: inside
/// a string nlohmann has escaped them already.
std::string escaped(std::string_view json) {
    std::string text;
    text.reserve(json.size());
    while (!json.empty()) {
        const auto [code, bytes] = domain::firstCharacter(json);
        const bool unseen =
            code && *code != '\n' && (domain::isControl(*code) || domain::isHidden(*code));
        if (unseen)
            text += jsonEscape(*code);
        else
            text += json.substr(0, bytes);
        json.remove_prefix(bytes);
    }
    return text;
}

/// How a refusal may be answered; empty for a caution, which the laboratory takes.
std::string answerText(const domain::Finding& finding) {
    if (finding.kept)
        return "kept as prescribed, recorded by " + finding.kept->recordedBy.text() + " on " +
               finding.kept->day.text();
    if (!refuses(finding)) return {};
    if (mayBeKept(finding)) return "changed, or kept as prescribed by the prescriber";
    return "changed: " + std::string{whyNotKept(finding)};
}

}  // namespace

Page paragraph(const domain::Finding& finding, domain::Notation notation) {
    std::string head = std::string{codeOf(finding.severity)} + "  " + finding.rule;
    if (finding.tooth) head += "  tooth " + nameOf(*finding.tooth, notation);
    Page page{head + "  " + finding.found};
    page.line("    must hold: " + finding.requirement)
        .line("    to ask:    " + finding.question)
        .line("    source:    " + finding.source);
    if (const std::string answer = answerText(finding); !answer.empty())
        page.line("    answer:    " + answer);
    return page;
}

Page report(const actions::Examined& examined, const actions::Trial* trial) {
    const auto& prescription = examined.prescription;
    std::string head = wordsOf(prescription.arch) + ", ";
    head += examined.kennedy ? "Kennedy " + examined.kennedy->text() : "no Kennedy class";
    if (examined.support) head += ", support by " + wordsOf(*examined.support);
    Page page{head};
    for (const domain::Finding& finding : examined.findings) {
        page.blank().add(paragraph(finding, notationOf(prescription)));
        int number = 0;
        if (trial != nullptr)
            for (const domain::Remedy& remedy : trial->remedies(finding))
                page.line("    offer " + std::to_string(++number) + ":   " + remedy.says);
    }
    if (examined.findings.empty()) return page.line("no findings");
    return page.blank().line(domain::counted(examined.findings.size(), "finding"));
}

std::string spanText(std::int64_t microseconds) {
    constexpr std::int64_t kMinute = 60'000'000;
    const std::int64_t minutes = microseconds / kMinute;
    const std::int64_t hours = minutes / 60;
    const std::int64_t days = hours / 24;
    if (days > 0) return std::to_string(days) + " d " + std::to_string(hours % 24) + " h";
    if (hours > 0) return std::to_string(hours) + " h " + std::to_string(minutes % 60) + " min";
    return std::to_string(minutes) + " min";
}

Json json(const domain::Finding& finding) {
    return {{"rule", finding.rule},
            {"severity", std::string{codeOf(finding.severity)}},
            {"tooth", finding.tooth ? Json(finding.tooth->text()) : Json()},
            {"found", finding.found},
            {"requirement", finding.requirement},
            {"question", finding.question},
            {"source", finding.source},
            {"may-be-kept", mayBeKept(finding)},
            {"kept", finding.kept ? Json{{"recorded-by", finding.kept->recordedBy.text()},
                                         {"day", finding.kept->day.text()}}
                                  : Json()}};
}

Json json(const std::vector<domain::Finding>& findings) {
    Json list = Json::array();
    for (const domain::Finding& finding : findings) list.push_back(json(finding));
    return list;
}

Json json(const actions::Examined& examined) {
    return {{"arch", std::string{codeOf(examined.prescription.arch)}},
            {"kennedy", examined.kennedy ? Json(examined.kennedy->text()) : Json()},
            {"support", codeOrNull(examined.support)},
            {"findings", json(examined.findings)}};
}

Json json(const domain::Order& order) {
    Json steps = Json::array();
    for (const domain::StageStep& step : order.steps)
        steps.push_back({{"stage", std::string{codeOf(step.stage)}},
                         {"status", std::string{codeOf(step.status)}},
                         {"person", step.person ? Json(step.person->text()) : Json()},
                         {"since", step.since ? Json(step.since->text()) : Json()},
                         {"attempt", step.attempt},
                         {"site", step.madeAt ? Json(step.madeAt->text()) : Json()},
                         {"away", step.away}});
    Json records = Json::array();
    for (const domain::KeptRecord& kept : order.records)
        records.push_back({{"stage", std::string{codeOf(kept.stage)}},
                           {"attempt", kept.attempt},
                           {"person", kept.person.text()},
                           {"at", kept.at.text()},
                           {"kind", std::string{codeOf(kindOf(kept.record))}},
                           {"says", tellRecord(kept.record, domain::Notation::Iso3950)}});
    Json flags = Json::array();
    for (const domain::OpenFlag& flag : order.flags)
        flags.push_back({{"reason", std::string{codeOf(flag.reason)}},
                         {"person", flag.person.text()},
                         {"since", flag.since.text()}});
    const auto* step = currentStep(order);
    return {{"order", order.number.text()},
            {"version", order.version},
            {"status", std::string{codeOf(order.status)}},
            {"revision", order.revisionNumber},
            {"route", codeOrNull(order.route)},
            {"stage", step ? Json(std::string{codeOf(step->stage)}) : Json()},
            {"waits-for", std::string{codeOf(waitsFor(order))}},
            {"hold-up", holdUp(order)},
            {"waiting-since", order.waiting.since.text()},
            {"route-version", order.plan ? Json(order.plan->version) : Json()},
            {"remake-due", order.remakeDue},
            {"replaces", numberOrNull(order.replaces)},
            {"replaced-by", numberOrNull(order.replacedBy)},
            {"case", numberOrNull(order.caseLeader)},
            {"steps", std::move(steps)},
            {"records", std::move(records)},
            {"flags", std::move(flags)},
            {"findings", json(order.revision.findings)},
            {"cautions-taken", order.cautionsTaken}};
}

Json json(const actions::OrderView& view) {
    Json object = json(view.order);
    const auto& identity = view.prescription.identity;
    object["patient"] = orNull(identity.patientReference);
    object["prescriber"] = orNull(identity.prescriberName);
    object["needed"] = view.prescription.needed ? Json(view.prescription.needed->text()) : Json();
    object["digest"] = view.digest;
    Json history = Json::array();
    for (const actions::HistoryLine& line : view.history)
        history.push_back({{"version", line.event.version},
                           {"at", line.event.at.text()},
                           {"person", line.event.person.text()},
                           {"station", line.event.station},
                           {"event", std::string{codeOf(kindOf(line.event))}},
                           {"says", line.says},
                           {"words", line.words}});
    object["history"] = std::move(history);
    return object;
}

Json json(const std::vector<actions::FloorLine>& lines) {
    Json list = Json::array();
    for (const actions::FloorLine& line : lines)
        list.push_back({{"order", line.number.text()},
                        {"description", line.description},
                        {"status", std::string{codeOf(line.status)}},
                        {"stage", codeOrNull(line.stage)},
                        {"waits-for", std::string{codeOf(line.waitsFor)}},
                        {"hold-up", line.holdUp},
                        {"due", line.due ? Json(line.due->text()) : Json()},
                        {"received", line.receivedAt.text()},
                        {"changed", line.changedAt.text()},
                        {"waiting-since", line.waitingSince.text()},
                        {"laboratory-minutes", line.laboratoryTime / 60'000'000},
                        {"case", numberOrNull(line.caseLeader)},
                        {"patient", line.patient},
                        {"prescriber", line.prescriber}});
    return {{"orders", std::move(list)}};
}

Json json(const actions::Verification& verification) {
    return {{"entries", verification.entries},
            {"orders", verification.orders},
            {"head", verification.head},
            {"not-looked-at", verification.notLookedAt},
            {"access-entries", verification.accessEntries},
            {"access-head", verification.accessHead},
            {"problems", verification.problems}};
}

void print(const Page& page) { std::cout << page.text(); }

void print(std::string_view schema, const Json& object) {
    Json named = {{"schema", std::string{schema}}};
    named.update(object);
    std::cout << escaped(named.dump(2, ' ', false, Json::error_handler_t::replace)) << '\n';
}

void complain(std::string_view sentence) {
    std::cerr << Page{"framewright: " + std::string{sentence}}.text();
}

void ask(std::string_view what) { std::cerr << domain::plainText(what) << ": " << std::flush; }

void endAsked() { std::cerr << '\n'; }

bool isTerminal() { return ::isatty(STDERR_FILENO) == 1; }

void tellProgress(std::string_view line, bool isLast) {
    const bool over = isTerminal();
    std::cerr << (over ? "\r\033[K" : "") << domain::plainText(line)
              << (over && !isLast ? "" : "\n") << std::flush;
}

bool isWrittenOut() { return std::cout.flush().good(); }

}  // namespace cli
