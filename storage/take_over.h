/// Committing to what older records hold beside the ledger, when they are brought to a schema that
/// compares it.
#pragma once

#include "storage/transaction.h"

namespace storage {

/// Once, where the ledger has entries and none that commits to a setting: appends what is there as
/// one event, "taken over as found", at the time of the newest entry, by nobody ("upgrade"), and
/// the sessions and failed attempts to the access log. Part of the last step of the schema.
domain::Result<domain::Done> takeOver(Transaction& transaction);

}  // namespace storage
