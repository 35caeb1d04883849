#include "domain/base/colour_difference.h"

#include <cmath>
#include <numbers>

namespace domain {
namespace {

constexpr double kTurn = 360;

double inRadians(double degrees) noexcept { return degrees * std::numbers::pi / 180; }
double cosine(double degrees) noexcept { return std::cos(inRadians(degrees)); }
double square(double value) noexcept { return value * value; }

/// The factor sqrt(c^7 / (c^7 + 25^7)) that calms strong colours.
double calmed(double chroma) noexcept {
    constexpr double k25ToThe7th = 6103515625.0;
    const double seventh = std::pow(chroma, 7);
    return std::sqrt(seventh / (seventh + k25ToThe7th));
}

/// Degrees, 0 to 360; 0 for a grey.
double hueOf(double a, double b) noexcept {
    if (a == 0 && b == 0) return 0;
    const double degrees = std::atan2(b, a) * 180 / std::numbers::pi;
    return degrees < 0 ? degrees + kTurn : degrees;
}

struct HueStep {
    double difference{};
    double mean{};
};

/// The shorter way round from one hue to the other, and the hue half way along it.
HueStep hueStep(double first, double second, bool grey) noexcept {
    if (grey) return {0, first + second};
    const double sum = first + second;
    const double step = second - first;
    if (std::abs(step) <= kTurn / 2) return {step, sum / 2};
    return {step > 0 ? step - kTurn : step + kTurn, (sum < kTurn ? sum + kTurn : sum - kTurn) / 2};
}

}  // namespace

double colourDifference(const Lab& first, const Lab& second) noexcept {
    const double meanChroma = (std::hypot(first.a, first.b) + std::hypot(second.a, second.b)) / 2;
    const double stretch = 1 + (1 - calmed(meanChroma)) / 2;
    const double firstA = first.a * stretch;
    const double secondA = second.a * stretch;
    const double firstChroma = std::hypot(firstA, first.b);
    const double secondChroma = std::hypot(secondA, second.b);
    const auto [hueDifference, hue] =
        hueStep(hueOf(firstA, first.b), hueOf(secondA, second.b), firstChroma * secondChroma == 0);

    const double lightness = (first.lightness + second.lightness) / 2;
    const double chroma = (firstChroma + secondChroma) / 2;
    const double weighing = 1 - 0.17 * cosine(hue - 30) + 0.24 * cosine(2 * hue) +
                            0.32 * cosine(3 * hue + 6) - 0.20 * cosine(4 * hue - 63);
    const double fromMiddle = square(lightness - 50);
    const double lightnessScale = 1 + 0.015 * fromMiddle / std::sqrt(20 + fromMiddle);
    const double chromaScale = 1 + 0.045 * chroma;
    const double hueScale = 1 + 0.015 * chroma * weighing;
    const double turned = 30 * std::exp(-square((hue - 275) / 25));
    const double rotation = -2 * calmed(chroma) * std::sin(inRadians(2 * turned));

    const double lightnessTerm = (second.lightness - first.lightness) / lightnessScale;
    const double chromaTerm = (secondChroma - firstChroma) / chromaScale;
    const double hueTerm = 2 * std::sqrt(firstChroma * secondChroma) *
                           std::sin(inRadians(hueDifference / 2)) / hueScale;
    return std::sqrt(square(lightnessTerm) + square(chromaTerm) + square(hueTerm) +
                     rotation * chromaTerm * hueTerm);
}

double colourDifference(LabColour first, LabColour second) noexcept {
    return colourDifference(Lab{first.lightness(), first.a(), first.b()},
                            Lab{second.lightness(), second.a(), second.b()});
}

}  // namespace domain
