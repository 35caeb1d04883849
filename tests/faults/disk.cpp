#include "tests/faults/disk.h"

#include <sqlite3.h>

#include <cstdlib>
#include <optional>

namespace faults {

const std::array<FaultKind, 9> kFaultKinds{
    FaultKind{"cannot open", Access::Open, SQLITE_CANTOPEN, false},
    FaultKind{"cannot read", Access::Read, SQLITE_IOERR_READ, false},
    FaultKind{"cannot write", Access::Write, SQLITE_IOERR_WRITE, false},
    FaultKind{"half a write", Access::Write, SQLITE_IOERR_WRITE, true},
    FaultKind{"disk full", Access::Write, SQLITE_FULL, false},
    FaultKind{"cannot truncate", Access::Truncate, SQLITE_IOERR_TRUNCATE, false},
    FaultKind{"cannot sync", Access::Sync, SQLITE_IOERR_FSYNC, false},
    FaultKind{"size unknown", Access::Size, SQLITE_IOERR_FSTAT, false},
    FaultKind{"cannot delete", Access::Delete, SQLITE_IOERR_DELETE, false}};

namespace {

struct Plan {
    FaultKind kind{};
    std::int64_t turn{};
    bool isForEver{};
    std::int64_t count{};
};

// One thread uses SQLite in these programs; its callbacks have no other place to look at.
std::vector<Operation>* recorded{nullptr};  // NOLINT
std::optional<Plan> plan;                   // NOLINT

constexpr std::string_view kRecordsName = "/records.db";
constexpr std::string_view kJournalName = "/records.db-journal";

std::optional<Part> partOf(const char* name) {
    const std::string_view path = name == nullptr ? "" : name;
    if (path.ends_with(kRecordsName)) return Part::Records;
    if (path.ends_with(kJournalName)) return Part::Journal;
    return {};
}

void note(std::optional<Part> part, Operation operation) {
    if (recorded == nullptr || !part) return;
    operation.part = *part;
    recorded->push_back(std::move(operation));
}

/// Whether this access is to fail.
bool fails(Access access) {
    if (!plan || plan->kind.access != access) return false;
    ++plan->count;
    return plan->turn > 0 &&
           (plan->isForEver ? plan->count >= plan->turn : plan->count == plan->turn);
}

/// A file of ours: SQLite's own comes right after it in the same block.
struct Watched {
    sqlite3_file base;
    sqlite3_io_methods methods;
    bool isPart;
    Part part;
};
sqlite3_file* inner(sqlite3_file* file) {
    return reinterpret_cast<sqlite3_file*>(reinterpret_cast<Watched*>(file) + 1);
}
std::optional<Part> partOf(sqlite3_file* file) {
    const auto* watched = reinterpret_cast<Watched*>(file);
    return watched->isPart ? std::optional{watched->part} : std::nullopt;
}

int watchedClose(sqlite3_file* file) { return inner(file)->pMethods->xClose(inner(file)); }
int watchedRead(sqlite3_file* file, void* into, int size, sqlite3_int64 offset) {
    if (fails(Access::Read)) return plan->kind.code;
    return inner(file)->pMethods->xRead(inner(file), into, size, offset);
}
int watchedWrite(sqlite3_file* file, const void* from, int size, sqlite3_int64 offset) {
    if (fails(Access::Write)) {
        if (plan->kind.isHalf) inner(file)->pMethods->xWrite(inner(file), from, size / 2, offset);
        return plan->kind.code;
    }
    note(partOf(file),
         {Operation::Kind::Write,
          {},
          static_cast<std::size_t>(offset),
          std::string{static_cast<const char*>(from), static_cast<std::size_t>(size)}});
    return inner(file)->pMethods->xWrite(inner(file), from, size, offset);
}
int watchedTruncate(sqlite3_file* file, sqlite3_int64 size) {
    if (fails(Access::Truncate)) return plan->kind.code;
    note(partOf(file), {Operation::Kind::Truncate, {}, static_cast<std::size_t>(size), {}});
    return inner(file)->pMethods->xTruncate(inner(file), size);
}
int watchedSync(sqlite3_file* file, int flags) {
    if (fails(Access::Sync)) return plan->kind.code;
    const int code = inner(file)->pMethods->xSync(inner(file), flags);
    note(partOf(file), {Operation::Kind::Sync, {}, 0, {}});
    return code;
}
int watchedFileSize(sqlite3_file* file, sqlite3_int64* size) {
    if (fails(Access::Size)) return plan->kind.code;
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
    if (fails(Access::Open)) return plan->kind.code;
    const auto part = partOf(name);
    int isThere = 1;
    if (part) usual(vfs)->xAccess(usual(vfs), name, SQLITE_ACCESS_EXISTS, &isThere);
    const int code = usual(vfs)->xOpen(usual(vfs), name, inner(file), flags, out);
    if (code == SQLITE_OK && isThere == 0) note(part, {Operation::Kind::Create, {}, 0, {}});
    if (inner(file)->pMethods == nullptr) return code;
    watched->methods = kMethods;
    watched->isPart = part.has_value();
    watched->part = part.value_or(Part::Records);
    watched->base.pMethods = &watched->methods;
    return code;
}

int watchedDelete(sqlite3_vfs* vfs, const char* name, int forcesFolder) {
    if (fails(Access::Delete)) return plan->kind.code;
    const int code = usual(vfs)->xDelete(usual(vfs), name, forcesFolder);
    note(partOf(name), {Operation::Kind::Delete, {}, static_cast<std::size_t>(forcesFolder), {}});
    return code;
}

}  // namespace

void installDisk() {
    static sqlite3_vfs own{};
    sqlite3_vfs* below = sqlite3_vfs_find(nullptr);
    own = *below;
    own.pNext = nullptr;
    own.zName = "faulty";
    own.pAppData = below;
    own.szOsFile = static_cast<int>(sizeof(Watched)) + below->szOsFile;
    // The other functions of the usual VFS look at their own data only where it differs by a
    // locking style; the default style has none to look at.
    own.xOpen = watchedOpen;
    own.xDelete = watchedDelete;
    if (sqlite3_vfs_register(&own, 1) != SQLITE_OK) std::abort();
}

Recording::Recording(std::vector<Operation>& into) { recorded = &into; }
Recording::~Recording() { recorded = nullptr; }

void failAccess(const FaultKind& kind, std::int64_t turn, Lasting lasting) {
    plan = Plan{.kind = kind, .turn = turn, .isForEver = lasting == Lasting::ForEver};
}
std::int64_t failNoAccess() {
    const std::int64_t count = plan ? plan->count : 0;
    plan.reset();
    return count;
}

}  // namespace faults
