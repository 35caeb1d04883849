/// A statement as it was issued, kept as a sealed text: with everything on it that might be another
/// by the time it is printed again.
#pragma once

#include "apps/actions/laboratory.h"
#include "domain/production/retention.h"
#include "domain/production/statement.h"

namespace actions {

struct KeptStatement {
    domain::Statement statement{};
    Letterhead head{};
    std::vector<domain::RetentionTerm> retention{};
};

/// One line of JSON.
std::string writeStatement(const KeptStatement& kept);
/// What writeStatement() wrote; ErrorCode::Unavailable for anything else.
domain::Result<KeptStatement> readStatement(const std::string& text);

}  // namespace actions
