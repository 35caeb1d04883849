/// Idempotency keys that are kept as they are given, see actions::keptKey(): a number in the form
/// of a UUID, which a test finds again in the ledger.
#pragma once

#include <cstdio>
#include <cstdlib>
#include <string>

namespace support {

/// "00000003-0000-4000-8000-000000000017" for series 3 and number 17; both of eight digits at most.
inline std::string numberedKey(int number, int series = 0) {
    constexpr std::size_t kLength = 37;
    char text[kLength] = {};
    std::snprintf(text, sizeof text, "%08d-0000-4000-8000-%012d", series, number);
    return text;
}

/// Whether a key is one of a series, and which; 0: it is none.
inline int numberIn(const std::string& key, int series = 0) {
    constexpr std::size_t kDigits = 12;
    if (key.size() < kDigits) return 0;
    const int number = std::atoi(key.c_str() + key.size() - kDigits);
    return key == numberedKey(number, series) ? number : 0;
}

}  // namespace support
