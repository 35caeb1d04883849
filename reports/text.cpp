#include "reports/text.h"

#include "domain/base/plain_text.h"

namespace reports {
namespace {

constexpr char32_t kReplacement = 0xFFFD;

}  // namespace

std::u32string decoded(std::string_view utf8) {
    std::u32string codes;
    while (!utf8.empty()) {
        const auto [code, bytes] = domain::firstCharacter(utf8);
        codes.push_back(code.value_or(kReplacement));
        utf8.remove_prefix(bytes);
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
    const std::string ascii = domain::spelt(code);
    return {ascii.begin(), ascii.end()};
}

std::string printable(std::string_view utf8) {
    std::u32string shown;
    for (const char32_t code : decoded(utf8)) {
        if (code == '\t' || code == '\n' || code == '\r')
            shown += U' ';
        else if (domain::isHidden(code))
            shown += spelt(code);
        else if (!domain::isControl(code))
            shown += code;
    }
    return encoded(shown);
}

}  // namespace reports
