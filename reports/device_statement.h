/// The statement for a custom-made device, on paper.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "domain/base/result.h"
#include "domain/prescription/prescription.h"
#include "domain/production/retention.h"
#include "domain/production/statement.h"
#include "reports/cautions.h"
#include "reports/lot_table.h"
#include "reports/paper.h"

namespace reports {

struct IssuedStatement {
    std::string number{};  ///< of the statement itself; empty: it has none
    domain::Statement statement{};
    std::vector<LotLine> lots{};
    std::vector<domain::RetentionTerm> retention{};  ///< those that apply; empty: none chosen
    std::optional<domain::Date> delivered{};         ///< nullopt: not yet
    Hazards hazards{};
};

/// The specific characteristics of a device as its prescription asks for them, a line each.
std::vector<std::string> characteristicLines(const domain::Prescription& prescription);

/// ErrorCode::Refused while anything lacks, naming all of it. Carries no conformity mark of any
/// kind: a custom-made device bears none (Regulation (EU) 2017/745, article 20(1), from memory).
domain::Result<Paper> deviceStatement(const PaperHead& head, const IssuedStatement& issued);

}  // namespace reports
