/// Reads from a TrueType font which glyphs are composed of which others.
///
/// libharu 2.3.0 embeds the parts of a composed glyph but not the parts of those parts, so that
/// letters such as U+0457 would print without their dots. Whoever embeds a font asks here for all.
/// Source of the layout: OpenType specification, tables head, loca and glyf.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace reports {

class TrueType {
public:
    /// Takes the bytes of a font file. Of a file that is none, no glyph has parts.
    explicit TrueType(std::string bytes);

    /// The glyphs a composed glyph is drawn from, one level down; empty for a simple one.
    std::vector<std::uint16_t> parts(std::uint16_t glyph) const;

private:
    struct Table {
        std::size_t offset{};
        std::size_t length{};
    };
    Table table(std::uint32_t tag) const;
    std::uint16_t word(std::size_t at) const noexcept;
    std::uint32_t longWord(std::size_t at) const noexcept;

    std::string bytes_;
    Table glyphs_{};
    Table locations_{};
    bool longLocations_{false};
};

}  // namespace reports
