#include "storage/records_check.h"

#include <algorithm>
#include <array>

#include "storage/kept_check.h"
#include "storage/ledger_pass.h"
#include "storage/lot_uses.h"
#include "storage/order_labels.h"
#include "storage/order_register.h"
#include "storage/sealed_texts.h"

namespace storage {
namespace {

using domain::Event;
using domain::Result;

class OrderCount : public LedgerListener {
public:
    void entry(const LedgerEvent& event) override {
        if (const auto* order = std::get_if<Event>(&event)) orders_ += order->version == 1 ? 1 : 0;
    }
    std::int64_t orders() const noexcept { return orders_; }

private:
    std::int64_t orders_{0};
};

}  // namespace

Result<RecordsReport> checkRecords(Connection& connection) {
    const Snapshot snapshot{connection};
    OrderCount count;
    const std::array checks{OrderRegister{connection}.check(), LotUses{connection}.check(),
                            OrderLabels{connection}.check(), SealedTexts{connection}.check()};
    const auto kept = keptChecks(connection);
    auto access = AccessLog{connection}.verify([&](const domain::AccessEntry& entry) {
        for (const auto& check : kept) check->access(entry);
    });
    if (!access) return access.error();
    std::vector<LedgerListener*> listeners{&count};
    std::vector<const TableCheck*> tables;
    for (const auto& check : checks) {
        listeners.push_back(check.get());
        tables.push_back(check.get());
    }
    // What rests on a broken log proves nothing more.
    if (!access->problem)
        for (const auto& check : kept) {
            listeners.push_back(check.get());
            tables.push_back(check.get());
        }
    auto ledger = readLedger(connection, listeners, Chain::Verified);
    if (!ledger) return ledger.error();
    RecordsReport report{
        .ledger = *std::move(ledger), .access = *std::move(access), .orders = count.orders()};
    if (report.ledger.problem) {
        report.problems.push_back(*report.ledger.problem);
        return report;
    }
    if (report.access.problem) report.problems.push_back(*report.access.problem);
    for (const TableCheck* check : tables)
        report.problems.insert(report.problems.end(), check->problems().begin(),
                               check->problems().end());
    return report;
}

}  // namespace storage
