#include "storage/counted_code.h"

#include <algorithm>
#include <charconv>

namespace storage {

std::string countedCode(CodeShape shape, std::int64_t count) {
    const std::string digits = std::to_string(count);
    return shape.letter + std::string(shape.digits - std::min(shape.digits, digits.size()), '0') +
           digits;
}

std::optional<std::int64_t> countOf(CodeShape shape, std::string_view code) {
    if (code.empty()) return {};
    std::int64_t count{};
    std::from_chars(code.data() + 1, code.data() + code.size(), count);
    // Writing it again settles the letter, the padding, signs and whatever follows the digits.
    if (countedCode(shape, count) != code) return {};
    return count;
}

}  // namespace storage
