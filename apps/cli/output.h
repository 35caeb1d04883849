/// What the command line prints: plain tables for people, JSON for programs.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "apps/actions/order_view.h"
#include "apps/actions/orders.h"
#include "apps/actions/verification.h"

namespace cli {

using Json = nlohmann::ordered_json;

/// Rows under a heading, columns as wide as their widest cell; widths count characters.
std::string table(const std::vector<std::string>& heading,
                  const std::vector<std::vector<std::string>>& rows);

/// "2 d 3 h", "4 h 10 min", "0 min": a span of microseconds.
std::string spanText(std::int64_t microseconds);

/// One finding in a paragraph: severity, rule, tooth, what was found, requirement, question,
/// source.
std::string paragraph(const domain::Finding& finding, domain::Notation notation);

/// "upper, III mod 1, tooth support" and the findings below.
std::string report(const actions::Examined& examined);

Json json(const domain::Finding& finding);
Json json(const std::vector<domain::Finding>& findings);
Json json(const actions::Examined& examined);
Json json(const domain::Order& order);
Json json(const actions::OrderView& view);
Json json(const std::vector<actions::FloorLine>& lines);
Json json(const actions::Verification& verification);

/// Prints with a first field "schema" that names the shape, as "order-1".
void print(std::string_view schema, const Json& object);

}  // namespace cli
