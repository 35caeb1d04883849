/// A colour as a colorimeter gives it: lightness L* and the axes a* and b* of CIELAB.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace domain {

/// Hundredths of a unit, so that what was measured as 76.04 stays that. L* lies between 0 and 100,
/// a* and b* between -128 and 127.
class LabColour {
public:
    constexpr LabColour() = default;
    static constexpr LabColour ofHundredths(std::int32_t lightness, std::int32_t a,
                                            std::int32_t b) noexcept {
        return LabColour{lightness, a, b};
    }
    /// Reads what text() writes: L*, a* and b* as plain decimals with one space between them.
    static std::optional<LabColour> parse(std::string_view text);

    double lightness() const noexcept { return lightness_ / 100.0; }
    double a() const noexcept { return a_ / 100.0; }
    double b() const noexcept { return b_ / 100.0; }
    /// "76.04 -0.08 16.73"
    std::string text() const;

    friend constexpr bool operator==(LabColour, LabColour) = default;

private:
    constexpr LabColour(std::int32_t lightness, std::int32_t a, std::int32_t b) noexcept
        : lightness_{lightness}, a_{a}, b_{b} {}
    std::int32_t lightness_{};
    std::int32_t a_{};
    std::int32_t b_{};
};

inline constexpr std::string_view kLabExample = "76.04 -0.08 16.73";

}  // namespace domain
