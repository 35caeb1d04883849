#include "reports/paper_file.h"

#include <optional>
#include <string_view>

#include "reports/paper_layout.h"
#include "reports/placed_file.h"

namespace reports {
namespace {

namespace fs = std::filesystem;
using domain::Done;
using domain::Result;

/// What a PDF file says about itself: of what it is a print, and by which program.
struct PdfInformation {
    std::string_view title;
    std::string_view creator;
    bool operator==(const PdfInformation&) const = default;
};

/// The rest of the line that begins with a name.
std::optional<std::string_view> lineOf(std::string_view text, std::string_view name) {
    const auto begin = text.find(name);
    if (begin == std::string_view::npos) return {};
    const std::string_view rest = text.substr(begin + name.size());
    return rest.substr(0, rest.find_first_of("\r\n"));
}

/// Reads what pdfOf() writes: the trailer names the object, "/Info 3 0 R"; ISO 32000-1, 14.3.3.
std::optional<PdfInformation> informationIn(std::string_view pdf) {
    if (!pdf.starts_with("%PDF-")) return {};
    const auto trailer = pdf.rfind("trailer");
    if (trailer == std::string_view::npos) return {};
    const auto reference = lineOf(pdf.substr(trailer), "/Info ");
    if (!reference) return {};
    const std::string object =
        '\n' + std::string{reference->substr(0, reference->find(' '))} + " 0 obj";
    const auto begin = pdf.find(object);
    if (begin == std::string_view::npos) return {};
    const std::string_view rest = pdf.substr(begin);
    const std::string_view information = rest.substr(0, rest.find("endobj"));
    const auto title = lineOf(information, "/Title ");
    const auto creator = lineOf(information, "/Creator ");
    if (!title || !creator) return {};
    return PdfInformation{*title, *creator};
}

}  // namespace

Result<std::string> pdfOf(const Paper& paper) {
    const std::string& about = paper.head.order.empty() ? paper.about : paper.head.order;
    PdfDocument pdf{paper.head.size, paper.name + ' ' + about, paper.head.printedAt};
    draw(pdf, paper);
    return pdf.bytes();
}

Result<Done> write(const Paper& paper, const fs::path& file, const PaperPlace& place) {
    const auto bytes = pdfOf(paper);
    if (!bytes) return bytes.error();
    Placement placement{.keepOut = place.records,
                        .butFor = place.papers,
                        .mayReplace = {},
                        .replaceable = "an earlier print of the same bytes",
                        .beforeItAppears = {}};
    if (place.beforeItAppears)
        placement.beforeItAppears = [&] { return place.beforeItAppears(*bytes); };
    if (!place.isIssued) {
        placement.replaceable = "an earlier print of this paper";
        placement.mayReplace = [&](std::string_view there) {
            const auto earlier = informationIn(there);
            return earlier && earlier == informationIn(*bytes);
        };
    }
    return placeFile(file, *bytes, placement);
}

}  // namespace reports
