#include "domain/base/plain_text.h"

#include <algorithm>
#include <array>
#include <cstdint>

namespace domain {
namespace {

struct Sequence {
    std::size_t bytes{};
    char32_t bits{};   // of the first byte
    char32_t least{};  // smaller values are overlong forms
};

/// What a first byte announces; no bytes where it cannot begin a character.
Sequence sequenceOf(std::uint8_t first) noexcept {
    if (first < 0x80) return {1, first, 0};
    if (first >= 0xC2 && first < 0xE0) return {2, first & 0x1Fu, 0x80};
    if (first >= 0xE0 && first < 0xF0) return {3, first & 0x0Fu, 0x800};
    if (first >= 0xF0 && first < 0xF5) return {4, first & 0x07u, 0x10000};
    return {};
}

bool isCharacter(char32_t code, char32_t least) noexcept {
    const bool surrogate = code >= 0xD800 && code < 0xE000;
    return code >= least && code <= 0x10FFFF && !surrogate;
}

struct CodeRange {
    char32_t first;
    char32_t last;
};
constexpr std::array<CodeRange, 17> kHidden{{{0x00AD, 0x00AD},
                                             {0x034F, 0x034F},
                                             {0x061C, 0x061C},
                                             {0x115F, 0x1160},
                                             {0x17B4, 0x17B5},
                                             {0x180B, 0x180F},
                                             {0x200B, 0x200F},
                                             {0x2028, 0x202E},
                                             {0x2060, 0x206F},
                                             {0x3164, 0x3164},
                                             {0xFE00, 0xFE0F},
                                             {0xFEFF, 0xFEFF},
                                             {0xFFA0, 0xFFA0},
                                             {0xFFF0, 0xFFFB},
                                             {0x1BCA0, 0x1BCA3},
                                             {0x1D173, 0x1D17A},
                                             {0xE0000, 0xE0FFF}}};

/// At least so many digits.
std::string hexadecimal(char32_t value, int digits) {
    std::string text;
    for (; value > 0 || digits > 0; value >>= 4, --digits)
        text.insert(text.begin(), "0123456789ABCDEF"[value & 0xF]);
    return text;
}

}  // namespace

FirstCharacter firstCharacter(std::string_view utf8) noexcept {
    if (utf8.empty()) return {};
    const Sequence sequence = sequenceOf(static_cast<std::uint8_t>(utf8.front()));
    if (sequence.bytes == 0 || sequence.bytes > utf8.size()) return {std::nullopt, 1};
    char32_t code = sequence.bits;
    for (const char next : utf8.substr(1, sequence.bytes - 1)) {
        const auto byte = static_cast<std::uint8_t>(next);
        if ((byte & 0xC0) != 0x80) return {std::nullopt, 1};
        code = code << 6 | (byte & 0x3Fu);
    }
    if (!isCharacter(code, sequence.least)) return {std::nullopt, 1};
    return {code, sequence.bytes};
}

bool isControl(char32_t code) noexcept { return code < 0x20 || (code >= 0x7F && code < 0xA0); }

bool isHidden(char32_t code) noexcept {
    return std::ranges::any_of(
        kHidden, [&](CodeRange range) { return code >= range.first && code <= range.last; });
}

std::string spelt(char32_t code) { return "[U+" + hexadecimal(code, 4) + ']'; }

std::string plainText(std::string_view utf8) {
    if (std::ranges::all_of(utf8, [](char c) { return c >= ' ' && c <= '~'; }))
        return std::string{utf8};
    std::string shown;
    shown.reserve(utf8.size());
    while (!utf8.empty()) {
        const auto [code, bytes] = firstCharacter(utf8);
        if (!code)
            shown += "[0x" + hexadecimal(static_cast<std::uint8_t>(utf8.front()), 2) + ']';
        else if (isControl(*code) || isHidden(*code))
            shown += spelt(*code);
        else
            shown += utf8.substr(0, bytes);
        utf8.remove_prefix(bytes);
    }
    return shown;
}

}  // namespace domain
