#include "reports/try_in_sheet.h"

#include <span>

#include "reports/dispatch.h"
#include "reports/phrases.h"

namespace reports {
namespace {

// That these are looked at is common practice, no source; the clearance for resin is from memory.
constexpr std::string_view kFrameworkChecks[] = {
    "Seat: it goes to place along its path, without force",
    "Rests: each lies fully in its seat",
    "No rocking, pressed on each rest in turn",
    "Border: no gap, no pressure on the mucosa, no blanching",
    "Clasps: tips engage, passive once seated, opposed",
    "Clearance: clear of the opposing teeth, 0.5 to 1 mm at least where resin covers it",
    "Occlusion: natural teeth meet as without it",
    "Path of insertion and removal as prescribed",
};
constexpr std::string_view kTeethChecks[] = {
    "Seat: rests seated, no rocking, base in contact",
    "Midline and lip line",
    "Shade, by daylight",
    "Mould and arrangement of the teeth",
    "Vertical dimension",
    "Occlusion in closure",
    "Occlusion in excursions",
    "Lip support and speech",
    "Approved by the patient",
};

std::span<const std::string_view> checksOf(TryInKind kind) {
    switch (kind) {
        case TryInKind::Framework:
            return kFrameworkChecks;
        case TryInKind::Teeth:
            return kTeethChecks;
    }
    return {};
}

std::string_view nameOf(TryInKind kind) {
    switch (kind) {
        case TryInKind::Framework:
            return "Framework try-in";
        case TryInKind::Teeth:
            return "Tooth try-in";
    }
    return {};
}

Table checkTable(TryInKind kind) {
    Table table{.columns = {"Tick what is in order", "Where not: what, and where"},
                .shares = {0.50, 0.50},
                .writable = true};
    for (const std::string_view check : checksOf(kind)) {
        table.ticks.push_back(CheckState::Open);
        table.rows.push_back({std::string{check}, ""});
    }
    return table;
}

Table decisionTable() {
    return {.columns = {"Tick one", "For what, or why"},
            .shares = {0.40, 0.60},
            .rows = {{"Go on as prescribed", ""},
                     {"Back to the laboratory for", ""},
                     {"Remake, because", ""}},
            .ticks = std::vector<CheckState>(3, CheckState::Open),
            .writable = true};
}

void addQuestions(std::vector<Block>& blocks, const std::vector<std::string>& questions) {
    if (questions.empty()) return;
    blocks.emplace_back(Heading{"The laboratory asks"});
    for (const std::string& question : questions) {
        blocks.emplace_back(Paragraph{.text = question, .quiet = false});
        blocks.emplace_back(WritingLines{1});
    }
}

CautionFrame cautionsOf(const TryIn& tryIn) {
    CautionFrame frame{.title = "Cautions", .paragraphs = wearerCautions(tryIn.hazards)};
    if (tryIn.hazards.metal)
        frame.paragraphs.emplace_back(
            "Metal: hypochlorite can attack it. Disinfect it with an agent its maker allows.");
    if (tryIn.kind == TryInKind::Teeth)
        frame.paragraphs.emplace_back(
            "Wax: warmth and biting move the teeth. Cool it in the mouth, and do not let it be "
            "chewed on.");
    frame.paragraphs.emplace_back(
        "Small parts: guard the airway. If it has to be forced, it does not fit: do not force it.");
    frame.paragraphs.push_back(infectionCaution());
    frame.paragraphs.push_back(deferenceCaution());
    return frame;
}

}  // namespace

Paper tryInSheet(const PaperHead& head, const TryIn& tryIn) {
    Paper paper{.head = head,
                .name = std::string{nameOf(tryIn.kind)},
                .patientReference = tryIn.patientReference,
                .blocks = {}};
    paper.head.order = tryIn.number.text();
    auto& blocks = paper.blocks;
    blocks.emplace_back(Heading{tryIn.description});
    blocks.emplace_back(BarcodeBlock{tryIn.number});
    blocks.emplace_back(Facts{{fact("For", given(std::optional{tryIn.prescriber})),
                               fact("Wanted back", given(tryIn.wantedBack))}});
    blocks.emplace_back(Paragraph{.text = "Please fill in at the chair, sign, and send this sheet "
                                          "back with the work. Until it is here, work waits.",
                                  .quiet = false});
    blocks.emplace_back(Heading{"In the parcel"});
    blocks.emplace_back(parcelBlock(tryIn.parcel));
    blocks.emplace_back(disinfectionBlock(tryIn.disinfection));
    blocks.emplace_back(Heading{"In the mouth"});
    blocks.emplace_back(checkTable(tryIn.kind));
    addQuestions(blocks, tryIn.questions);
    blocks.emplace_back(Heading{"Other findings"});
    blocks.emplace_back(WritingLines{3});
    blocks.emplace_back(Heading{"What next"});
    blocks.emplace_back(decisionTable());
    blocks.emplace_back(WriteIn{{"Prescriber, in capitals", "Signature", "Date"}});
    blocks.emplace_back(Heading{"Before it goes back to the laboratory"});
    blocks.emplace_back(disinfectionBlock({}));
    blocks.emplace_back(cautionsOf(tryIn));
    return paper;
}

}  // namespace reports
