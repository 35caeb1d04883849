#include "tests/reports/sample_papers.h"

#include "domain/route/route.h"
#include "reports/words.h"
#include "tests/reports/printed.h"
#include "tests/support/designs.h"
#include "tests/support/statement.h"

namespace samples {

using namespace domain;
using namespace reports;

namespace {

Date day(std::string_view text) { return Date::parse(text).value(); }

Hazards hazards() { return hazardsOf(support::upperClassIIIMod1()); }
std::string description() { return caseText(support::upperClassIIIMod1()); }

std::vector<LotLine> lots() {
    return {{.part = "framework",
             .material = "cobalt-chromium casting alloy",
             .maker = "Northmoor Alloys",
             .lot = "NA-2207",
             .composition = "Co 63 %, Cr 29 %, Mo 6 %, others below 1 %"},
            {.part = "denture base",
             .material = "heat-cured resin, powder and liquid",
             .maker = "Larkfield Resins",
             .lot = "P 5531 / L 5528",
             .composition = {}},
            {.part = "teeth",
             .material = "polymer teeth",
             .maker = "Bell Lane Teeth",
             .lot = "B 90-14",
             .composition = {}}};
}

}  // namespace

OrderNumber number(int count) { return OrderNumber::make(26, count).value(); }

Ticket ticket() {
    Ticket made{.number = number(),
                .patientCode = "P-1044",
                .description = description(),
                .needed = day("2026-12-18"),
                .stages = {},
                .hazards = hazards()};
    for (const Stage stage : stagesOf(Route::CastFramework))
        made.stages.push_back({.stage = stage, .status = {}, .person = {}, .on = {}});
    made.stages[0] = {Stage::Receipt, StageStatus::Done, "MK", day("2026-11-25")};
    made.stages[1] = {Stage::Survey, StageStatus::InHand, "tech-2", day("2026-11-26")};
    return made;
}

TryIn tryIn(TryInKind kind) {
    const bool framework = kind == TryInKind::Framework;
    TryIn made{.kind = kind,
               .number = number(),
               .patientReference = "P-1044",
               .prescriber = "Dr Inés Quintañar",
               .description = description(),
               .wantedBack = day("2026-12-07"),
               .parcel = {"framework on the working cast", "opposing cast", "jaw relation record"},
               .questions = {},
               .disinfection = {},
               .hazards = hazards()};
    if (framework)
        made.disinfection = Disinfection{"isopropyl alcohol 70 %", 10_min};
    else
        made.questions = {"The 14 shows wear at its cusps. Shall the artificial 15 show it too?"};
    return made;
}

IssuedStatement issuedStatement() {
    return {.number = "S-26-0012",
            .statement = support::completeStatement(),
            .lots = lots(),
            .retention = {*retentionTermOf("gb"), *retentionTermOf("eu")},
            .delivered = day("2026-12-17"),
            .hazards = hazards()};
}

Delivery delivery(bool two) {
    Delivery made{
        .prescriber = "Dr Inés Quintañar",
        .prescriberAddress = "Practice at the Old Pier, 3 Pier Road, Westhaven",
        .on = day("2026-12-17"),
        .orders = {{.number = number(),
                    .revision = 2,
                    .patientReference = "P-1044",
                    .device = description(),
                    .statementNumber = "S-26-0012",
                    .lots = lots()}},
        .sentBack = {"working cast", "opposing cast", "jaw relation record", "present denture"},
        .disinfection = Disinfection{"isopropyl alcohol 70 %", 10_min},
        .hazards = hazards()};
    if (two) {
        made.orders.push_back({.number = number(13),
                               .revision = 1,
                               .patientReference = "P-1050",
                               .device = "Reline, lower arch",
                               .statementNumber = {},
                               .lots = {}});
        made.disinfection.reset();
        made.sentBack.clear();
    }
    return made;
}

Recall recall() {
    return {.prescriber = "Dr Inés Quintañar",
            .prescriberAddress = "Practice at the Old Pier, 3 Pier Road, Westhaven",
            .issued = day("2027-02-03"),
            .material = "heat-cured resin, liquid",
            .lot = "L 5528",
            .maker = "Larkfield Resins",
            .reason =
                "The maker reports that the inhibitor of this lot was dosed too low. Dentures "
                "made with it may hold more residual monomer than ISO 20795-1 allows.",
            .toDo = {"Find the patients named above and tell them.",
                     "Decide for each what shall be done, and write it beside the order.",
                     "Send this letter back to us, also where a patient was not reached."},
            .devices = {{.number = number(),
                         .patientReference = "P-1044",
                         .device = description(),
                         .delivered = day("2026-12-17")},
                        {.number = number(31),
                         .patientReference = "P-1071",
                         .device = "Interim denture of resin, upper arch",
                         .delivered = day("2027-01-15")}}};
}

Bench bench() {
    return {.number = number(),
            .patientCode = "P-1044",
            .description = description(),
            .stage = Stage::Casting,
            .values = {{"Mass of the wax pattern with sprues", "3.4 g"},
                       {"Alloy for it, density 8.3 g/cm3", "29.7 g"},
                       {"Preheating of the mould", "950 deg C, 60 min"}},
            .notes = {"Mass of alloy = mass of wax x density of alloy / density of wax (0.95 "
                      "g/cm3)."},
            .hazards = hazards()};
}

std::vector<Sample> all() {
    const PaperHead head = printed::head();
    return {{"ticket", ticketOf(head, ticket())},
            {"try_in_framework", tryInSheet(head, tryIn(TryInKind::Framework))},
            {"try_in_teeth", tryInSheet(head, tryIn(TryInKind::Teeth))},
            {"statement", deviceStatement(head, issuedStatement()).value()},
            {"delivery_note", deliveryNote(head, delivery())},
            {"delivery_note_of_two", deliveryNote(head, delivery(true))},
            {"recall_letter", recallLetter(head, recall())},
            {"bench_sheet", benchSheet(head, bench())}};
}

}  // namespace samples
