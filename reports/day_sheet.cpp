#include "reports/day_sheet.h"

#include "reports/phrases.h"

namespace reports {
namespace {

/// "0123456789abcdef 0123...": digits that people compare, in groups.
std::string grouped(const std::string& digits) {
    constexpr std::size_t kGroup = 16;
    std::string text;
    for (std::size_t at = 0; at < digits.size(); at += kGroup)
        text.append(at == 0 ? "" : " ").append(digits.substr(at, kGroup));
    return text;
}

}  // namespace

Paper daySheet(const PaperHead& head, const DaySheet& sheet) {
    Paper paper{.head = head, .name = "Day sheet", .patientReference = {}, .blocks = {}};
    paper.head.order.clear();
    paper.head.digest = sheet.head.substr(0, 12);
    paper.about = sheet.at.text() + ", " + std::to_string(sheet.entries);
    auto& blocks = paper.blocks;
    blocks.emplace_back(Heading{"Where the records stood, " + sheet.at.text()});
    blocks.emplace_back(
        Facts{{fact("Entries of the ledger", std::to_string(sheet.entries)),
               fact("Entries of the access log", std::to_string(sheet.accessEntries))}});
    blocks.emplace_back(Facts{{fact("Head of the ledger", grouped(sheet.head)),
                               fact("Head of the access log", grouped(sheet.accessHead)),
                               fact("Key that signs", grouped(sheet.publicKey))}});
    blocks.emplace_back(Heading{"The checkpoint, signed"});
    blocks.emplace_back(CodeBlock{sheet.checkpoint});
    blocks.emplace_back(Paragraph{
        .text = "The code holds the checkpoint as it stands in its file. Read it into a file to "
                "compare the records with it: framewright verify --against FILE.",
        .quiet = false});
    blocks.emplace_back(Paragraph{
        .text = "Keep this sheet where nobody who can change the records can change it. It shows "
                "that what was recorded until then is still there and the same. It does not show "
                "that what was recorded is true, nor anything that came later.",
        .quiet = true});
    blocks.emplace_back(WriteIn{{"Put away on", "by"}});
    return paper;
}

}  // namespace reports
