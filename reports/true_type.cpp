#include "reports/true_type.h"

#include <utility>

namespace reports {
namespace {

constexpr std::uint32_t tagOf(const char (&name)[5]) {
    std::uint32_t tag = 0;
    for (int at = 0; at < 4; ++at) tag = tag << 8 | static_cast<std::uint8_t>(name[at]);
    return tag;
}

// Flags of a part of a composed glyph.
constexpr std::uint16_t kArgumentsAreWords = 0x0001;
constexpr std::uint16_t kOneScale = 0x0008;
constexpr std::uint16_t kMoreParts = 0x0020;
constexpr std::uint16_t kTwoScales = 0x0040;
constexpr std::uint16_t kMatrix = 0x0080;

std::size_t lengthOfPart(std::uint16_t flags) {
    std::size_t length = 4 + (flags & kArgumentsAreWords ? 4u : 2u);
    if (flags & kOneScale) length += 2;
    if (flags & kTwoScales) length += 4;
    if (flags & kMatrix) length += 8;
    return length;
}

}  // namespace

TrueType::TrueType(std::string bytes) : bytes_{std::move(bytes)} {
    constexpr std::size_t kIndexToLocFormat = 50;
    glyphs_ = table(tagOf("glyf"));
    locations_ = table(tagOf("loca"));
    const Table head = table(tagOf("head"));
    longLocations_ = head.length > kIndexToLocFormat && word(head.offset + kIndexToLocFormat) != 0;
}

std::uint16_t TrueType::word(std::size_t at) const noexcept {
    if (at + 2 > bytes_.size()) return 0;
    const auto byte = [&](std::size_t index) { return static_cast<std::uint8_t>(bytes_[index]); };
    return static_cast<std::uint16_t>(byte(at) << 8 | byte(at + 1));
}

std::uint32_t TrueType::longWord(std::size_t at) const noexcept {
    return static_cast<std::uint32_t>(word(at)) << 16 | word(at + 2);
}

TrueType::Table TrueType::table(std::uint32_t tag) const {
    constexpr std::size_t kDirectory = 12;
    constexpr std::size_t kEntry = 16;
    const std::size_t count = word(4);
    for (std::size_t index = 0; index < count; ++index) {
        const std::size_t at = kDirectory + index * kEntry;
        if (longWord(at) != tag) continue;
        const Table found{longWord(at + 8), longWord(at + 12)};
        const bool inside =
            found.offset <= bytes_.size() && found.length <= bytes_.size() - found.offset;
        return inside ? found : Table{};
    }
    return {};
}

std::vector<std::uint16_t> TrueType::parts(std::uint16_t glyph) const {
    const std::size_t entry = longLocations_ ? 4 : 2;
    if ((glyph + 2u) * entry > locations_.length) return {};
    const auto location = [&](std::size_t index) -> std::size_t {
        const std::size_t at = locations_.offset + index * entry;
        return longLocations_ ? longWord(at) : 2u * word(at);
    };
    const std::size_t first = location(glyph);
    const std::size_t last = location(glyph + 1u);
    constexpr std::size_t kHeader = 10;
    if (last > glyphs_.length || first + kHeader > last) return {};
    const bool composed = (word(glyphs_.offset + first) & 0x8000) != 0;  // -1 outlines
    if (!composed) return {};
    std::vector<std::uint16_t> found;
    for (std::size_t at = first + kHeader; at + 4 <= last;) {
        const std::uint16_t flags = word(glyphs_.offset + at);
        found.push_back(word(glyphs_.offset + at + 2));
        if ((flags & kMoreParts) == 0) break;
        at += lengthOfPart(flags);
    }
    return found;
}

}  // namespace reports
