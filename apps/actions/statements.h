/// The statement for a custom-made device: put together from the records, issued once, printed the
/// same ever after.
#pragma once

#include "apps/actions/laboratory.h"
#include "apps/actions/order_view.h"
#include "apps/actions/outcome.h"
#include "apps/actions/who.h"
#include "domain/production/statement.h"
#include "reports/device_statement.h"

namespace actions {

/// What the records cannot know and whoever issues the statement must say. Blank is never taken
/// for "none".
struct Declared {
    std::optional<std::string> representative{};  ///< "none", or name and address after a ';'
    std::optional<std::string> institution{};     ///< "none", or the health institution
    std::optional<std::string> substances{};      ///< "none", or which it contains
    bool conforms{};                              ///< to Annex I, but for the exception
    std::optional<std::string> exception{};       ///< the requirement that is not fully met
    std::optional<std::string> grounds{};         ///< why not
};

/// What the statement of an order would say now.
domain::Result<domain::Statement> statementOf(const Laboratory& laboratory, const OrderView& view,
                                              const Declared& declared);

/// Issues it at the stage of delivery; refused with the list of what is lacking.
domain::Result<Outcome> issueStatement(const Laboratory& laboratory,
                                       const domain::OrderNumber& number, const Declared& declared,
                                       const Who& who);

/// The statement as it was issued, on paper: the same bytes each time. Refused before.
domain::Result<reports::Paper> issuedStatement(const Laboratory& laboratory, const OrderView& view);

/// The lots in a device as it stands, for papers.
domain::Result<std::vector<reports::LotLine>> lotLines(const Laboratory& laboratory,
                                                       const domain::Order& order);

}  // namespace actions
