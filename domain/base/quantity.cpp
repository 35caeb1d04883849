#include "domain/base/quantity.h"

#include <cmath>

namespace domain {

std::string tenths(double value) { return decimalText(std::lround(value * 10), 10); }

std::string decimalText(std::int64_t count, std::int64_t perWritten) {
    std::string text = count < 0 ? "-" : "";
    const std::int64_t size = count < 0 ? -count : count;
    text += std::to_string(size / perWritten);
    std::string decimals;
    for (std::int64_t left = size % perWritten, unit = perWritten / 10; left > 0; unit /= 10) {
        decimals += static_cast<char>('0' + left / unit);
        left %= unit;
    }
    return decimals.empty() ? text : text + '.' + decimals;
}

std::optional<std::int64_t> parseDecimal(std::string_view text, std::int64_t perWritten,
                                         std::int64_t most) {
    const auto digit = [](char c) { return c >= '0' && c <= '9'; };
    std::int64_t count = 0;
    std::size_t at = 0;
    for (; at < text.size() && digit(text[at]); ++at) {
        count = count * 10 + (text[at] - '0');
        if (count > most) return {};
    }
    if (at == 0) return {};
    count *= perWritten;
    if (at < text.size()) {
        if (text[at] != '.' || at + 1 == text.size()) return {};
        std::int64_t unit = perWritten;
        for (++at; at < text.size(); ++at) {
            if (!digit(text[at]) || unit % 10 != 0) return {};
            unit /= 10;
            count += unit * (text[at] - '0');
        }
    }
    if (count > most) return {};
    return count;
}

}  // namespace domain
