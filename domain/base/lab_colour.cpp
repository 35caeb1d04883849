#include "domain/base/lab_colour.h"

#include "domain/base/quantity.h"

namespace domain {
namespace {

constexpr std::int64_t kHundredths = 100;

/// A decimal with at most two places between the bounds, in hundredths.
std::optional<std::int32_t> parseAxis(std::string_view text, int least, int most) {
    const bool negative = text.starts_with('-');
    if (negative) text.remove_prefix(1);
    const auto size = parseDecimal(text, kHundredths, 1000 * kHundredths);
    if (!size) return {};
    const auto value = negative ? -*size : *size;
    if (value < least * kHundredths || value > most * kHundredths) return {};
    return static_cast<std::int32_t>(value);
}

}  // namespace

std::optional<LabColour> LabColour::parse(std::string_view text) {
    const auto first = text.find(' ');
    const auto second = text.find(' ', first == std::string_view::npos ? first : first + 1);
    if (second == std::string_view::npos) return {};
    const auto lightness = parseAxis(text.substr(0, first), 0, 100);
    const auto a = parseAxis(text.substr(first + 1, second - first - 1), -128, 127);
    const auto b = parseAxis(text.substr(second + 1), -128, 127);
    if (!lightness || !a || !b) return {};
    return LabColour{*lightness, *a, *b};
}

std::string LabColour::text() const {
    return decimalText(lightness_, kHundredths) + ' ' + decimalText(a_, kHundredths) + ' ' +
           decimalText(b_, kHundredths);
}

}  // namespace domain
