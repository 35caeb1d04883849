/// The same writes by the C API of SQLite alone: how much of the speed the disk allows is left.
#pragma once

#include <filesystem>

#include "tests/bench/figures.h"

namespace bench {

/// How long a file of 4096 bytes takes to be written and synced in a folder, in microseconds; the
/// median of some.
double syncTime(const std::filesystem::path& folder);

/// Where the two are compared, and what a sync costs there at least.
struct Place {
    std::string name{};               ///< "on the disk"
    std::filesystem::path scratch{};  ///< a folder for the copies
    std::int64_t syncCost{};          ///< microseconds; 0: only what it takes
    std::optional<Goal> goal{};       ///< of the ratio
};

/// Passes stages of orders in copies of the records in `source`, once by the actions and once by
/// prepared statements that put the same rows into the same tables, one commit for each transition,
/// rollback journal, synchronous FULL. Figures of each place: both throughputs and their ratio.
/// None, with a sentence on standard error, where the two did not write the same.
std::vector<Figure> compareWithRaw(const std::filesystem::path& source,
                                   const std::vector<Place>& places);

}  // namespace bench
