#include "tests/bench/counted_memory.h"

#include <cstdlib>
#include <new>

namespace {

bench::Taken taken;  // NOLINT: an operator new has no other place for it; one thread

void* counted(std::size_t size) {
    ++taken.blocks;
    taken.bytes += size;
    void* block = std::malloc(size);  // NOLINT: this is what stands below new
    if (block == nullptr) throw std::bad_alloc{};
    return block;
}

}  // namespace

bench::Taken bench::takenSoFar() noexcept { return taken; }

// The forms for arrays and for sized deletion lead here by default.
void* operator new(std::size_t size) { return counted(size); }
void operator delete(void* block) noexcept { std::free(block); }               // NOLINT
void operator delete(void* block, std::size_t) noexcept { std::free(block); }  // NOLINT
