/// What the command line prints, pages for people and JSON for programs: the one place that writes
/// to standard output and standard error.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "apps/actions/floor.h"
#include "apps/actions/order_view.h"
#include "apps/actions/orders.h"
#include "apps/actions/verification.h"
#include "apps/cli/page.h"

namespace cli {

using Json = nlohmann::ordered_json;

/// "2 d 3 h", "4 h 10 min", "0 min": a span of microseconds.
std::string spanText(std::int64_t microseconds);

/// One finding in a paragraph: severity, rule, tooth, what was found, requirement, question,
/// source.
Page paragraph(const domain::Finding& finding, domain::Notation notation);

/// "upper, III mod 1, tooth support" and the findings below.
/// `trial`: also what would clear each finding.
Page report(const actions::Examined& examined, const actions::Trial* trial = nullptr);

Json json(const domain::Finding& finding);
Json json(const std::vector<domain::Finding>& findings);
Json json(const actions::Examined& examined);
Json json(const domain::Order& order);
Json json(const actions::OrderView& view);
Json json(const std::vector<actions::FloorLine>& lines);
Json json(const actions::Verification& verification);

/// For people, on standard output.
void print(const Page& page);

/// For programs, on standard output, with a first field "schema" that names the shape, as
/// "order-1". What a page would spell out stands as the escape of JSON: the data are exact.
void print(std::string_view schema, const Json& object);

/// "framewright: ..." on standard error, in one line.
void complain(std::string_view sentence);

/// "password: " on standard error: what is to be typed in the same line.
void ask(std::string_view what);
/// Ends the line of a question whose answer was not shown.
void endAsked();

/// Whether standard error is a terminal, on which a line can be written over.
bool isTerminal();
/// "copying 40 %" on standard error: on a terminal over the line before, until it is the last one.
void tellProgress(std::string_view line, bool isLast);

/// Whether everything that was printed has been written out.
bool isWrittenOut();

}  // namespace cli
