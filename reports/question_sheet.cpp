#include "reports/question_sheet.h"

#include <algorithm>

#include "domain/drawing/arch_picture.h"
#include "domain/rules/rule.h"
#include "reports/cautions.h"
#include "reports/words.h"

namespace reports {
namespace {

using namespace domain;

Question questionFrom(const FlagOnPaper& flag, int number) {
    return {
        .text = std::string{questionOf(flag.reason)},
        .why = flag.note.value_or("Work has stopped at this point."),
        .source = "flagged by " + flag.person + ", " + flag.since.text() + " \u00B7 " +
                  wordsOf(flag.reason),
        .choices = {"answered below", "please telephone"},
        .places = {{.flag = {number, Severity::Missing}, .text = "From the bench", .lines = 2}}};
}

/// What only the prescriber knows; anything else the laboratory may propose.
constexpr std::string_view kPrescriberAlone[] = {"admin.", "dentition.", "enclosure.",
                                                 "sensitivity."};

std::vector<std::string> choicesFor(const Finding& finding) {
    std::vector<std::string> choices;
    if (finding.severity == Severity::Conflict)
        choices = {"change as written below"};
    else if (std::ranges::any_of(kPrescriberAlone, [&](std::string_view subject) {
                 return finding.rule.starts_with(subject);
             }))
        choices = {"answered below", "please telephone"};
    else
        choices = {"answered below", "please propose, for my approval"};
    if (mayBeKept(finding)) choices.emplace_back("keep as prescribed, because:");
    return choices;
}

/// Why it is asked, and why it is not offered to be kept as prescribed.
std::string whyAsked(const Finding& finding) {
    std::string why = "Why we ask: " + finding.requirement;
    if (!mayBeKept(finding)) why += " It cannot stay so: " + std::string{whyNotKept(finding)} + ".";
    return why;
}

Question questionFrom(const Finding& finding) {
    return {.text = finding.question,
            .why = whyAsked(finding),
            .source = finding.rule + " \u00B7 " + finding.source,
            .choices = choicesFor(finding),
            .places = {}};
}

/// Findings of one rule share their question and are answered place by place.
void addQuestions(std::vector<Block>& blocks, std::string heading,
                  const std::vector<Finding>& findings, Severity severity, int firstNumber,
                  Notation notation, const OffersFor& offersFor) {
    std::vector<Question> questions;
    const std::string* rule = nullptr;
    int places = 0;
    for (std::size_t at = 0; at < findings.size(); ++at) {
        const Finding& finding = findings[at];
        if (finding.severity != severity) continue;
        if (rule == nullptr || *rule != finding.rule) questions.push_back(questionFrom(finding));
        rule = &finding.rule;
        ++places;
        questions.back().places.push_back(
            {.flag = {firstNumber + static_cast<int>(at), severity},
             .text = placeText(finding, notation) + ": " + finding.found,
             .lines = 1,
             .offers = offersFor(finding)});
    }
    if (questions.empty()) return;
    blocks.emplace_back(Heading{std::move(heading) + " (" + std::to_string(places) + ")"});
    for (Question& question : questions) {
        if (question.places.size() == 1) question.places.front().lines = 2;
        blocks.emplace_back(std::move(question));
    }
}

void addCautions(std::vector<Block>& blocks, const std::vector<Finding>& findings, int firstNumber,
                 Notation notation) {
    Checklist list;
    for (std::size_t at = 0; at < findings.size(); ++at) {
        const Finding& finding = findings[at];
        if (finding.severity != Severity::Caution) continue;
        list.checks.push_back(
            {.state = CheckState::Look,
             .flag = FlagNumber{firstNumber + static_cast<int>(at), finding.severity},
             .text = placeText(finding, notation) + ": " + finding.found + ". " + finding.question,
             .detail = finding.rule + " \u00B7 " + finding.source});
    }
    if (list.checks.empty()) return;
    blocks.emplace_back(Heading{"To know: no answer needed unless you disagree (" +
                                std::to_string(list.checks.size()) + ")"});
    blocks.emplace_back(std::move(list));
}

std::string howToAnswer(const PaperHead& head) {
    std::string text =
        "Please tick or write beside each number, sign at the end, and send this sheet back";
    if (!head.contact.empty()) text += " (" + head.contact + ")";
    return text +
           ". The numbers are those of the flags on the picture. Numbered changes are offers that "
           "would settle the point: what is right for the patient is yours to decide. Until the "
           "answers are here, work on this order waits.";
}

Facts caseFacts(const Prescription& prescription) {
    const auto needed = prescription.needed;
    return {{{.label = "For",
              .value = prescription.identity.prescriberName.value_or("the prescriber"),
              .ask = false},
             {.label = "Needed",
              .value = needed ? needed->text() : std::string{kNotGiven},
              .ask = !needed}}};
}

}  // namespace

Paper questionSheet(const PaperHead& head, const Prescription& prescription,
                    const std::vector<Finding>& findings, const std::vector<FlagOnPaper>& flags,
                    const OffersFor& offersFor) {
    Paper paper{.head = head,
                .name = "Questions",
                .patientReference = prescription.identity.patientReference.value_or(""),
                .blocks = {}};
    const auto sorted = inSheetOrder(findings);
    const Notation notation = notationOf(prescription);
    const int firstFinding = static_cast<int>(flags.size()) + 1;
    auto& blocks = paper.blocks;
    blocks.emplace_back(Heading{caseText(prescription)});
    blocks.emplace_back(caseFacts(prescription));
    blocks.emplace_back(Paragraph{.text = howToAnswer(head), .quiet = false});
    blocks.emplace_back(PictureBlock{
        archPicture(prescription, sorted,
                    {.notation = notation, .legend = true, .firstNumber = firstFinding})});
    if (!flags.empty())
        blocks.emplace_back(
            Heading{"Work has stopped at the bench (" + std::to_string(flags.size()) + ")"});
    for (std::size_t at = 0; at < flags.size(); ++at)
        blocks.emplace_back(questionFrom(flags[at], static_cast<int>(at) + 1));
    addQuestions(blocks, "Not given yet", sorted, Severity::Missing, firstFinding, notation,
                 offersFor);
    addQuestions(blocks, "Contradictory", sorted, Severity::Conflict, firstFinding, notation,
                 offersFor);
    addCautions(blocks, sorted, firstFinding, notation);
    blocks.emplace_back(WriteIn{{"Name in capitals", "Signature", "Date"}});
    blocks.emplace_back(cautionFrame(prescription));
    return paper;
}

bool hasQuestions(const std::vector<Finding>& findings, const std::vector<FlagOnPaper>& flags) {
    return blocks(findings) || !flags.empty();
}

}  // namespace reports
