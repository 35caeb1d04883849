/// What lies on a disk after a power cut: what was forced to it lies there as it was written; of
/// what was asked since, anything may be there, in any order, in whole sectors, or a sector of
/// garbage where one was just being written.
#pragma once

#include <array>
#include <random>
#include <string>
#include <vector>

#include "tests/faults/disk.h"

namespace faults {

using Random = std::mt19937_64;

/// A file, or the absence of one.
struct StoredFile {
    bool isThere{};
    std::string bytes{};
};
struct Stored {
    std::array<StoredFile, 2> files{};
    StoredFile& of(Part part) { return files[static_cast<std::size_t>(part)]; }
    const StoredFile& of(Part part) const { return files[static_cast<std::size_t>(part)]; }
};

/// Whether a disk does what it is asked when it is told to force what was written.
enum class Honesty { Forces, Lies };

class PowerCuts {
public:
    PowerCuts(Stored durable, Honesty honesty) : durable_{std::move(durable)}, honesty_{honesty} {}

    void take(const Operation& operation);
    /// Whether anything is not forced yet: without it, every cut leaves the same.
    bool hasPending() const noexcept { return !pending_.empty(); }

    /// Nothing of what is pending; all of it, as when only the program is killed; the first part of
    /// it, the last write torn; any sectors of it in any order, one of them garbage or none.
    Stored without() const { return durable_; }
    Stored withAll() const;
    Stored withFirst(Random& random) const;
    Stored withSome(Random& random, bool hasGarbage) const;

private:
    Stored durable_;
    Honesty honesty_;
    std::vector<Operation> pending_{};
};

}  // namespace faults
