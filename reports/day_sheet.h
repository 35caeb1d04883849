/// The day sheet: where the records stood, signed, on paper that nobody can change afterwards.
#pragma once

#include <string>

#include "reports/paper.h"

namespace reports {

struct DaySheet {
    domain::Instant at{};
    std::int64_t entries{};        ///< of the ledger
    std::string head{};            ///< hash of its newest entry
    std::int64_t accessEntries{};  ///< of the access log
    std::string accessHead{};
    std::string publicKey{};   ///< that checks the signature
    std::string checkpoint{};  ///< the whole of it, as it stands in the file
};

Paper daySheet(const PaperHead& head, const DaySheet& sheet);

}  // namespace reports
