#include "apps/actions/orders.h"

#include <QCryptographicHash>
#include <QUuid>
#include <algorithm>
#include <functional>

#include "apps/actions/house.h"
#include "domain/production/evolve.h"
#include "storage/files/prescription_file.h"
#include "storage/ledger.h"
#include "storage/order_register.h"
#include "storage/party_store.h"
#include "storage/sealed_texts.h"
#include "storage/transaction.h"

namespace actions {
namespace {

using domain::Command;
using domain::Error;
using domain::ErrorCode;
using domain::Event;
using domain::Order;
using domain::OrderNumber;
using domain::Prescription;
using domain::Result;
using domain::Revision;
using domain::SealedText;
using storage::Transaction;

/// Builds the command once the transaction is open, since sealed texts and new numbers need it.
using Prepare = std::function<Result<Command>(Transaction&)>;

Error noSuchOrder(const OrderNumber& number) {
    return {ErrorCode::Unusable, "no such order: " + number.text()};
}

/// What a key was used for before, if it is the same deed; a refusal if it was another.
Result<std::optional<Outcome>> recorded(const Laboratory& laboratory,
                                        const std::optional<OrderNumber>& number,
                                        domain::EventKind kind, const std::string& key) {
    const storage::Ledger ledger{laboratory.records()};
    const auto events = ledger.withKey(key);
    if (!events) return events.error();
    if (events->empty()) return std::optional<Outcome>{};
    const Event& first = events->front();
    if (kindOf(first) != kind || (number && first.order != *number))
        return Error{ErrorCode::Refused, "this key was used for something else: order " +
                                             first.order.text() + ", " + wordsOf(kindOf(first)) +
                                             ", " + first.at.text()};
    const auto order = storage::loadOrder(laboratory.records(), first.order);
    if (!order) return order.error();
    return std::optional{Outcome{**order, true}};
}

/// The one way anything happens to an order: one transaction in which the key is looked up, the
/// command prepared and decided, the events appended, and the register brought up to date.
Result<Outcome> carryOut(const Laboratory& laboratory, const std::optional<OrderNumber>& number,
                         domain::EventKind kind, const Who& who, const Prepare& prepare) {
    const std::string key = who.key.empty()
                                ? QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString()
                                : who.key;
    auto transaction = Transaction::begin(laboratory.records());
    if (!transaction) return transaction.error();
    Transaction work = *std::move(transaction);
    auto before = recorded(laboratory, number, kind, key);
    if (!before) return before.error();
    if (*before) return **std::move(before);

    std::optional<Order> order;
    if (number) {
        auto loaded = storage::loadOrder(laboratory.records(), *number);
        if (!loaded) return loaded.error();
        if (!*loaded) return noSuchOrder(*number);
        order = *std::move(loaded);
    }
    const auto command = prepare(work);
    if (!command) return command.error();
    const auto events = decide(order, *command, {laboratory.now(), who.person, key});
    if (!events) return events.error();
    for (const Event& event : *events) order = evolve(std::move(order), event);
    storage::Ledger ledger{laboratory.records()};
    if (auto appended = ledger.append(work, *events); !appended) return appended.error();
    const storage::OrderRegister orders{laboratory.records()};
    if (auto put = orders.put(work, *order); !put) return put.error();
    if (auto committed = work.commit(); !committed) return committed.error();
    return Outcome{*std::move(order), false};
}

Result<std::optional<SealedText>> seal(const Laboratory& laboratory, Transaction& work,
                                       const std::optional<std::string>& text) {
    if (!text || text->empty()) return std::optional<SealedText>{};
    const storage::SealedTexts texts{laboratory.records()};
    auto sealed = texts.seal(work, *text);
    if (!sealed) return sealed.error();
    return std::optional{*std::move(sealed)};
}

/// A prescription made fit for the ledger: examined, its people turned into codes, and the whole
/// of it, names included, sealed outside.
Result<Revision> revisionOf(const Laboratory& laboratory, Transaction& work,
                            const Prescription& prescription) {
    const auto house = houseOf(laboratory);
    if (!house) return house.error();
    const storage::PartyStore people{laboratory.records()};
    auto prescriber = people.prescriberCode(work, prescription.identity);
    if (!prescriber) return prescriber.error();
    auto patient = people.patientCode(work, *prescriber, prescription.identity);
    if (!patient) return patient.error();
    const storage::SealedTexts texts{laboratory.records()};
    auto sealed = texts.seal(work, storage::writePrescription(prescription));
    if (!sealed) return sealed.error();
    return Revision{withoutIdentity(prescription),
                    {*std::move(patient), *std::move(prescriber), *std::move(sealed)},
                    examine(prescription, laboratory.today(), house->limits, house->guides)};
}

/// The same prescription logged again without a key of its own is the same deed.
std::string keyOf(const Prescription& prescription) {
    const std::string text = storage::writePrescription(prescription);
    const QByteArray digest =
        QCryptographicHash::hash(QByteArrayView{text.data(), static_cast<qsizetype>(text.size())},
                                 QCryptographicHash::Sha256);
    return "prescription-" + digest.toHex().toStdString();
}

}  // namespace

Result<Outcome> log(const Laboratory& laboratory, const std::filesystem::path& file,
                    const Who& who) {
    const auto prescription = storage::loadPrescription(file);
    if (!prescription) return prescription.error();
    return log(laboratory, *prescription, who);
}

Result<Outcome> log(const Laboratory& laboratory, const Prescription& prescription,
                    const Who& who) {
    const Who keyed{who.person, who.key.empty() ? keyOf(prescription) : who.key};
    return carryOut(laboratory, {}, domain::EventKind::Received, keyed,
                    [&](Transaction& work) -> Result<Command> {
                        const storage::OrderRegister orders{laboratory.records()};
                        const auto number = orders.nextNumber(work, laboratory.today());
                        if (!number) return number.error();
                        auto revision = revisionOf(laboratory, work, prescription);
                        if (!revision) return revision.error();
                        return Command{domain::Receive{*number, *std::move(revision)}};
                    });
}

Result<Outcome> accept(const Laboratory& laboratory, const OrderNumber& number,
                       const std::optional<std::string>& reason, const Who& who) {
    return carryOut(laboratory, number, domain::EventKind::Accepted, who,
                    [&](Transaction& work) -> Result<Command> {
                        auto sealed = seal(laboratory, work, reason);
                        if (!sealed) return sealed.error();
                        return Command{domain::Accept{*std::move(sealed)}};
                    });
}

Result<Outcome> start(const Laboratory& laboratory, const OrderNumber& number,
                      std::optional<domain::Stage> stage, const Who& who) {
    return carryOut(laboratory, number, domain::EventKind::StageStarted, who,
                    [&](Transaction&) -> Result<Command> { return Command{domain::Start{stage}}; });
}

Result<Outcome> finish(const Laboratory& laboratory, const OrderNumber& number,
                       std::optional<domain::Stage> stage, const Who& who) {
    return carryOut(
        laboratory, number, domain::EventKind::StageDone, who,
        [&](Transaction&) -> Result<Command> { return Command{domain::Finish{stage}}; });
}

Result<Outcome> flag(const Laboratory& laboratory, const OrderNumber& number,
                     domain::FlagReason reason, const std::optional<std::string>& note,
                     const Who& who) {
    return carryOut(laboratory, number, domain::EventKind::Flagged, who,
                    [&](Transaction& work) -> Result<Command> {
                        auto sealed = seal(laboratory, work, note);
                        if (!sealed) return sealed.error();
                        return Command{domain::Flag{reason, *std::move(sealed)}};
                    });
}

Result<Outcome> answer(const Laboratory& laboratory, const OrderNumber& number,
                       const std::optional<std::string>& words,
                       const std::optional<Prescription>& prescription, const Who& who) {
    return carryOut(laboratory, number, domain::EventKind::Answered, who,
                    [&](Transaction& work) -> Result<Command> {
                        auto sealed = seal(laboratory, work, words);
                        if (!sealed) return sealed.error();
                        domain::Answer answer{.words = *std::move(sealed)};
                        if (prescription) {
                            auto revision = revisionOf(laboratory, work, *prescription);
                            if (!revision) return revision.error();
                            answer.revision = *std::move(revision);
                        }
                        return Command{std::move(answer)};
                    });
}

}  // namespace actions
