/// The colours of the house, by what they are for: on paper, on screen, in the light and the dark.
#pragma once

#include <cstdint>

namespace domain {

enum class Colour : std::uint8_t {
    Ground,    ///< behind the sheets
    Sheet,     ///< what is written on
    Line,      ///< hairlines
    Ink,       ///< text
    Quiet,     ///< secondary text
    Accent,    ///< the one thing to press
    OnAccent,  ///< text on it
    Ask,       ///< someone must answer
    Stop,      ///< refused, expired, failed
    Good,      ///< done, clean
    Away,      ///< at the practice
    Tooth,     ///< fills of the arch picture, light in any light
    Metal,
    Resin,
    Edge,  ///< lines and text upon those fills, dark in any light
};
inline constexpr int kColours = 15;

enum class Light : std::uint8_t { Light, Dark };

struct Rgb {
    std::uint8_t red{};
    std::uint8_t green{};
    std::uint8_t blue{};
    friend constexpr bool operator==(Rgb, Rgb) = default;
};

Rgb rgbOf(Colour role, Light light) noexcept;

/// Contrast ratio of two colours, 1 to 21, by their relative luminance (W3C, WCAG 2.2).
double contrast(Rgb one, Rgb other) noexcept;

}  // namespace domain
