#include "domain/drawing/palette.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace domain {
namespace {

struct PaletteRow {
    Colour role{};
    std::uint32_t light{};  // 0xRRGGBB
    std::uint32_t dark{};
};

constexpr std::array<PaletteRow, kColours> kPalette{{
    {Colour::Ground, 0xFAF8F4, 0x1B1E22},
    {Colour::Sheet, 0xFFFFFF, 0x24282D},
    {Colour::Line, 0xD8D3C8, 0x3B4148},
    {Colour::Ink, 0x22262B, 0xECE8E0},
    {Colour::Quiet, 0x5B6068, 0xA9AEB5},
    {Colour::Accent, 0x0F5C5C, 0x6FC3BF},
    {Colour::OnAccent, 0xFFFFFF, 0x10201F},
    {Colour::Ask, 0x8A4B08, 0xF0B35B},
    {Colour::Stop, 0x9B1C31, 0xFF8E99},
    {Colour::Good, 0x2B6A33, 0x8CCB8F},
    {Colour::Away, 0x3F4E86, 0xA9B5EC},
    // In the dark the fills keep 85 % of each part, so that they do not dazzle.
    {Colour::Tooth, 0xFFFDF5, 0xD9D7D0},
    {Colour::Metal, 0x9AA1A9, 0x838990},
    {Colour::Resin, 0xE7C9BE, 0xC4ABA2},
    {Colour::Edge, 0x22262B, 0x16191C},
}};

/// One part of a colour made linear, as WCAG 2.2 defines relative luminance.
double linear(std::uint8_t part) {
    const double share = part / 255.0;
    return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
}

double luminance(Rgb colour) {
    return 0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) +
           0.0722 * linear(colour.blue);
}

}  // namespace

Rgb rgbOf(Colour role, Light light) noexcept {
    const PaletteRow& row = kPalette[static_cast<std::size_t>(role)];
    const std::uint32_t value = light == Light::Light ? row.light : row.dark;
    return {.red = static_cast<std::uint8_t>(value >> 16 & 0xFF),
            .green = static_cast<std::uint8_t>(value >> 8 & 0xFF),
            .blue = static_cast<std::uint8_t>(value & 0xFF)};
}

double contrast(Rgb one, Rgb other) noexcept {
    const auto [darker, lighter] = std::minmax({luminance(one), luminance(other)});
    return (lighter + 0.05) / (darker + 0.05);
}

}  // namespace domain
