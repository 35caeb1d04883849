#include "domain/drawing/arch_canvas.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "domain/drawing/arch_picture.h"
#include "domain/drawing/tooth_outlines.h"

namespace domain {
namespace {

constexpr double kZero = 59;  // mm from that edge to y = 0

double radians(double degrees) { return degrees * std::numbers::pi / 180; }

bool overlaps(const Box& box, const Polyline& area) {
    const Point corners[] = {{box.left, box.top},
                             {box.right, box.top},
                             {box.right, box.bottom},
                             {box.left, box.bottom},
                             box.centre()};
    if (std::ranges::any_of(corners, [&](Point corner) { return contains(area, corner); }))
        return true;
    return std::ranges::any_of(area, [&](Point point) {
        return point.x > box.left && point.x < box.right && point.y > box.top &&
               point.y < box.bottom;
    });
}

/// How far down a place `y` mm in front of the ends of the curve stands.
double downOf(Arch arch, double y) {
    return arch == Arch::Upper ? kZero - y : kArchPictureHeight - kZero + y;
}

}  // namespace

Point ToothFrame::around(double degrees, double beyond) const {
    // The outline is met by walking outwards from the centre: it is seen whole from there.
    const Point ray = unit(mesial * (std::cos(radians(degrees)) * halfWidth) +
                           outward * (std::sin(radians(degrees)) * halfDepth));
    double reach = 0;
    for (std::size_t corner = 0; corner < outline.size(); ++corner) {
        const Point from = outline[corner] - centre;
        const Point leg = outline[(corner + 1) % outline.size()] - outline[corner];
        const double parallel = ray.x * leg.y - ray.y * leg.x;
        if (std::abs(parallel) < 1e-9) continue;
        const double along = (from.x * leg.y - from.y * leg.x) / parallel;
        const double share = (from.x * ray.y - from.y * ray.x) / parallel;
        if (share >= -1e-9 && share <= 1 + 1e-9) reach = std::max(reach, along);
    }
    return centre + ray * (reach + beyond);
}

Polyline ToothFrame::alongOutline(double fromDegrees, double toDegrees, double beyond) const {
    constexpr int kSteps = 28;
    Polyline line;
    for (int step = 0; step <= kSteps; ++step)
        line.push_back(around(fromDegrees + (toDegrees - fromDegrees) * step / kSteps, beyond));
    return line;
}

Point onPlane(Arch arch, double x, double y) {
    return {kArchPictureWidth / 2 + x, downOf(arch, y)};
}

ToothFrame toothFrame(Tooth tooth) {
    const ToothPlace place = ArchForm::mean(tooth.arch()).place(tooth);
    const double up = tooth.arch() == Arch::Upper ? -1 : 1;
    ToothFrame frame{.centre = onPlane(tooth.arch(), place.centre.x, place.centre.y),
                     .outward = {place.outward.x, place.outward.y * up},
                     .mesial = {place.mesial.x, place.mesial.y * up},
                     .halfWidth = place.mesiodistal / 2,
                     .halfDepth = place.buccolingual / 2,
                     .outline = {}};
    Polyline corners;
    for (const Point corner : crownCorners(tooth)) corners.push_back(frame.at(corner.x, corner.y));
    frame.outline = smoothClosed(corners);
    return frame;
}

Point onArch(Arch arch, double along, double offset) {
    // A smaller or larger curve of the same form rather than a parallel: it never crosses itself.
    const auto [width, depth] = meanExtent(arch);
    const Point at = ArchForm::mean(arch).spot(along).at;
    return onPlane(arch, at.x * (1 + 2 * offset / width),
                   at.y > 0 ? at.y * (1 + offset / depth) : at.y);
}

Polyline alongArch(Arch arch, double from, double to, double offset) {
    const int steps = std::max(2, static_cast<int>(std::abs(to - from) / 1.2));
    Polyline line;
    for (int step = 0; step <= steps; ++step)
        line.push_back(onArch(arch, from + (to - from) * step / steps, offset));
    return line;
}

void ArchCanvas::fill(Polyline outline, Colour colour, Depicted depicts) {
    marks_.emplace_back(Fill{.outline = std::move(outline), .colour = colour, .depicts = depicts});
}

void ArchCanvas::stroke(Polyline line, const Pen& pen, Depicted depicts) {
    marks_.emplace_back(Stroke{.line = std::move(line),
                               .closed = false,
                               .colour = pen.colour,
                               .style = pen.style,
                               .width = pen.width,
                               .depicts = depicts});
}

void ArchCanvas::outline(Polyline closed, const Pen& pen, Depicted depicts) {
    stroke(std::move(closed), pen, depicts);
    std::get<Stroke>(marks_.back()).closed = true;
}

void ArchCanvas::shape(const Polyline& closed, Colour inside, const Pen& pen, Depicted depicts) {
    fill(closed, inside, depicts);
    outline(closed, pen, depicts);
}

void ArchCanvas::dot(Point centre, double radius, Colour colour, Depicted depicts) {
    fill(circle(centre, radius), colour, depicts);
}

void ArchCanvas::write(Words words) {
    keepClear(boxOf(words));
    marks_.emplace_back(std::move(words));
}

void ArchCanvas::keepClear(const Polyline& outline) { areas_.push_back({boxOf(outline), outline}); }

bool ArchCanvas::isClear(const Box& box) const {
    const bool onSheet = box.left >= 0 && box.top >= 0 && box.right <= kArchPictureWidth &&
                         box.bottom <= kArchPictureHeight;
    return onSheet &&
           std::ranges::none_of(taken_, [&](const Box& other) { return box.touches(other); }) &&
           std::ranges::none_of(areas_, [&](const Area& area) {
               return box.touches(area.around) && overlaps(box, area.outline);
           });
}

Box ArchCanvas::roomFor(double width, double height, Point wish, Point away) const {
    const auto boxAt = [&](Point centre) {
        return Box{.left = centre.x - width / 2,
                   .top = centre.y - height / 2,
                   .right = centre.x + width / 2,
                   .bottom = centre.y + height / 2};
    };
    constexpr double kStepOut = 0.6;
    constexpr int kRings = 50;
    constexpr int kTurns = 24;
    for (int ring = 0; ring < kRings; ++ring)
        for (int turn = 0; turn <= kTurns / 2; ++turn)
            for (const double side : {1.0, -1.0}) {
                const double angle = side * 2 * std::numbers::pi * turn / kTurns;
                const Point towards{away.x * std::cos(angle) - away.y * std::sin(angle),
                                    away.x * std::sin(angle) + away.y * std::cos(angle)};
                const Box box = boxAt(wish + towards * (kStepOut * ring));
                if (isClear(box)) return box;
            }
    return boxAt(wish);
}

}  // namespace domain
