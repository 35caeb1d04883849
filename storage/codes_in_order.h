/// Codes that count up: "T000001", "P00001", "D00001".
#pragma once

#include <string>
#include <string_view>

#include "storage/connection.h"

namespace storage {

/// The code after the one the statement answers in its column "latest"; throws SqlFailure. Call it
/// within a transaction, or somebody else may take the same.
std::string nextCode(const Connection& connection, std::string_view latestStatement);

}  // namespace storage
