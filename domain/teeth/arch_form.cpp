#include "domain/teeth/arch_form.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "domain/teeth/crown_size.h"

namespace domain {
namespace {

constexpr double kScale = 3.0314;  // makes the curve as high as it is deep
constexpr double kExponent = 0.8;  // both from the paper named in the header
constexpr int kSteps = 2048;

/// The curve walked from the midline to one end, with the length so far. With x = w/2 sin t the
/// steps stay even where the curve turns steep.
struct WalkedCurve {
    std::array<Point, kSteps + 1> points{};
    std::array<double, kSteps + 1> lengths{};
};

WalkedCurve walk(Arch arch) {
    WalkedCurve walked;
    for (std::size_t step = 0; step <= kSteps; ++step) {
        const double angle = std::numbers::pi / 2 * static_cast<double>(step) / kSteps;
        const double x = archExtent(arch).width / 2 * std::sin(angle);
        const Point here{x, archCurve(arch, x)};
        walked.points[step] = here;
        if (step == 0) continue;
        const Point leg = here - walked.points[step - 1];
        walked.lengths[step] = walked.lengths[step - 1] + std::hypot(leg.x, leg.y);
    }
    return walked;
}

const WalkedCurve& walkedCurve(Arch arch) {
    static const WalkedCurve kUpper = walk(Arch::Upper);
    static const WalkedCurve kLower = walk(Arch::Lower);
    return arch == Arch::Upper ? kUpper : kLower;
}

Point unit(Point vector) {
    const double length = std::hypot(vector.x, vector.y);
    return vector * (1 / length);
}

double widthOf(Tooth tooth) {
    return static_cast<double>(crownSize(tooth).mesiodistal.count()) / 1000;
}

/// From the midline to the mesial contact of the tooth.
double mesialContact(Tooth tooth) {
    double along = 0;
    for (int place = 1; place < tooth.place(); ++place)
        along +=
            widthOf(Tooth::at(tooth.arch(), tooth.side() == Side::Right ? 8 - place : place + 7));
    return along;
}

}  // namespace

double archCurve(Arch arch, double x) noexcept {
    const auto [width, depth] = archExtent(arch);
    const double share = std::clamp(x / width, -0.5, 0.5);
    return kScale * depth * std::pow(share + 0.5, kExponent) * std::pow(0.5 - share, kExponent);
}

double archHalfLength(Arch arch) { return walkedCurve(arch).lengths.back(); }

ArchSpot archSpot(Arch arch, double along) {
    const WalkedCurve& walked = walkedCurve(arch);
    const double side = along < 0 ? -1 : 1;
    const double length = std::abs(along);
    if (length >= walked.lengths.back())
        return {.at = {side * walked.points.back().x, walked.lengths.back() - length},
                .outward = {side, 0}};
    const auto beyond = std::ranges::upper_bound(walked.lengths, length);
    const auto next = static_cast<std::size_t>(beyond - walked.lengths.begin());
    const Point from = walked.points[next - 1];
    const Point leg = walked.points[next] - from;
    const double share =
        (length - walked.lengths[next - 1]) / (walked.lengths[next] - walked.lengths[next - 1]);
    const Point at = from + leg * share;
    const Point ahead = unit(leg);
    return {.at = {side * at.x, at.y}, .outward = {side * -ahead.y, ahead.x}};
}

ToothPlace toothPlace(Tooth tooth) {
    const double side = tooth.side() == Side::Right ? -1 : 1;
    const double nearEnd = mesialContact(tooth);
    const double farEnd = nearEnd + widthOf(tooth);
    const Arch arch = tooth.arch();
    const Point mesial = unit(archSpot(arch, side * nearEnd).at - archSpot(arch, side * farEnd).at);
    return {.centre = archSpot(arch, side * (nearEnd + farEnd) / 2).at,
            .outward = Point{mesial.y, -mesial.x} * side,
            .mesial = mesial,
            .mesiodistal = widthOf(tooth),
            .buccolingual = static_cast<double>(crownSize(tooth).buccolingual.count()) / 1000,
            .from = std::min(side * nearEnd, side * farEnd),
            .to = std::max(side * nearEnd, side * farEnd)};
}

}  // namespace domain
