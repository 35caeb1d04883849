#include "reports/recall_letter.h"

#include "reports/phrases.h"

namespace reports {
namespace {

std::string counted(std::size_t count) {
    return std::to_string(count) + (count == 1 ? " device" : " devices");
}

Table deviceTable(const std::vector<RecalledDevice>& devices) {
    Table table{.columns = {"Order", "Patient", "Device", "Delivered"},
                .shares = {0.15, 0.20, 0.47, 0.18}};
    for (const RecalledDevice& one : devices)
        table.rows.push_back(
            {one.number.text(), one.patientReference, one.device, given(one.delivered)});
    return table;
}

Table replyTable(const std::vector<RecalledDevice>& devices) {
    Table table{.columns = {"Patient reached: order", "Patient", "On", "What was decided and done"},
                .shares = {0.22, 0.20, 0.16, 0.42},
                .writable = true};
    for (const RecalledDevice& one : devices) {
        table.ticks.push_back(CheckState::Open);
        table.rows.push_back({one.number.text(), one.patientReference, "", ""});
    }
    return table;
}

}  // namespace

Paper recallLetter(const PaperHead& head, const Recall& recall) {
    Paper paper{.head = head, .name = "Recall", .patientReference = {}, .blocks = {}};
    paper.head.order.clear();
    paper.about = recall.lot + ", " + recall.prescriber;
    auto& blocks = paper.blocks;
    blocks.emplace_back(Facts{{fact("To", given(std::optional{recall.prescriber})),
                               fact("Date", recall.issued.text()),
                               fact("Address", given(std::optional{recall.prescriberAddress}))}});
    blocks.emplace_back(Heading{
        "Lot " + recall.lot + " is called back: " + counted(recall.devices.size()) + " of yours"});
    blocks.emplace_back(
        Facts{{fact("Material", recall.material), fact("Lot", recall.lot),
               fact("Maker", recall.maker), fact("Reason", given(std::optional{recall.reason}))}});
    blocks.emplace_back(Heading{"Devices we delivered to you that hold it"});
    blocks.emplace_back(deviceTable(recall.devices));
    blocks.emplace_back(Heading{"What we ask you to do"});
    for (std::size_t at = 0; at < recall.toDo.size(); ++at)
        blocks.emplace_back(
            Paragraph{.text = std::to_string(at + 1) + ". " + recall.toDo[at], .quiet = false});
    blocks.emplace_back(
        Paragraph{.text = "Reach us about it: " + given(std::optional{head.contact}) + ", " +
                          head.laboratory + ".",
                  .quiet = false});
    blocks.emplace_back(CautionFrame{
        .title = "Cautions",
        .paragraphs = {"The decision about each patient is the prescriber's: whether the denture "
                       "stays in use, is taken out or is made again. The laboratory tells what it "
                       "knows of the material and judges no patient.",
                       "A device that comes back is treated as contaminated: disinfect it, mark it "
                       "with what and for how long, and send it apart from other work.",
                       "What local law asks to be reported, and to whom, remains with each who is "
                       "bound by it."}});
    blocks.emplace_back(Heading{"Your answer: please fill in and send back"});
    blocks.emplace_back(replyTable(recall.devices));
    blocks.emplace_back(WriteIn{{"Name in capitals", "Signature", "Date"}});
    return paper;
}

}  // namespace reports
