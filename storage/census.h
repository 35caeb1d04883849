/// What lies in each table of a set of records, so that a copy can be compared with it.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "storage/connection.h"

namespace storage {

/// `sum` is over all cells: of a whole number its remainder by 1,000,003, of anything else the
/// length in bytes. It shows a row that was lost, doubled or replaced; it is no proof against
/// somebody who means to deceive.
struct TableCount {
    std::string name;
    std::int64_t rows{};
    std::optional<std::int64_t> sum{};

    friend bool operator==(const TableCount&, const TableCount&) = default;
};

/// Where the records stand. `first` and `head`: hashes of the oldest and the newest entry of the
/// ledger, 64 zeros when it is empty.
struct Census {
    std::int64_t schema{};
    std::int64_t needs{};
    std::int64_t entries{};
    std::string head{};
    std::string first{};
    std::vector<TableCount> tables{};

    friend bool operator==(const Census&, const Census&) = default;
};

/// Counting rows takes a fortieth of the time of adding up cells.
enum class CensusDepth : std::uint8_t { Rows, RowsAndSums };

/// Takes it within one state of the records; every schema has what it looks at. Throws SqlFailure.
Census takeCensus(Connection& connection, CensusDepth depth);
/// Rows and sums, for callers outside storage. ErrorCode::Unavailable.
domain::Result<Census> censusIn(Connection& connection);

/// One sentence for each figure in which a copy differs from what it was made from; sums where both
/// have them.
std::vector<std::string> censusDifferences(const Census& original, const Census& copy);

/// The hash of an entry of the ledger; nullopt when there is none. Throws SqlFailure.
std::optional<std::string> hashOfEntry(Connection& connection, std::int64_t position);

/// Everything that can be proved about records by themselves, one sentence a problem: the pages
/// and indices of the file, rows that point nowhere, the chain, what is derived from it, the
/// sealed texts. Records of an older schema are looked at as far as this program can.
domain::Result<std::vector<std::string>> problemsIn(Connection& connection);

}  // namespace storage
