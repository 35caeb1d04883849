/// The laboratory as it stands: folded from its events in the ledger, and what is left of each lot
/// from the uses of all orders.
#pragma once

#include "domain/workshop/workshop.h"
#include "storage/connection.h"

namespace storage {

domain::Result<domain::Workshop> loadWorkshop(Connection& connection);

}  // namespace storage
