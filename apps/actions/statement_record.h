/// An issued statement as it is kept: all it said on that day, so that it says the same for ever.
#pragma once

#include "apps/actions/laboratory.h"
#include "reports/device_statement.h"

namespace actions {

struct StatementRecord {
    Letterhead head{};
    reports::IssuedStatement issued{};
};

/// Everything but the cautions, which follow from the prescription.
std::string writeStatement(const StatementRecord& record);
/// ErrorCode::Unavailable when it is not what writeStatement() wrote.
domain::Result<StatementRecord> readStatement(const std::string& text);

}  // namespace actions
