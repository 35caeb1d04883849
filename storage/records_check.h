/// Proving that the ledger is whole and that every table says what follows from it, in one reading.
#pragma once

#include "storage/access_log.h"
#include "storage/ledger.h"

namespace storage {

struct RecordsReport {
    LedgerReport ledger{};
    AccessReport access{};
    std::int64_t orders{};
    std::vector<std::string> problems{};  ///< one sentence each; empty: everything agrees
};

/// Where the chain of the ledger is broken, that alone is reported: what is derived from it proves
/// nothing more. ErrorCode::Unavailable when the records cannot be read.
domain::Result<RecordsReport> checkRecords(Connection& connection);

}  // namespace storage
