#include "apps/actions/paper_places.h"

namespace actions {

using domain::Error;
using domain::ErrorCode;
using domain::Result;

Result<reports::PaperHead> paperHead(const Laboratory& laboratory, const Who& who) {
    auto head = letterhead(laboratory);
    if (!head) return head.error();
    return reports::PaperHead{.laboratory = head->name,
                              .address = head->address,
                              .contact = head->contact,
                              .printedAt = laboratory.now(),
                              .printedBy = who.person.text(),
                              .size = reports::PageSize::A4};
}

reports::PaperPlace paperPlace(const Laboratory& laboratory, bool isIssued) {
    return {.records = laboratory.folder(),
            .papers = laboratory.folder() / "papers",
            .isIssued = isIssued};
}

Result<std::filesystem::path> writePaper(const Laboratory& laboratory, const reports::Paper& paper,
                                         const std::string& name, bool isIssued) {
    const reports::PaperPlace place = paperPlace(laboratory, isIssued);
    const auto& folder = place.papers;
    std::error_code trouble;
    std::filesystem::create_directories(folder, trouble);
    if (trouble)
        return Error{ErrorCode::Unavailable,
                     folder.string() + ": cannot be made: " + trouble.message()};
    constexpr int kMostOfOneName = 1000;
    for (int count = 1;; ++count) {
        const auto file = folder / (name + (count > 1 ? '-' + std::to_string(count) : "") + ".pdf");
        const auto written = reports::write(paper, file, place);
        if (written) return file;
        const bool isTaken = isIssued && written.error().code == ErrorCode::Conflict;
        if (!isTaken || count == kMostOfOneName) return written.error();
    }
}

}  // namespace actions
