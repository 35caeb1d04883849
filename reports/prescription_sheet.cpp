#include "reports/prescription_sheet.h"

#include <algorithm>

#include "domain/design/design_score.h"
#include "domain/drawing/arch_picture.h"
#include "reports/cautions.h"
#include "reports/words.h"

namespace reports {
namespace {

using namespace domain;

Checklist givenList(const Prescription& prescription) {
    Checklist list;
    for (const Item& item : items())
        if (item.given(prescription))
            list.checks.push_back({.state = CheckState::Given,
                                   .flag = {},
                                   .text = std::string{item.name},
                                   .detail = {}});
    return list;
}

Check checkOf(const Finding& finding, int number, const Prescription& prescription) {
    return {.state = finding.severity == Severity::Caution ? CheckState::Look : CheckState::Open,
            .flag = FlagNumber{number, finding.severity},
            .text = placeText(finding, notationOf(prescription)) + ": " + finding.found + ". " +
                    finding.requirement,
            .detail = finding.rule + " \u00B7 " + finding.source};
}

/// How many of them there are, in words that fit the heading.
std::string counted(std::size_t count, std::string_view what) {
    return std::string{what} + " (" + std::to_string(count) + ")";
}

void addChecks(std::vector<Block>& blocks, std::string_view heading,
               const std::vector<Finding>& findings, bool blocking,
               const Prescription& prescription) {
    Checklist list;
    for (std::size_t at = 0; at < findings.size(); ++at)
        if ((findings[at].severity != Severity::Caution) == blocking)
            list.checks.push_back(checkOf(findings[at], static_cast<int>(at) + 1, prescription));
    if (list.checks.empty()) return;
    blocks.emplace_back(Heading{counted(list.checks.size(), heading)});
    blocks.emplace_back(std::move(list));
}

/// "Open: 2 missing, 1 contradictory, 1 to look at."
std::string openText(const std::vector<Finding>& findings) {
    constexpr std::pair<Severity, std::string_view> kWords[] = {
        {Severity::Missing, " missing"},
        {Severity::Conflict, " contradictory"},
        {Severity::Caution, " to look at"}};
    std::string text;
    for (const auto& [severity, words] : kWords) {
        const auto count = std::ranges::count(findings, severity, &Finding::severity);
        if (count == 0) continue;
        text += (text.empty() ? "Open: " : ", ") + std::to_string(count) + std::string{words};
    }
    return text + ". The numbers on the picture are those of the checklist below.";
}

void addFlags(std::vector<Block>& blocks, const std::vector<FlagOnPaper>& flags) {
    if (flags.empty()) return;
    Checklist list;
    for (const FlagOnPaper& flag : flags)
        list.checks.push_back(
            {.state = CheckState::Open,
             .flag = {},
             .text = std::string{questionOf(flag.reason)} + (flag.note ? " " + *flag.note : ""),
             .detail = "flagged at the bench by " + flag.person + ", " + flag.since.text()});
    blocks.emplace_back(Heading{counted(flags.size(), "Open questions of the bench")});
    blocks.emplace_back(std::move(list));
}

void addTaken(std::vector<Block>& blocks, const std::vector<TakenCautions>& taken) {
    if (taken.empty()) return;
    Table table{.columns = {"Caution taken", "By", "When", "Reason"},
                .shares = {0.28, 0.10, 0.22, 0.40},
                .rows = {}};
    for (const TakenCautions& one : taken) {
        std::string rules;
        for (const std::string& rule : one.rules) rules += (rules.empty() ? "" : ", ") + rule;
        table.rows.push_back(
            {rules, one.person, one.at ? one.at->text() : std::string{"\u2013"}, one.reason});
    }
    blocks.emplace_back(Heading{"Who took responsibility for a caution"});
    blocks.emplace_back(std::move(table));
}

void addKept(std::vector<Block>& blocks, const std::vector<KeptOnPaper>& kept) {
    if (kept.empty()) return;
    Table table{
        .columns = {"Kept as prescribed", "What was found", "The prescriber's reason", "Recorded"},
        .shares = {0.20, 0.30, 0.32, 0.18},
        .rows = {}};
    for (const KeptOnPaper& one : kept)
        table.rows.push_back({one.place, one.found, one.words,
                              one.person + (one.day ? ", " + one.day->text() : std::string{})});
    blocks.emplace_back(Heading{"Kept as prescribed, on the prescriber's word"});
    blocks.emplace_back(std::move(table));
}

void append(std::vector<Block>& blocks, std::vector<Block> more) {
    for (Block& block : more) blocks.push_back(std::move(block));
}

}  // namespace

Paper prescriptionSheet(const PaperHead& head, const Prescription& prescription,
                        const std::vector<Finding>& findings, const std::vector<FlagOnPaper>& flags,
                        const std::vector<TakenCautions>& taken,
                        const std::vector<KeptOnPaper>& kept) {
    Paper paper{.head = head,
                .name = "Prescription",
                .patientReference = prescription.identity.patientReference.value_or(""),
                .blocks = {}};
    const auto sorted = inSheetOrder(findings);
    auto& blocks = paper.blocks;
    blocks.emplace_back(Heading{caseText(prescription)});
    if (!sorted.empty()) blocks.emplace_back(Paragraph{.text = openText(sorted), .quiet = false});
    blocks.emplace_back(PictureBlock{
        archPicture(prescription, sorted,
                    {.notation = notationOf(prescription), .legend = true, .firstNumber = 1})});
    append(blocks, partyBlocks(prescription));
    append(blocks, designBlocks(prescription));
    append(blocks, materialBlocks(prescription));
    append(blocks, surveyBlocks(prescription));
    append(blocks, enclosureBlocks(prescription));
    blocks.emplace_back(Heading{"Checklist: given"});
    blocks.emplace_back(givenList(prescription));
    addChecks(blocks, "Missing or contradictory: work waits for the answer", sorted, true,
              prescription);
    addFlags(blocks, flags);
    addChecks(blocks, "To look at", sorted, false, prescription);
    addTaken(blocks, taken);
    addKept(blocks, kept);
    if (sorted.empty() && flags.empty() && kept.empty())
        blocks.emplace_back(Paragraph{.text =
                                          "Nothing is open: the examination found nothing missing, "
                                          "contradictory or unusual.",
                                      .quiet = false});
    blocks.emplace_back(cautionFrame(prescription));
    return paper;
}

}  // namespace reports
