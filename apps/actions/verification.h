/// Proving that the records are whole.
#pragma once

#include <string>
#include <vector>

#include "apps/actions/laboratory.h"

namespace actions {

struct Verification {
    std::int64_t entries{};  ///< of the ledger
    std::int64_t orders{};
    std::string head{};                      ///< hash of the newest entry: note it down elsewhere
    std::vector<std::string> notLookedAt{};  ///< what could not be, and why: no proof of it
    std::int64_t accessEntries{};            ///< of the access log
    std::string accessHead{};                ///< likewise
    std::vector<std::string> problems{};     ///< empty: file, chains and all tables agree
};

/// Everything: the file as the engine sees it, its tables, the chain, what is derived from it, and
/// the sealed texts; what rests on a broken part is not looked at, and words are not without the
/// identity key. ErrorCode::Unavailable when
/// there is nothing to prove, or it cannot be read.
domain::Result<Verification> verify(const Laboratory& laboratory);

}  // namespace actions
