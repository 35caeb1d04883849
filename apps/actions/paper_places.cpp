#include "apps/actions/paper_places.h"

#include "storage/records_file.h"

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
            .papers = laboratory.folder() / storage::kPapersFolder,
            .isIssued = isIssued,
            .beforeItAppears = {}};
}

Result<std::filesystem::path> writePaper(const Laboratory& laboratory, const reports::Paper& paper,
                                         const std::string& name, bool isIssued,
                                         const Printed& printed, const Who& who) {
    reports::PaperPlace place = paperPlace(laboratory, isIssued);
    std::error_code trouble;
    std::filesystem::create_directories(place.papers, trouble);
    if (trouble)
        return Error{ErrorCode::Unavailable,
                     place.papers.string() + ": cannot be made: " + trouble.message()};
    constexpr int kMostOfOneName = 1000;
    for (int count = 1;; ++count) {
        const std::string own = name + (count > 1 ? '-' + std::to_string(count) : "") + ".pdf";
        place.beforeItAppears = [&](std::string_view pdf) {
            return notePrinted(laboratory, who, printed, own, pdf);
        };
        const auto written = reports::write(paper, place.papers / own, place);
        if (written) return place.papers / own;
        const bool isTaken = isIssued && written.error().code == ErrorCode::Conflict;
        if (!isTaken || count == kMostOfOneName) return written.error();
    }
}

Result<domain::Done> writePaperTo(const Laboratory& laboratory, const reports::Paper& paper,
                                  const std::filesystem::path& file, bool isIssued,
                                  const Printed& printed, const Who& who) {
    reports::PaperPlace place = paperPlace(laboratory, isIssued);
    place.beforeItAppears = [&](std::string_view pdf) {
        return notePrinted(laboratory, who, printed, {}, pdf);
    };
    return reports::write(paper, file, place);
}

}  // namespace actions
