/// Looks at what SQLite does in this process: statements, commits, syncs, rows written; and makes a
/// sync cost what a disk would ask. By a VFS of our own laid over the default one and by SQLite's
/// hooks, so that nothing of the program under test knows of it.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace bench {

struct SqliteCounts {
    std::int64_t statements{};  ///< executed
    std::int64_t commits{};     ///< of transactions that wrote
    std::int64_t syncs{};       ///< of the records and of their journal; not of the folder
    std::int64_t reads{};       ///< pages and headers asked of the files
    std::int64_t writes{};
    friend SqliteCounts operator-(const SqliteCounts& after, const SqliteCounts& before);
};

/// Before the first connection is opened.
void installProbe();
/// From now on; counting statements costs time, so it is off at first.
void countStatements(bool on);
SqliteCounts countsSoFar();
/// Every sync takes at least so long from now on; 0: only what it takes.
void setSyncCost(std::int64_t microseconds);

/// A row a statement put into a table or changed there.
struct RowChange {
    bool isNew{};
    std::string table{};
    std::int64_t row{};  ///< its rowid
    friend auto operator<=>(const RowChange&, const RowChange&) = default;
};
/// Every row written between the two calls, in the order of the first writing.
void noteRows();
std::vector<RowChange> notedRows();

}  // namespace bench
