#include "apps/actions/paper_places.h"

#include "reports/paper_file.h"

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

Result<std::filesystem::path> writePaper(const Laboratory& laboratory, const reports::Paper& paper,
                                         const std::string& name) {
    const auto folder = laboratory.folder() / "papers";
    std::error_code trouble;
    std::filesystem::create_directories(folder, trouble);
    if (trouble)
        return Error{ErrorCode::Unavailable,
                     folder.string() + ": cannot be made: " + trouble.message()};
    const auto file = folder / (name + ".pdf");
    if (const auto written = reports::write(paper, file); !written) return written.error();
    return file;
}

}  // namespace actions
