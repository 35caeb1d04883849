#include "tests/faults/allocations.h"

#include <sqlite3.h>

#include <cstdlib>
#include <utility>

namespace faults {
namespace {

// One thread uses SQLite in these programs; its callbacks have no other place to look at.
sqlite3_mem_methods usual{};  // NOLINT
std::int64_t failingTurn{0};  // NOLINT
bool isForEver{false};        // NOLINT
std::int64_t allocations{0};  // NOLINT

bool fails() {
    ++allocations;
    return failingTurn > 0 && (isForEver ? allocations >= failingTurn : allocations == failingTurn);
}

void* allocate(int size) { return fails() ? nullptr : usual.xMalloc(size); }
void* allocateAgain(void* block, int size) {
    return fails() ? nullptr : usual.xRealloc(block, size);
}

}  // namespace

void installAllocator() {
    bool isDone = sqlite3_config(SQLITE_CONFIG_GETMALLOC, &usual) == SQLITE_OK;
    sqlite3_mem_methods own = usual;
    own.xMalloc = allocate;
    own.xRealloc = allocateAgain;
    isDone = isDone && sqlite3_config(SQLITE_CONFIG_MALLOC, &own) == SQLITE_OK;
    if (!isDone) std::abort();
}

void failAllocation(std::int64_t turn, Lasting lasting) {
    allocations = 0;
    failingTurn = turn;
    isForEver = lasting == Lasting::ForEver;
}

std::int64_t failNoAllocation() {
    failingTurn = 0;
    return std::exchange(allocations, 0);
}

}  // namespace faults
