/// The memory of SQLite in this process, which gives out as usual or fails where a test says so.
#pragma once

#include <cstdint>

#include "tests/faults/disk.h"

namespace faults {

/// Before anything of SQLite is used.
void installAllocator();

/// From now on an allocation fails: the `turn`-th, counted from 1, and every one after it if it is
/// to last. Turn 0: none fails, they are counted.
void failAllocation(std::int64_t turn, Lasting lasting);
/// No longer; how many allocations there were.
std::int64_t failNoAllocation();

}  // namespace faults
