#include "storage/projections.h"

#include "storage/lot_uses.h"
#include "storage/order_labels.h"
#include "storage/order_register.h"

namespace storage {

using domain::Done;
using domain::Result;

Result<Done> putProjections(Transaction& transaction, const domain::Order& order,
                            const std::vector<domain::Event>& events) {
    auto put = OrderRegister{transaction.connection()}.put(transaction, order);
    if (!put) return put;
    put = LotUses{transaction.connection()}.put(transaction, order, events);
    if (!put) return put;
    return OrderLabels{transaction.connection()}.put(transaction, order, events);
}

Result<Done> rebuildProjections(Transaction& transaction) try {
    transaction.journalHead();
    Connection& connection = transaction.connection();
    const auto orders = OrderRegister{connection}.rebuild(transaction);
    const auto uses = LotUses{connection}.rebuild(transaction);
    const auto labels = OrderLabels{connection}.rebuild(transaction);
    LedgerListener* const writers[] = {orders.get(), uses.get(), labels.get()};
    const auto read = readLedger(connection, writers, Chain::Trusted);
    if (!read) return read.error();
    if (read->problem)
        return domain::Error{domain::ErrorCode::Unavailable,
                             "the ledger is damaged: " + *read->problem};
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace storage
