/// What the tests of this folder counted, a line each: to standard output, and into the file that
/// FRAMEWRIGHT_FAULTS_BOARD names, from which run.sh makes its table.
#pragma once

#include <cstdint>
#include <string>

namespace faults {

struct Score {
    std::string what{};    ///< "power cuts"
    std::int64_t count{};  ///< how many were tried
    std::uint64_t seed{};
    std::int64_t failures{};
    std::string remark{};  ///< "a control: must fail"
};
void scored(const Score& score);

/// How many are to be tried: what the environment says under the name, or else what is usual.
std::int64_t wanted(const char* name, std::int64_t usual);

}  // namespace faults
