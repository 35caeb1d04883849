#include "apps/actions/papers.h"

#include "reports/paper_file.h"
#include "reports/prescription_sheet.h"
#include "reports/question_sheet.h"

namespace actions {
namespace {

using domain::Error;
using domain::ErrorCode;
using domain::Result;

Result<reports::PaperHead> headOf(const Laboratory& laboratory, const OrderView& view,
                                  const Who& who) {
    auto head = letterhead(laboratory);
    if (!head) return head.error();
    return reports::PaperHead{.laboratory = head->name,
                              .address = head->address,
                              .contact = head->contact,
                              .order = view.order.number.text(),
                              .revision = static_cast<int>(view.order.revisionNumber),
                              .printedAt = laboratory.now(),
                              .printedBy = who.person.text(),
                              .digest = view.digest,
                              .size = reports::PageSize::A4};
}

std::vector<reports::FlagOnPaper> flagsOf(const OrderView& view) {
    std::vector<reports::FlagOnPaper> flags;
    for (std::size_t i = 0; i < view.order.flags.size(); ++i) {
        const domain::OpenFlag& flag = view.order.flags[i];
        const std::string& note = view.flagNotes[i];
        flags.push_back({.reason = flag.reason,
                         .note = note.empty() ? std::nullopt : std::optional{note},
                         .person = flag.person.text(),
                         .since = flag.since});
    }
    return flags;
}

std::vector<reports::TakenCautions> takenOf(const OrderView& view) {
    std::vector<reports::TakenCautions> taken;
    for (const HistoryLine& line : view.history)
        if (const auto* accepted = std::get_if<domain::Accepted>(&line.event.what);
            accepted != nullptr && !accepted->cautions.empty())
            taken.push_back({.rules = accepted->cautions,
                             .person = line.event.person.text(),
                             .reason = line.words,
                             .at = line.event.at});
    return taken;
}

/// papers/26000017-questions-r1.pdf
std::filesystem::path usualPlace(const Laboratory& laboratory, const OrderView& view, Paper paper) {
    return laboratory.folder() / "papers" /
           (view.order.number.text() + '-' + std::string{domain::codeOf(paper)} + "-r" +
            std::to_string(view.order.revisionNumber) + ".pdf");
}

Result<reports::Paper> composed(const Laboratory& laboratory, const OrderView& view, Paper paper,
                                const Who& who) {
    auto head = headOf(laboratory, view, who);
    if (!head) return head.error();
    const auto& findings = view.order.revision.findings;
    const auto flags = flagsOf(view);
    switch (paper) {
        case Paper::PrescriptionSheet:
            return reports::prescriptionSheet(*head, view.prescription, findings, flags,
                                              takenOf(view));
        case Paper::QuestionSheet:
            break;
    }
    if (!reports::hasQuestions(findings, flags))
        return Error{ErrorCode::Refused,
                     "order " + view.order.number.text() + ": there is nothing to ask"};
    return reports::questionSheet(*head, view.prescription, findings, flags);
}

}  // namespace

Result<std::filesystem::path> print(const Laboratory& laboratory, const domain::OrderNumber& number,
                                    Paper paper, const std::filesystem::path& file,
                                    const Who& who) {
    const auto view = order(laboratory, number);
    if (!view) return view.error();
    const auto sheet = composed(laboratory, *view, paper, who);
    if (!sheet) return sheet.error();
    const auto target = file.empty() ? usualPlace(laboratory, *view, paper) : file;
    if (file.empty()) {
        std::error_code trouble;
        std::filesystem::create_directories(target.parent_path(), trouble);
        if (trouble)
            return Error{ErrorCode::Unavailable,
                         target.parent_path().string() + ": cannot be made: " + trouble.message()};
    }
    if (const auto written = reports::write(*sheet, target); !written) return written.error();
    return target;
}

}  // namespace actions
