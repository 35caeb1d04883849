#include "apps/actions/statements.h"

#include <QCryptographicHash>
#include <algorithm>

#include "apps/actions/house.h"
#include "apps/actions/legal_lack.h"
#include "apps/actions/statement_record.h"
#include "apps/actions/unit_of_work.h"
#include "storage/files/prescription_file.h"
#include "storage/ledger.h"
#include "storage/lot_uses.h"
#include "storage/order_register.h"
#include "storage/sealed_texts.h"

namespace actions {
namespace {

using domain::Error;
using domain::ErrorCode;
using domain::NotApplicable;
using domain::Order;
using domain::OrderNumber;
using domain::Result;
using domain::WhereApplicable;

constexpr std::string_view kNone = "none";
constexpr std::size_t kShortDigest = 12;

WhereApplicable<std::string> answered(const std::optional<std::string>& text) {
    if (!text || text->empty()) return {};
    if (*text == kNone) return NotApplicable{};
    return *text;
}

WhereApplicable<domain::Party> party(const std::optional<std::string>& text) {
    if (!text || text->empty()) return {};
    if (*text == kNone) return NotApplicable{};
    const auto parted = text->find(';');
    domain::Party party{.name = text->substr(0, parted), .address = {}};
    if (parted != std::string::npos) {
        const auto begin = text->find_first_not_of(' ', parted + 1);
        if (begin != std::string::npos) party.address = text->substr(begin);
    }
    return party;
}

std::optional<domain::ConformityDeclaration> conformity(const Declared& declared) {
    if (!declared.conforms) return {};
    domain::ConformityDeclaration declaration;
    if (declared.exception)
        declaration.exceptions.push_back({*declared.exception, declared.grounds.value_or("")});
    return declaration;
}

std::string digestOf(const domain::Prescription& prescription) {
    const std::string text = storage::writePrescription(withoutIdentity(prescription));
    return QCryptographicHash::hash(
               QByteArrayView{text.data(), static_cast<qsizetype>(text.size())},
               QCryptographicHash::Sha256)
        .toHex()
        .toStdString();
}

/// Every place a stage of the device as it stands was worked at.
std::vector<domain::ManufacturingSite> sitesOf(const Order& order, const Letterhead& head,
                                               const domain::Workshop& workshop) {
    std::vector<domain::ManufacturingSite> sites;
    for (const domain::StageStep& step : order.steps) {
        if (!step.madeAt) continue;
        const auto site = workshop.sites.find(*step.madeAt);
        const domain::Site known = site == workshop.sites.end() ? domain::Site{} : site->second;
        sites.push_back({{known.name, known.address}, wordsOf(step.stage)});
    }
    const std::string own = sites.empty() ? "every stage" : "every stage but those named below";
    sites.insert(sites.begin(), {{head.name, head.address}, own});
    return sites;
}

/// The event that issued the statement that holds for the device as it stands.
const HistoryLine* issuing(const OrderView& view, const domain::SealedText& sealed) {
    for (const HistoryLine& line : view.history)
        if (const auto* recorded = std::get_if<domain::Recorded>(&line.event.what))
            for (const domain::StageRecord& record : recorded->records)
                if (record == domain::StageRecord{domain::StatementIssued{sealed}}) return &line;
    return nullptr;
}

std::optional<std::string> compositionOf(const domain::Certificate& certificate) {
    const std::pair<std::string_view, std::optional<domain::Share>> shares[] = {
        {"Ni", certificate.nickel}, {"Be", certificate.beryllium}, {"Cd", certificate.cadmium}};
    std::string text = certificate.material ? wordsOf(*certificate.material) : std::string{};
    if (certificate.type) text += (text.empty() ? "" : ", ") + wordsOf(*certificate.type);
    for (const auto& [sign, share] : shares)
        if (share)
            text += (text.empty() ? "" : ", ") + std::string{sign} + ' ' + domain::text(*share);
    return text.empty() ? std::nullopt : std::optional{text};
}

/// What is made, and what of it the prescriber kept as prescribed.
std::vector<std::string> characteristicsOf(const OrderView& view) {
    auto lines = reports::characteristicLines(view.prescription);
    const auto notation = notationOf(view.prescription);
    for (const auto& [finding, words] : keptIn(view))
        lines.push_back(
            "Kept as prescribed by the prescriber: " +
            (finding->tooth ? nameOf(*finding->tooth, notation) + ", " : std::string{}) +
            finding->found + "; reason given: " + words);
    return lines;
}

}  // namespace

Result<std::vector<reports::LotLine>> lotLines(const Laboratory& laboratory, const Order& order) {
    const auto workshop = laboratory.workshop();
    if (!workshop) return workshop.error();
    std::vector<reports::LotLine> lines;
    for (const domain::StageStep& step : order.steps)
        for (const domain::StageRecord& record : recordsOf(order, step.stage)) {
            const auto* used = std::get_if<domain::LotUsed>(&record);
            if (used == nullptr) continue;
            const auto known = (*workshop)->lots.find(used->lot);
            if (known == (*workshop)->lots.end()) continue;
            const domain::Lot& lot = known->second.lot;
            lines.push_back({.part = wordsOf(lot.kind),
                             .material = lot.product,
                             .maker = lot.maker,
                             .lot = lot.makersNumber,
                             .composition = compositionOf(lot.certificate)});
        }
    return lines;
}

Result<domain::Statement> statementOf(const Laboratory& laboratory, const OrderView& view,
                                      const Declared& declared) {
    const auto head = letterhead(laboratory);
    if (!head) return head.error();
    const auto workshop = laboratory.workshop();
    if (!workshop) return workshop.error();
    const auto row = storage::OrderRegister{laboratory.records()}.find(view.order.number);
    if (!row) return row.error();
    const domain::Identity& identity = view.prescription.identity;
    return domain::Statement{
        .manufacturer = {head->name, head->address},
        .sites = sitesOf(view.order, *head, **workshop),
        .representative = party(declared.representative),
        .device = view.order.number,
        .description = (*row)->description,
        .patientReference = identity.patientReference.value_or(
            identity.patientName.value_or(view.order.revision.parties.patient)),
        .exclusiveUse = true,
        .prescriber = {identity.prescriberName.value_or(std::string{}),
                       identity.prescriberRegistration.value_or(std::string{}),
                       answered(declared.institution)},
        .characteristics = {characteristicsOf(view), static_cast<int>(view.order.revisionNumber),
                            digestOf(view.prescription)},
        .conformity = conformity(declared),
        .substances = answered(declared.substances)};
}

namespace {

/// All a statement would say now.
Result<StatementRecord> recordOf(const Laboratory& laboratory, const OrderView& view,
                                 const Declared& declared) {
    auto head = letterhead(laboratory);
    if (!head) return head.error();
    auto statement = statementOf(laboratory, view, declared);
    if (!statement) return statement.error();
    auto lots = lotLines(laboratory, view.order);
    if (!lots) return lots.error();
    auto terms = retentionOf(laboratory);
    if (!terms) return terms.error();
    return StatementRecord{*std::move(head),
                           {.number = view.order.number.text() + "-S",
                            .statement = *std::move(statement),
                            .lots = *std::move(lots),
                            .retention = *std::move(terms),
                            .delivered = {},
                            .hazards = {}}};
}

}  // namespace

Result<Outcome> issueStatement(const Laboratory& laboratory, const OrderNumber& number,
                               const Declared& declared, const Who& who) {
    const std::string command =
        commandOf({"statement", number.text(), wordIfAny(declared.representative),
                   wordIfAny(declared.institution), wordIfAny(declared.substances),
                   declared.conforms ? "conforms" : "", wordIfAny(declared.exception),
                   wordIfAny(declared.grounds)});
    return perform(
        laboratory, who, {domain::Permission::IssueStatements, command, number, true},
        [&](UnitOfWork& work) -> Result<Order> {
            const auto view = order(laboratory, number);
            if (!view) return view.error();
            if (domain::newest<domain::StatementIssued>(view->order, domain::Stage::Delivery))
                return Error{ErrorCode::Refused, "order " + number.text() +
                                                     ": its statement is issued already; print it"};
            const auto record = recordOf(laboratory, *view, declared);
            if (!record) return record.error();
            if (const auto lacking = lackingIn(record->issued.statement); !lacking.empty())
                return Error{ErrorCode::Refused,
                             "order " + number.text() + ": the statement lacks: " +
                                 domain::listed(lacking, domain::Notation::Iso3950)};
            auto sealed = work.seal(writeStatement(*record));
            if (!sealed) return sealed.error();
            return work.apply(number,
                              domain::Record{.stage = domain::Stage::Delivery,
                                             .records = {domain::StatementIssued{**sealed}}});
        });
}

Result<reports::Paper> issuedStatement(const Laboratory& laboratory, const OrderView& view) {
    const auto issued =
        domain::newest<domain::StatementIssued>(view.order, domain::Stage::Delivery);
    if (!issued)
        return Error{ErrorCode::Refused,
                     "order " + view.order.number.text() + ": no statement is issued yet"};
    const auto text = storage::SealedTexts{laboratory.records()}.open(issued->statement);
    if (!text) return text.error();
    if (!*text)
        return Error{ErrorCode::Refused,
                     "order " + view.order.number.text() + ": its statement was erased"};
    auto record = readStatement(**text);
    if (!record) return record.error();
    StatementRecord kept = *std::move(record);
    kept.issued.hazards = reports::hazardsOf(view.prescription);
    const HistoryLine* line = issuing(view, issued->statement);
    const reports::PaperHead head{.laboratory = kept.head.name,
                                  .address = kept.head.address,
                                  .contact = kept.head.contact,
                                  .order = view.order.number.text(),
                                  .revision = kept.issued.statement.characteristics.revision,
                                  .printedAt = line->event.at,
                                  .printedBy = line->event.person.text(),
                                  .digest = issued->statement.digest.substr(0, kShortDigest),
                                  .size = reports::PageSize::A4};
    return deviceStatement(head, kept.issued);
}

}  // namespace actions
