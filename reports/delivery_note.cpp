#include "reports/delivery_note.h"

#include "reports/dispatch.h"
#include "reports/phrases.h"

namespace reports {
namespace {

Table orderTable(const std::vector<DeliveredOrder>& orders) {
    Table table{.columns = {"Order", "Revision", "Patient", "Device", "Statement"},
                .shares = {0.13, 0.10, 0.17, 0.42, 0.18}};
    for (const DeliveredOrder& order : orders)
        table.rows.push_back(
            {order.number.text(), std::to_string(order.revision), order.patientReference,
             order.device,
             order.statementNumber.empty() ? std::string{"\u2013"} : order.statementNumber});
    return table;
}

/// Common practice, no source.
constexpr std::string_view kCare[] = {
    "Put it in and take it out with the fingers, along the way you were shown. Never bite it into "
    "place, and do not pull at one clasp alone.",
    "After meals rinse it. Once a day clean it over a basin of water or a towel, with a soft brush "
    "and soap or a denture cleaner, and brush your own teeth as well. No hot water, no abrasive "
    "paste.",
    "At night leave it out and keep it clean and moist, unless you were told otherwise.",
    "Do not bend, grind or glue it yourself.",
};

CautionFrame patientCautions(const Hazards& hazards) {
    CautionFrame frame{.title = "Cautions for the patient", .paragraphs = wearerCautions(hazards)};
    if (hazards.metal)
        frame.paragraphs.emplace_back(
            "Bleach: cleaners with hypochlorite can attack the metal. Do not use them.");
    frame.paragraphs.emplace_back(
        "See your dentist soon if it hurts, rocks or no longer fits, or if the mouth reddens, "
        "swells or burns. Wear no denture that is cracked or has lost a part.");
    frame.paragraphs.emplace_back(
        "If a part is swallowed or breathed in, or you cannot breathe well: get medical help at "
        "once.");
    frame.paragraphs.emplace_back(
        "What your dentist tells you goes before anything on this sheet. Keep your appointments, "
        "also when nothing hurts.");
    return frame;
}

}  // namespace

Paper deliveryNote(const PaperHead& head, const Delivery& delivery) {
    Paper paper{.head = head, .name = "Delivery note", .patientReference = {}, .blocks = {}};
    paper.head.order.clear();
    auto& blocks = paper.blocks;
    if (delivery.orders.size() == 1) {
        const DeliveredOrder& only = delivery.orders.front();
        paper.head.order = only.number.text();
        paper.head.revision = only.revision;
        paper.patientReference = only.patientReference;
        blocks.emplace_back(BarcodeBlock{only.number});
    }
    blocks.emplace_back(Facts{{fact("To", given(std::optional{delivery.prescriber})),
                               fact("Sent on", delivery.on.text()),
                               fact("Address", given(std::optional{delivery.prescriberAddress}))}});
    blocks.emplace_back(Heading{"Delivered"});
    blocks.emplace_back(orderTable(delivery.orders));
    blocks.emplace_back(Heading{"Sent back with it"});
    blocks.emplace_back(parcelBlock(delivery.sentBack));
    blocks.emplace_back(Heading{"Disinfection"});
    blocks.emplace_back(disinfectionBlock(delivery.disinfection));
    for (const DeliveredOrder& order : delivery.orders) {
        blocks.emplace_back(Heading{"Materials and lots of order " + order.number.text()});
        blocks.emplace_back(lotBlock(order.lots));
    }
    blocks.emplace_back(WriteIn{{"Received by", "Date", "Signature"}});
    blocks.emplace_back(CautionFrame{.title = "Cautions for the practice",
                                     .paragraphs = {infectionCaution(), deferenceCaution()}});
    blocks.emplace_back(Heading{"For the patient: care"});
    for (const std::string_view care : kCare)
        blocks.emplace_back(Paragraph{.text = std::string{care}, .quiet = false});
    blocks.emplace_back(patientCautions(delivery.hazards));
    return paper;
}

}  // namespace reports
