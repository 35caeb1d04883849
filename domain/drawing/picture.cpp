#include "domain/drawing/picture.h"

#include <algorithm>

namespace domain {
namespace {

// Widths of a sans face as shares of its size. Digits of the faces in use take 0.56 to 0.64.
constexpr double kCharacterWidth = 0.64;
constexpr double kAscent = 0.76;
constexpr double kDescent = 0.22;

/// Characters of a UTF-8 text: its bytes without those that continue one.
long charactersOf(const std::string& text) {
    return std::ranges::count_if(text, [](char byte) { return (byte & 0xC0) != 0x80; });
}

double leftOf(const Words& words, double width) {
    switch (words.anchor) {
        case Anchor::Left:
            return words.at.x;
        case Anchor::Middle:
            return words.at.x - width / 2;
        case Anchor::Right:
            return words.at.x - width;
    }
    return words.at.x;
}

}  // namespace

std::vector<double> dashesOf(LineStyle style) {
    switch (style) {
        case LineStyle::Solid:
            return {};
        case LineStyle::Dashed:
            return {1.2, 0.8};
        case LineStyle::Dotted:
            return {0.35, 0.55};
        case LineStyle::DashDot:
            return {2.4, 0.8, 0.4, 0.8};
    }
    return {};
}

Box boxOf(const Words& words) {
    const double width =
        static_cast<double>(charactersOf(words.text)) * kCharacterWidth * words.size;
    const double left = leftOf(words, width);
    return {.left = left,
            .top = words.at.y - kAscent * words.size,
            .right = left + width,
            .bottom = words.at.y + kDescent * words.size};
}

Box boxOf(const std::vector<Point>& outline) {
    if (outline.empty()) return {};
    Box box{outline[0].x, outline[0].y, outline[0].x, outline[0].y};
    for (const Point point : outline) {
        box.left = std::min(box.left, point.x);
        box.top = std::min(box.top, point.y);
        box.right = std::max(box.right, point.x);
        box.bottom = std::max(box.bottom, point.y);
    }
    return box;
}

bool contains(const std::vector<Point>& outline, Point point) noexcept {
    bool inside = false;
    for (std::size_t at = 0; at < outline.size(); ++at) {
        const Point& one = outline[at];
        const Point& other = outline[(at + 1) % outline.size()];
        if ((one.y > point.y) == (other.y > point.y)) continue;
        const double crossing = one.x + (point.y - one.y) / (other.y - one.y) * (other.x - one.x);
        if (point.x < crossing) inside = !inside;
    }
    return inside;
}

}  // namespace domain
