#include "domain/teeth/arch_form.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "domain/teeth/crown_size.h"

namespace domain {
namespace {

constexpr double kScale = 3.0314;  // makes the curve as high as it is deep
constexpr double kExponent = 0.8;  // both from the paper named in the header

/// The height of a curve of depth 1 at x / width = `share`.
double unitCurve(double share) noexcept {
    const double inside = std::clamp(share, -0.5, 0.5);
    return kScale * std::pow(inside + 0.5, kExponent) * std::pow(0.5 - inside, kExponent);
}

/// The curve of width 1 and depth 1 from the midline to one end. With x = sin(t) / 2 the steps stay
/// even where the curve turns steep.
template <std::size_t count>
std::array<Point, count> unitPoints() noexcept {
    std::array<Point, count> points{};
    for (std::size_t step = 0; step < count; ++step) {
        const double angle =
            std::numbers::pi / 2 * static_cast<double>(step) / static_cast<double>(count - 1);
        const double share = std::sin(angle) / 2;
        points[step] = {share, unitCurve(share)};
    }
    return points;
}

Point unit(Point vector) noexcept { return vector * (1 / std::hypot(vector.x, vector.y)); }

/// From the midline to the mesial contact of the tooth, by mean crowns.
double mesialContact(Tooth tooth) noexcept {
    double along = 0;
    for (int place = 1; place < tooth.place(); ++place)
        along += millimetres(
            crownSize(Tooth::at(tooth.arch(), tooth.side() == Side::Right ? 8 - place : place + 7))
                .mesiodistal);
    return along;
}

}  // namespace

double distance(Point a, Point b) noexcept { return std::hypot(a.x - b.x, a.y - b.y); }

ArchForm::ArchForm(Arch arch, ArchExtent extent) : arch_{arch}, extent_{extent} {
    static const auto kUnit = unitPoints<kSteps + 1>();
    for (std::size_t step = 0; step <= kSteps; ++step) {
        points_[step] = {kUnit[step].x * extent.width, kUnit[step].y * extent.depth};
        if (step > 0)
            lengths_[step] = lengths_[step - 1] + distance(points_[step], points_[step - 1]);
    }
    const ArchExtent usual = meanExtent(arch);
    if (extent.width != usual.width || extent.depth != usual.depth)
        stretch_ = halfLength() / mean(arch).halfLength();
}

const ArchForm& ArchForm::mean(Arch arch) {
    static const ArchForm kUpper{Arch::Upper, meanExtent(Arch::Upper)};
    static const ArchForm kLower{Arch::Lower, meanExtent(Arch::Lower)};
    return arch == Arch::Upper ? kUpper : kLower;
}

double ArchForm::curve(double x) const noexcept {
    return extent_.depth * unitCurve(x / extent_.width);
}

ArchSpot ArchForm::spot(double along) const noexcept {
    const double side = along < 0 ? -1 : 1;
    const double length = std::abs(along);
    if (length >= halfLength())
        return {.at = {side * points_.back().x, halfLength() - length}, .outward = {side, 0}};
    const auto beyond = std::ranges::upper_bound(lengths_, length);
    const auto next = static_cast<std::size_t>(beyond - lengths_.begin());
    const Point from = points_[next - 1];
    const Point leg = points_[next] - from;
    const double share = (length - lengths_[next - 1]) / (lengths_[next] - lengths_[next - 1]);
    const Point at = from + leg * share;
    const Point ahead = unit(leg);
    return {.at = {side * at.x, at.y}, .outward = {side * -ahead.y, ahead.x}};
}

ToothPlace ArchForm::place(Tooth tooth) const noexcept {
    const double side = tooth.side() == Side::Right ? -1 : 1;
    const CrownSize crown = crownSize(tooth);
    const double width = millimetres(crown.mesiodistal) * stretch_;
    const double nearEnd = mesialContact(tooth) * stretch_;
    const double farEnd = nearEnd + width;
    const Point mesial = unit(spot(side * nearEnd).at - spot(side * farEnd).at);
    return {.centre = spot(side * (nearEnd + farEnd) / 2).at,
            .outward = Point{mesial.y, -mesial.x} * side,
            .mesial = mesial,
            .mesiodistal = width,
            .buccolingual = millimetres(crown.buccolingual),
            .from = std::min(side * nearEnd, side * farEnd),
            .to = std::max(side * nearEnd, side * farEnd)};
}

}  // namespace domain
