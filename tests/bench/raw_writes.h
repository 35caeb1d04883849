/// The same writes by the C API of SQLite alone: how much of the speed the disk allows is left.
#pragma once

#include <filesystem>

#include "tests/bench/figures.h"

namespace bench {

/// How long a file of 4096 bytes takes to be written and synced in a folder, in microseconds; the
/// median of some.
double syncTime(const std::filesystem::path& folder);

/// Passes stages of orders in copies of the records in `source`, once by the actions and once by
/// prepared statements that put the same rows into the same tables, one commit for each transition,
/// rollback journal, synchronous FULL. `scratch` is the folder for the copies; a sync takes at
/// least `syncCost` microseconds. Figures: both throughputs and their ratio. Empty, with a sentence
/// on standard error, when the two did not write the same.
std::vector<Figure> compareWithRaw(const std::filesystem::path& source,
                                   const std::filesystem::path& scratch, std::int64_t syncCost,
                                   const std::string& name, std::optional<Goal> goal);

}  // namespace bench
