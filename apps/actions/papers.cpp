#include "apps/actions/papers.h"

#include <algorithm>

#include "apps/actions/examination.h"
#include "apps/actions/house.h"
#include "apps/actions/order_view.h"
#include "apps/actions/paper_places.h"
#include "apps/actions/sessions.h"
#include "apps/actions/statements.h"
#include "reports/bench_sheet.h"
#include "reports/delivery_note.h"
#include "reports/prescription_sheet.h"
#include "reports/question_sheet.h"
#include "reports/sub_order.h"
#include "reports/ticket.h"
#include "reports/try_in_sheet.h"
#include "storage/order_register.h"

namespace actions {
namespace {

using domain::Error;
using domain::ErrorCode;
using domain::Result;
using domain::Stage;

/// What every paper about an order is made from.
struct Source {
    const Laboratory& laboratory;
    const OrderView& view;
    reports::PaperHead head{};
    std::string description{};  ///< "upper, III mod 1, Co-Cr"
};

Error refused(const Source& source, std::string why) {
    return {ErrorCode::Refused, "order " + source.view.order.number.text() + ": " + std::move(why)};
}

std::string patientOf(const OrderView& view) {
    return view.prescription.identity.patientReference.value_or(
        view.order.revision.parties.patient);
}

std::vector<reports::FlagOnPaper> flagsOf(const OrderView& view) {
    std::vector<reports::FlagOnPaper> flags;
    for (std::size_t i = 0; i < view.order.flags.size(); ++i) {
        const domain::OpenFlag& flag = view.order.flags[i];
        const std::string& note = view.flagNotes[i];
        flags.push_back({.reason = flag.reason,
                         .note = note.empty() ? std::nullopt : std::optional{note},
                         .person = flag.person.text(),
                         .since = flag.since});
    }
    return flags;
}

std::vector<reports::TakenCautions> takenOf(const OrderView& view) {
    std::vector<reports::TakenCautions> taken;
    for (const HistoryLine& line : view.history)
        if (const auto* accepted = std::get_if<domain::Accepted>(&line.event.what);
            accepted != nullptr && !accepted->cautions.empty())
            taken.push_back({.rules = accepted->cautions,
                             .person = line.event.person.text(),
                             .reason = line.words,
                             .at = line.event.at});
    return taken;
}

std::vector<reports::KeptOnPaper> keptOf(const OrderView& view) {
    const auto notation = notationOf(view.prescription);
    std::vector<reports::KeptOnPaper> kept;
    for (const auto& [finding, words] : keptIn(view))
        kept.push_back(
            {.place = finding->rule +
                      (finding->tooth ? " " + nameOf(*finding->tooth, notation) : std::string{}),
             .found = finding->found,
             .words = words,
             .person = finding->kept->recordedBy.text(),
             .day = finding->kept->day});
    return kept;
}

Result<reports::Paper> prescription(const Source& source) {
    return reports::prescriptionSheet(source.head, source.view.prescription,
                                      source.view.order.revision.findings, flagsOf(source.view),
                                      takenOf(source.view), keptOf(source.view));
}

Result<reports::Paper> questions(const Source& source) {
    const auto& findings = source.view.order.revision.findings;
    const auto flags = flagsOf(source.view);
    if (!reports::hasQuestions(findings, flags)) return refused(source, "there is nothing to ask");
    const auto house = houseOf(source.laboratory);
    if (!house) return house.error();
    const Trial trial{source.view.prescription, source.laboratory.today(), *house};
    return reports::questionSheet(source.head, source.view.prescription, findings, flags,
                                  [&](const domain::Finding& finding) {
                                      std::vector<std::string> offers;
                                      for (const domain::Remedy& remedy : trial.remedies(finding))
                                          offers.push_back(remedy.says);
                                      return offers;
                                  });
}

Result<reports::Paper> ticket(const Source& source) {
    const domain::Order& order = source.view.order;
    if (order.steps.empty()) return refused(source, "accept it first: it has no stages yet");
    reports::Ticket ticket{.number = order.number,
                           .patientCode = order.revision.parties.patient,
                           .description = source.description,
                           .needed = order.prescription().needed,
                           .stages = {},
                           .hazards = reports::hazardsOf(source.view.prescription)};
    for (const domain::StageStep& step : order.steps)
        ticket.stages.push_back({step.stage, step.status,
                                 step.person ? step.person->text() : std::string{},
                                 step.since ? std::optional{step.since->day()} : std::nullopt});
    return reports::ticketOf(source.head, ticket);
}

/// What was recorded at a stage but for its checklist, with units.
std::vector<reports::BenchValue> valuesAt(const domain::Order& order, Stage stage) {
    std::vector<reports::BenchValue> values;
    for (const domain::StageRecord& record : recordsOf(order, stage)) {
        if (std::holds_alternative<domain::Ticked>(record)) continue;
        const std::string told = tellRecord(record, notationOf(order.prescription()));
        const auto colon = told.find(": ");
        values.push_back(colon == std::string::npos
                             ? reports::BenchValue{told, "yes"}
                             : reports::BenchValue{told.substr(0, colon), told.substr(colon + 2)});
    }
    return values;
}

/// The newest stage anything was measured or used at, and what.
Result<reports::Paper> bench(const Source& source) {
    const domain::Order& order = source.view.order;
    reports::Bench bench{.number = order.number,
                         .patientCode = order.revision.parties.patient,
                         .description = source.description,
                         .hazards = reports::hazardsOf(source.view.prescription)};
    for (const domain::StageStep& step : order.steps)
        if (auto values = valuesAt(order, step.stage); !values.empty()) {
            bench.stage = step.stage;
            bench.values = std::move(values);
        }
    if (bench.values.empty()) return refused(source, "nothing was recorded at the bench yet");
    return reports::benchSheet(source.head, bench);
}

std::optional<domain::Disinfection> disinfectionAt(const domain::Order& order, Stage stage) {
    const auto done = domain::newest<domain::Disinfected>(order, stage);
    return done ? std::optional{done->disinfection} : std::nullopt;
}

Result<reports::Paper> tryIn(const Source& source) {
    const domain::Order& order = source.view.order;
    const domain::StageStep* step = currentStep(order);
    if (step == nullptr || rowOf(step->stage).kind != domain::StageKind::AtPractice)
        return refused(source, "no try-in is due");
    const bool teeth = step->stage == Stage::ToothTryIn;
    const domain::Identity& identity = source.view.prescription.identity;
    return reports::tryInSheet(
        source.head,
        {.kind = teeth ? reports::TryInKind::Teeth : reports::TryInKind::Framework,
         .number = order.number,
         .patientReference = patientOf(source.view),
         .prescriber = identity.prescriberName.value_or(order.revision.parties.prescriber),
         .description = source.description,
         .wantedBack = {},
         .parcel = {teeth ? "set-up on the cast" : "framework on the cast", "this sheet"},
         .questions = {},
         .disinfection = disinfectionAt(order, step->stage),
         .hazards = reports::hazardsOf(source.view.prescription)});
}

Result<reports::Paper> statement(const Source& source) {
    return issuedStatement(source.laboratory, source.view);
}

Result<reports::DeliveredOrder> deliveredOf(const Source& source, const OrderView& view) {
    const auto row = storage::OrderRegister{source.laboratory.records()}.find(view.order.number);
    if (!row) return row.error();
    auto lots = lotLines(source.laboratory, view.order);
    if (!lots) return lots.error();
    const bool issued =
        domain::newest<domain::StatementIssued>(view.order, Stage::Delivery).has_value();
    return reports::DeliveredOrder{
        .number = view.order.number,
        .revision = static_cast<int>(view.order.revisionNumber),
        .patientReference = patientOf(view),
        .device = (*row)->description,
        .statementNumber = issued ? view.order.number.text() + "-S" : std::string{},
        .lots = *std::move(lots)};
}

Result<reports::Paper> delivery(const Source& source) {
    const domain::Order& order = source.view.order;
    const domain::StageStep* step = currentStep(order);
    const bool leaves = order.status == domain::OrderStatus::Delivered ||
                        (step != nullptr && step->stage == Stage::Delivery);
    if (!leaves) return refused(source, "it is not ready for delivery");
    const domain::Identity& identity = source.view.prescription.identity;
    reports::Delivery note{.prescriber = identity.prescriberName.value_or(""),
                           .prescriberAddress = identity.prescriberAddress.value_or(""),
                           .on = source.laboratory.today(),
                           .disinfection = disinfectionAt(order, Stage::Delivery),
                           .hazards = reports::hazardsOf(source.view.prescription)};
    auto own = deliveredOf(source, source.view);
    if (!own) return own.error();
    note.orders.push_back(*std::move(own));
    for (const domain::OrderNumber& number : source.view.companions) {
        const auto companion = actions::order(source.laboratory, number);
        if (!companion) return companion.error();
        const domain::StageStep* at = currentStep(companion->order);
        if (companion->order.status != domain::OrderStatus::Delivered &&
            (at == nullptr || at->stage != Stage::Delivery))
            continue;
        auto other = deliveredOf(source, *companion);
        if (!other) return other.error();
        note.orders.push_back(*std::move(other));
    }
    for (const domain::Enclosure& enclosure : source.view.prescription.enclosures)
        if (isPhysical(enclosure.kind)) note.sentBack.push_back(wordsOf(enclosure.kind));
    return reports::deliveryNote(source.head, note);
}

Result<reports::Paper> subOrder(const Source& source) {
    const domain::StageStep* step = currentStep(source.view.order);
    if (step == nullptr || !step->away) return refused(source, "no stage of it is at another site");
    const auto workshop = source.laboratory.workshop();
    if (!workshop) return workshop.error();
    const auto site = (*workshop)->sites.find(*step->madeAt);
    if (site == (*workshop)->sites.end())
        return refused(source, "there is no site " + step->madeAt->text());
    return reports::subOrder(source.head,
                             {.number = source.view.order.number,
                              .site = site->second,
                              .stage = step->stage,
                              .patientCode = source.view.order.revision.parties.patient,
                              .wantedBack = {}},
                             source.view.prescription);
}

Result<reports::Paper> composed(const Source& source, Paper paper) {
    switch (paper) {
        case Paper::PrescriptionSheet:
            return prescription(source);
        case Paper::QuestionSheet:
            return questions(source);
        case Paper::Ticket:
            return ticket(source);
        case Paper::BenchSheet:
            return bench(source);
        case Paper::TryInSheet:
            return tryIn(source);
        case Paper::Statement:
            return statement(source);
        case Paper::DeliveryNote:
            return delivery(source);
        case Paper::SubOrder:
            return subOrder(source);
    }
    return refused(source, "there is no such paper");
}

}  // namespace

Result<std::filesystem::path> print(const Laboratory& laboratory, const domain::OrderNumber& number,
                                    Paper paper, const std::filesystem::path& file,
                                    const Who& who) {
    if (const auto allowed = authorise(laboratory, who, domain::Permission::PrintPapers); !allowed)
        return allowed.error();
    const auto view = order(laboratory, number);
    if (!view) return view.error();
    const auto row = storage::OrderRegister{laboratory.records()}.find(number);
    if (!row) return row.error();
    auto letter = paperHead(laboratory, who);
    if (!letter) return letter.error();
    reports::PaperHead head = *std::move(letter);
    head.order = number.text();
    head.revision = static_cast<int>(view->order.revisionNumber);
    head.digest = view->digest;
    const auto sheet = composed({laboratory, *view, head, (*row)->description}, paper);
    if (!sheet) return sheet.error();
    const bool isIssued = paper == Paper::Statement;
    const std::int64_t revision = view->order.revisionNumber;
    const std::string kind{domain::codeOf(paper)};
    const Printed printed{number.text(), revision, kind};
    if (file.empty())
        return writePaper(laboratory, *sheet,
                          number.text() + '-' + kind + "-r" + std::to_string(revision), isIssued,
                          printed, who);
    if (auto written = writePaperTo(laboratory, *sheet, file, isIssued, printed, who); !written)
        return written.error();
    return file;
}

}  // namespace actions
