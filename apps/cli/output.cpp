#include "apps/cli/output.h"

#include <algorithm>
#include <iostream>
#include <nlohmann/json.hpp>

namespace cli {
namespace {

using domain::codeOf;
using domain::wordsOf;

/// Characters, not bytes: continuation bytes of UTF-8 are not counted.
std::size_t width(const std::string& text) {
    return static_cast<std::size_t>(
        std::ranges::count_if(text, [](char c) { return (c & 0xC0) != 0x80; }));
}

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

}  // namespace

std::string table(const std::vector<std::string>& heading,
                  const std::vector<std::vector<std::string>>& rows) {
    std::vector<std::size_t> widths(heading.size());
    std::ranges::transform(heading, widths.begin(), width);
    for (const auto& row : rows)
        for (std::size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], width(row[i]));
    const auto line = [&](const std::vector<std::string>& row) {
        std::string text;
        for (std::size_t i = 0; i < row.size(); ++i)
            text += row[i] +
                    (i + 1 == row.size() ? "\n" : std::string(widths[i] - width(row[i]) + 2, ' '));
        return text;
    };
    std::string text = line(heading);
    for (const auto& row : rows) text += line(row);
    return text;
}

std::string paragraph(const domain::Finding& finding, domain::Notation notation) {
    std::string text = std::string{codeOf(finding.severity)} + "  " + finding.rule;
    if (finding.tooth) text += "  tooth " + nameOf(*finding.tooth, notation);
    text += "  " + finding.found + '\n';
    text += "    must hold: " + finding.requirement + '\n';
    text += "    to ask:    " + finding.question + '\n';
    text += "    source:    " + finding.source + '\n';
    return text;
}

std::string report(const actions::Examined& examined) {
    const auto& prescription = examined.prescription;
    std::string text = wordsOf(prescription.arch) + ", ";
    text += examined.kennedy ? "Kennedy " + examined.kennedy->text() : "no Kennedy class";
    if (examined.support) text += ", support by " + wordsOf(*examined.support);
    text += '\n';
    for (const domain::Finding& finding : examined.findings)
        text += '\n' + paragraph(finding, notationOf(prescription));
    text += examined.findings.empty()
                ? "no findings\n"
                : '\n' + std::to_string(examined.findings.size()) + " findings\n";
    return text;
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
            {"source", finding.source}};
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
            {"problems", verification.problems}};
}

void print(std::string_view schema, const Json& object) {
    Json named = {{"schema", std::string{schema}}};
    named.update(object);
    std::cout << named.dump(2) << '\n';
}

}  // namespace cli
