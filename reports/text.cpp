#include "reports/text.h"

#include <array>
#include <cstdint>

namespace reports {
namespace {

constexpr char32_t kReplacement = 0xFFFD;

struct Sequence {
    int bytes{};
    char32_t bits{};   // of the first byte
    char32_t least{};  // smaller values are overlong forms
};

/// What a first byte announces; no bytes where it cannot begin a character (RFC 3629).
Sequence sequenceOf(std::uint8_t first) {
    if (first < 0x80) return {1, first, 0};
    if (first >= 0xC2 && first < 0xE0) return {2, first & 0x1Fu, 0x80};
    if (first >= 0xE0 && first < 0xF0) return {3, first & 0x0Fu, 0x800};
    if (first >= 0xF0 && first < 0xF5) return {4, first & 0x07u, 0x10000};
    return {};
}

bool isCharacter(char32_t code, char32_t least) {
    const bool surrogate = code >= 0xD800 && code < 0xE000;
    return code >= least && code <= 0x10FFFF && !surrogate;
}

bool isControl(char32_t code) { return code < 0x20 || (code >= 0x7F && code < 0xA0); }

/// Marks of direction and joining, which take no room: a text with them does not say what it shows.
bool isHidden(char32_t code) {
    struct Range {
        char32_t first;
        char32_t last;
    };
    constexpr std::array<Range, 8> kHidden{{{0x00AD, 0x00AD},
                                            {0x061C, 0x061C},
                                            {0x180E, 0x180E},
                                            {0x200B, 0x200F},
                                            {0x2028, 0x202E},
                                            {0x2060, 0x206F},
                                            {0xFE00, 0xFE0F},
                                            {0xFEFF, 0xFEFF}}};
    for (const Range range : kHidden)
        if (code >= range.first && code <= range.last) return true;
    return false;
}

}  // namespace

std::u32string decoded(std::string_view utf8) {
    std::u32string codes;
    for (std::size_t at = 0; at < utf8.size();) {
        const Sequence sequence = sequenceOf(static_cast<std::uint8_t>(utf8[at]));
        char32_t code = sequence.bits;
        int taken = 1;
        for (; taken < sequence.bytes && at + static_cast<std::size_t>(taken) < utf8.size();
             ++taken) {
            const auto next = static_cast<std::uint8_t>(utf8[at + static_cast<std::size_t>(taken)]);
            if ((next & 0xC0) != 0x80) break;
            code = code << 6 | (next & 0x3Fu);
        }
        const bool whole = sequence.bytes > 0 && taken == sequence.bytes;
        const bool good = whole && isCharacter(code, sequence.least);
        codes.push_back(good ? code : kReplacement);
        at += good ? static_cast<std::size_t>(taken) : 1;
    }
    return codes;
}

std::string encoded(std::u32string_view codePoints) {
    std::string utf8;
    const auto add = [&](char32_t byte) { utf8.push_back(static_cast<char>(byte)); };
    for (const char32_t code : codePoints) {
        if (code < 0x80) {
            add(code);
        } else if (code < 0x800) {
            add(0xC0 | code >> 6);
            add(0x80 | (code & 0x3F));
        } else if (code < 0x10000) {
            add(0xE0 | code >> 12);
            add(0x80 | (code >> 6 & 0x3F));
            add(0x80 | (code & 0x3F));
        } else {
            add(0xF0 | code >> 18);
            add(0x80 | (code >> 12 & 0x3F));
            add(0x80 | (code >> 6 & 0x3F));
            add(0x80 | (code & 0x3F));
        }
    }
    return utf8;
}

std::u32string spelt(char32_t code) {
    constexpr std::u32string_view kDigits = U"0123456789ABCDEF";
    std::u32string text = U"[U+";
    for (int shift = code > 0xFFFFF ? 20 : code > 0xFFFF ? 16 : 12; shift >= 0; shift -= 4)
        text += kDigits[code >> shift & 0xF];
    return text + U']';
}

std::string printable(std::string_view utf8) {
    std::u32string shown;
    for (const char32_t code : decoded(utf8)) {
        if (code == '\t' || code == '\n' || code == '\r')
            shown += U' ';
        else if (isHidden(code))
            shown += spelt(code);
        else if (!isControl(code))
            shown += code;
    }
    return encoded(shown);
}

}  // namespace reports
