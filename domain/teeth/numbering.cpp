#include "domain/teeth/numbering.h"

#include <array>

namespace domain {
namespace {

constexpr std::array<std::string_view, 5> kPalmerQuadrants{"", "UR", "UL", "LL", "LR"};

std::optional<Tooth> parseUniversal(std::string_view text) noexcept {
    if (text.empty() || text.size() > 2 || text[0] == '0') return {};
    int number = 0;
    for (const char c : text) {
        if (c < '0' || c > '9') return {};
        number = number * 10 + (c - '0');
    }
    if (number > 32) return {};
    // Universal runs along the upper arch from right to left, then back along the lower.
    return number <= 16 ? Tooth::at(Arch::Upper, number - 1) : Tooth::at(Arch::Lower, 32 - number);
}

std::optional<Tooth> parsePalmer(std::string_view text) noexcept {
    if (text.size() != 3) return {};
    for (std::size_t quadrant = 1; quadrant < kPalmerQuadrants.size(); ++quadrant)
        if (text.substr(0, 2) == kPalmerQuadrants[quadrant]) {
            const char digits[] = {static_cast<char>('0' + quadrant), text[2]};
            return Tooth::parse({digits, 2});
        }
    return {};
}

}  // namespace

std::optional<Tooth> parseTooth(std::string_view text, Notation notation) noexcept {
    switch (notation) {
        case Notation::Iso3950:
            return Tooth::parse(text);
        case Notation::Universal:
            return parseUniversal(text);
        case Notation::Palmer:
            return parsePalmer(text);
    }
    return {};
}

std::string nameOf(Tooth tooth, Notation notation) {
    switch (notation) {
        case Notation::Iso3950:
            return tooth.text();
        case Notation::Universal:
            return std::to_string(tooth.arch() == Arch::Upper ? tooth.position() + 1
                                                              : 32 - tooth.position());
        case Notation::Palmer:
            return std::string{kPalmerQuadrants[static_cast<std::size_t>(tooth.quadrant())]} +
                   static_cast<char>('0' + tooth.place());
    }
    return {};
}

}  // namespace domain
