/// Counts what the program takes from the heap, by operators new of its own.
#pragma once

#include <cstddef>

namespace bench {

struct Taken {
    std::size_t blocks{};
    std::size_t bytes{};
};

/// Since the program started.
Taken takenSoFar() noexcept;

}  // namespace bench
