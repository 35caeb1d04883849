/// Proving that the records are whole.
#pragma once

#include <string>
#include <vector>

#include "apps/actions/laboratory.h"

namespace actions {

struct Verification {
    std::int64_t entries{};  ///< of the ledger
    std::int64_t orders{};
    std::string head{};                   ///< hash of the newest entry: note it down elsewhere
    std::vector<std::string> problems{};  ///< empty: chain, register and sealed texts agree
};

domain::Result<Verification> verify(const Laboratory& laboratory);

}  // namespace actions
