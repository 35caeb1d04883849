/// The verb `classify`: the Kennedy class of an arch told in a line.
#pragma once

#include <functional>
#include <iosfwd>
#include <string_view>

#include "apps/cli/verb.h"
#include "domain/design/kennedy.h"

namespace cli {

/// Reads one line of a batch: "upper missing=14,15 not-replaced=17 abutment=18 extract=24
/// notation=iso3950". Errors say which word is wrong and what was expected.
domain::Result<domain::ToldArch> parseToldArch(std::string_view line);

/// "III mod 1", "IV", or "none".
std::string answerTo(const domain::ToldArch& told);

/// Takes one line that is to be shown.
using Teller = std::function<void(std::string_view)>;

/// One answer a line; a line that cannot be read gets the answer "unusable" and a complaint.
Exit classifyBatch(std::istream& lines, const Teller& answer, const Teller& complaint);

domain::Result<Exit> classify(const Call& call);

}  // namespace cli
