#include "reports/bench_sheet.h"

#include "reports/phrases.h"

namespace reports {

Paper benchSheet(const PaperHead& head, const Bench& bench) {
    Paper paper{
        .head = head, .name = "Bench sheet", .patientReference = bench.patientCode, .blocks = {}};
    paper.head.order = bench.number.text();
    auto& blocks = paper.blocks;
    blocks.emplace_back(Heading{bench.description});
    blocks.emplace_back(BarcodeBlock{bench.number});
    blocks.emplace_back(Heading{capital(domain::wordsOf(bench.stage)) + ": " +
                                std::string{domain::rowOf(bench.stage).work}});
    Table table{.columns = {"Value", "To be", "As done, where it differs"},
                .shares = {0.44, 0.26, 0.30},
                .writable = true};
    for (const BenchValue& one : bench.values) table.rows.push_back({one.label, one.value, ""});
    if (table.rows.empty())
        blocks.emplace_back(Paragraph{.text = "No value is set for this stage.", .quiet = false});
    else
        blocks.emplace_back(std::move(table));
    for (const std::string& note : bench.notes)
        blocks.emplace_back(Paragraph{.text = note, .quiet = true});
    blocks.emplace_back(WriteIn{{"Lots used", "Who", "When"}});
    CautionFrame frame{.title = "Cautions", .paragraphs = benchCautions(bench.hazards)};
    frame.paragraphs.emplace_back(
        "Values: they follow from what was recorded. Where the maker's instructions for a material "
        "say otherwise, the maker's instructions hold.");
    frame.paragraphs.push_back(infectionCaution());
    frame.paragraphs.push_back(deferenceCaution());
    blocks.emplace_back(std::move(frame));
    return paper;
}

}  // namespace reports
