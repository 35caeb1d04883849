#include "tests/bench/sqlite_probe.h"

#include <sqlite3.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <thread>
#include <utility>

namespace bench {
namespace {

// One thread uses SQLite in these programs; its callbacks have no other place to count in.
SqliteCounts counts;                 // NOLINT
bool countsStatements{false};        // NOLINT
std::chrono::microseconds syncCost;  // NOLINT
bool notes{false};                   // NOLINT
std::vector<RowChange> noted;        // NOLINT

/// A file of ours: SQLite's own comes right after it in the same block.
struct Watched {
    sqlite3_file base;
    sqlite3_io_methods methods;
};
sqlite3_file* inner(sqlite3_file* file) {
    return reinterpret_cast<sqlite3_file*>(reinterpret_cast<Watched*>(file) + 1);
}

constexpr std::chrono::microseconds kShortSync{500};

int watchedSync(sqlite3_file* file, int flags) {
    ++counts.syncs;
    const auto until = std::chrono::steady_clock::now() + syncCost;
    const int code = inner(file)->pMethods->xSync(inner(file), flags);
    // A sleep ends tens of microseconds late, which matters where the sync is short.
    if (syncCost > kShortSync) std::this_thread::sleep_until(until);
    while (std::chrono::steady_clock::now() < until) {
    }
    return code;
}
int watchedRead(sqlite3_file* file, void* into, int size, sqlite3_int64 offset) {
    ++counts.reads;
    return inner(file)->pMethods->xRead(inner(file), into, size, offset);
}
int watchedWrite(sqlite3_file* file, const void* from, int size, sqlite3_int64 offset) {
    ++counts.writes;
    return inner(file)->pMethods->xWrite(inner(file), from, size, offset);
}
int watchedClose(sqlite3_file* file) { return inner(file)->pMethods->xClose(inner(file)); }
int watchedTruncate(sqlite3_file* file, sqlite3_int64 size) {
    return inner(file)->pMethods->xTruncate(inner(file), size);
}
int watchedFileSize(sqlite3_file* file, sqlite3_int64* size) {
    return inner(file)->pMethods->xFileSize(inner(file), size);
}
int watchedLock(sqlite3_file* file, int level) {
    return inner(file)->pMethods->xLock(inner(file), level);
}
int watchedUnlock(sqlite3_file* file, int level) {
    return inner(file)->pMethods->xUnlock(inner(file), level);
}
int watchedReserved(sqlite3_file* file, int* is) {
    return inner(file)->pMethods->xCheckReservedLock(inner(file), is);
}
int watchedControl(sqlite3_file* file, int what, void* with) {
    return inner(file)->pMethods->xFileControl(inner(file), what, with);
}
int watchedSectorSize(sqlite3_file* file) {
    return inner(file)->pMethods->xSectorSize(inner(file));
}
int watchedCharacteristics(sqlite3_file* file) {
    return inner(file)->pMethods->xDeviceCharacteristics(inner(file));
}

/// Version 1: no shared memory and no mapped memory, which the records do not use.
constexpr sqlite3_io_methods kMethods{1,
                                      watchedClose,
                                      watchedRead,
                                      watchedWrite,
                                      watchedTruncate,
                                      watchedSync,
                                      watchedFileSize,
                                      watchedLock,
                                      watchedUnlock,
                                      watchedReserved,
                                      watchedControl,
                                      watchedSectorSize,
                                      watchedCharacteristics,
                                      nullptr,
                                      nullptr,
                                      nullptr,
                                      nullptr,
                                      nullptr,
                                      nullptr};

sqlite3_vfs* usual(sqlite3_vfs* own) { return static_cast<sqlite3_vfs*>(own->pAppData); }

int watchedOpen(sqlite3_vfs* vfs, sqlite3_filename name, sqlite3_file* file, int flags, int* out) {
    auto* watched = reinterpret_cast<Watched*>(file);
    watched->base.pMethods = nullptr;
    const int code = usual(vfs)->xOpen(usual(vfs), name, inner(file), flags, out);
    if (inner(file)->pMethods == nullptr) return code;
    watched->methods = kMethods;
    watched->base.pMethods = &watched->methods;
    return code;
}

int traced(unsigned, void*, void*, void*) {
    if (countsStatements) ++counts.statements;
    return 0;
}
int committed(void*) {
    ++counts.commits;
    return 0;
}
void updated(void*, int what, const char*, const char* table, sqlite3_int64 row) {
    if (!notes || what == SQLITE_DELETE) return;
    const RowChange change{what == SQLITE_INSERT, table, row};
    const auto same = [&](const RowChange& each) {
        return each.table == change.table && each.row == change.row;
    };
    if (std::ranges::none_of(noted, same)) noted.push_back(change);
}

int watchConnection(sqlite3* database, char**, const sqlite3_api_routines*) {
    sqlite3_trace_v2(database, SQLITE_TRACE_STMT, traced, nullptr);
    sqlite3_commit_hook(database, committed, nullptr);
    sqlite3_update_hook(database, updated, nullptr);
    return SQLITE_OK;
}

}  // namespace

SqliteCounts operator-(const SqliteCounts& after, const SqliteCounts& before) {
    return {after.statements - before.statements, after.commits - before.commits,
            after.syncs - before.syncs, after.reads - before.reads, after.writes - before.writes};
}

void installProbe() {
    static sqlite3_vfs own{};
    sqlite3_vfs* below = sqlite3_vfs_find(nullptr);
    own = *below;
    own.pNext = nullptr;
    own.zName = "watched";
    own.pAppData = below;
    own.szOsFile = static_cast<int>(sizeof(Watched)) + below->szOsFile;
    own.xOpen = watchedOpen;
    // The other functions of the usual VFS look at their own data only where it differs by a
    // locking style; the default style has none to look at.
    const bool ready =
        sqlite3_vfs_register(&own, 1) == SQLITE_OK &&
        sqlite3_auto_extension(reinterpret_cast<void (*)()>(watchConnection)) == SQLITE_OK;
    if (!ready) std::abort();
}

void countStatements(bool on) { countsStatements = on; }
SqliteCounts countsSoFar() { return counts; }
void setSyncCost(std::int64_t microseconds) { syncCost = std::chrono::microseconds{microseconds}; }

void noteRows() {
    noted.clear();
    notes = true;
}
std::vector<RowChange> notedRows() {
    notes = false;
    return std::exchange(noted, {});
}

}  // namespace bench
