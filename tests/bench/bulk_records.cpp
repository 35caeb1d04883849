#include "tests/bench/bulk_records.h"

#include <QSqlQuery>

#include "storage/files/prescription_file.h"
#include "storage/ledger.h"
#include "storage/party_store.h"
#include "storage/projections.h"
#include "storage/sealed_texts.h"

namespace bench {
namespace {

using domain::Done;
using domain::Result;
using storage::Transaction;

constexpr int kOrdersInATransaction = 2000;

}  // namespace

BulkRecords::BulkRecords(const actions::Laboratory& laboratory) : laboratory_{laboratory} {
    for (const char* pragma : {"PRAGMA synchronous = OFF", "PRAGMA cache_size = -262144"})
        QSqlQuery{laboratory.records().database()}.exec(pragma);
}

Result<Transaction*> BulkRecords::work() {
    if (!work_) {
        auto begun = Transaction::begin(laboratory_.records());
        if (!begun) return begun.error();
        work_.emplace(*std::move(begun));
    }
    return &*work_;
}

Result<domain::Parties> BulkRecords::partiesOf(const domain::Prescription& prescription) {
    const auto transaction = work();
    if (!transaction) return transaction.error();
    const storage::PartyStore people{laboratory_.records()};
    auto prescriber = people.prescriberCode(**transaction, prescription.identity);
    if (!prescriber) return prescriber.error();
    auto patient = people.patientCode(**transaction, *prescriber, prescription.identity);
    if (!patient) return patient.error();
    auto sealed = seal(storage::writePrescription(prescription));
    if (!sealed) return sealed.error();
    return domain::Parties{*std::move(patient), *std::move(prescriber), *std::move(sealed)};
}

Result<domain::SealedText> BulkRecords::seal(const std::string& text) {
    const auto transaction = work();
    if (!transaction) return transaction.error();
    return storage::SealedTexts{laboratory_.records()}.seal(**transaction, text);
}

Result<Done> BulkRecords::append(const std::vector<domain::Event>& events) {
    const auto transaction = work();
    if (!transaction) return transaction.error();
    return storage::Ledger{laboratory_.records()}.append(**transaction, events);
}

Result<Done> BulkRecords::append(const std::vector<domain::WorkshopEvent>& events) {
    const auto transaction = work();
    if (!transaction) return transaction.error();
    return storage::Ledger{laboratory_.records()}.append(**transaction, events);
}

Result<Done> BulkRecords::close(const domain::Order& order,
                                const std::vector<domain::Event>& events) {
    const auto transaction = work();
    if (!transaction) return transaction.error();
    if (auto put = storage::putProjections(**transaction, order, events); !put) return put;
    if (++closed_ % kOrdersInATransaction == 0) return commit();
    return Done{};
}

Result<Done> BulkRecords::commit() {
    if (!work_) return Done{};
    auto committed = work_->commit();
    work_.reset();
    return committed;
}

Result<Done> rebuild(const actions::Laboratory& laboratory) {
    auto begun = Transaction::begin(laboratory.records());
    if (!begun) return begun.error();
    Transaction work = *std::move(begun);
    if (auto rebuilt = storage::rebuildProjections(work); !rebuilt) return rebuilt;
    return work.commit();
}

}  // namespace bench
