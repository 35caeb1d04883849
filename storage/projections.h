/// Everything derived from the ledger, kept together: the order register, the uses of lots and the
/// labels of orders.
#pragma once

#include "domain/production/order.h"
#include "storage/transaction.h"

namespace storage {

/// After the ledger has taken the events of an order.
domain::Result<domain::Done> putProjections(Transaction& transaction, const domain::Order& order,
                                            const std::vector<domain::Event>& events);

/// Writes all of it anew from the ledger, read once. ErrorCode::Unavailable where that is damaged.
domain::Result<domain::Done> rebuildProjections(Transaction& transaction);

}  // namespace storage
