/// A figure known only to lie between two others.
#pragma once

#include <algorithm>

namespace domain {

struct Range {
    double least{};
    double most{};

    static constexpr Range exactly(double value) noexcept { return {value, value}; }
    /// Of two figures in either order.
    static constexpr Range between(double a, double b) noexcept {
        return {std::min(a, b), std::max(a, b)};
    }
    constexpr double middle() const noexcept { return (least + most) / 2; }
    constexpr bool overlaps(Range other) const noexcept {
        return least <= other.most && other.least <= most;
    }
    friend constexpr bool operator==(Range, Range) = default;
};

}  // namespace domain
