#include "reports/ticket.h"

#include "reports/phrases.h"

namespace reports {
namespace {

using namespace domain;

Table stageTable(const std::vector<TicketStage>& stages) {
    Table table{.columns = {"Stage", "What is done", "Who", "When"},
                .shares = {0.22, 0.48, 0.12, 0.18},
                .writable = true};
    for (const TicketStage& one : stages) {
        const StageRow& row = rowOf(one.stage);
        const bool away = row.kind == StageKind::AtPractice;
        table.ticks.push_back(one.status == StageStatus::Done ? CheckState::Given
                                                              : CheckState::Open);
        table.rows.push_back({capital(wordsOf(one.stage)),
                              std::string{row.work} + (away ? " (at the practice)" : ""),
                              one.person, one.on ? one.on->text() : std::string{}});
    }
    return table;
}

}  // namespace

Paper ticketOf(const PaperHead& head, const Ticket& ticket) {
    Paper paper{
        .head = head, .name = "Ticket", .patientReference = ticket.patientCode, .blocks = {}};
    paper.head.order = ticket.number.text();
    auto& blocks = paper.blocks;
    blocks.emplace_back(Heading{ticket.description});
    blocks.emplace_back(BarcodeBlock{ticket.number});
    blocks.emplace_back(Facts{{fact("Needed", given(ticket.needed)),
                               fact("Patient code", given(std::optional{ticket.patientCode}))}});
    blocks.emplace_back(Heading{"Stages"});
    blocks.emplace_back(stageTable(ticket.stages));
    blocks.emplace_back(Heading{"Remarks of the bench"});
    blocks.emplace_back(WritingLines{2});
    CautionFrame frame{.title = "Cautions", .paragraphs = benchCautions(ticket.hazards)};
    frame.paragraphs.push_back(infectionCaution());
    frame.paragraphs.push_back(deferenceCaution());
    blocks.emplace_back(std::move(frame));
    return paper;
}

}  // namespace reports
