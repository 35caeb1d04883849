#include "domain/drawing/curves.h"

#include <cmath>
#include <numbers>

namespace domain {
namespace {

constexpr int kStepsPerPiece = 8;
constexpr int kCircleCorners = 32;

/// The piece of a Catmull-Rom curve from b to c; a and d bend it. Without its last point.
void addPiece(Polyline& line, Point a, Point b, Point c, Point d) {
    for (int step = 0; step < kStepsPerPiece; ++step) {
        const double t = static_cast<double>(step) / kStepsPerPiece;
        const double square = t * t;
        const double cube = square * t;
        line.push_back(a * (-0.5 * cube + square - 0.5 * t) + b * (1.5 * cube - 2.5 * square + 1) +
                       c * (-1.5 * cube + 2 * square + 0.5 * t) + d * (0.5 * cube - 0.5 * square));
    }
}

/// The direction of the line at one of its points.
Point directionAt(const Polyline& line, std::size_t index) {
    const Point before = line[index == 0 ? 0 : index - 1];
    const Point after = line[index + 1 == line.size() ? index : index + 1];
    return unit(after - before);
}

}  // namespace

Polyline smoothOpen(const Polyline& through) {
    if (through.size() < 3) return through;
    Polyline line;
    const std::size_t last = through.size() - 1;
    for (std::size_t at = 0; at < last; ++at)
        addPiece(line, through[at == 0 ? 0 : at - 1], through[at], through[at + 1],
                 through[at + 1 == last ? last : at + 2]);
    line.push_back(through.back());
    return line;
}

Polyline smoothClosed(const Polyline& through) {
    Polyline line;
    const std::size_t count = through.size();
    for (std::size_t at = 0; at < count; ++at)
        addPiece(line, through[(at + count - 1) % count], through[at], through[(at + 1) % count],
                 through[(at + 2) % count]);
    return line;
}

Polyline circle(Point centre, double radius) {
    Polyline line;
    for (int corner = 0; corner < kCircleCorners; ++corner) {
        const double angle = 2 * std::numbers::pi * corner / kCircleCorners;
        line.push_back(centre + Point{radius * std::cos(angle), radius * std::sin(angle)});
    }
    return line;
}

Polyline band(const Polyline& along, double widthAtStart, double widthAtEnd) {
    Polyline left;
    Polyline right;
    for (std::size_t at = 0; at < along.size(); ++at) {
        const double share =
            along.size() < 2 ? 0 : static_cast<double>(at) / static_cast<double>(along.size() - 1);
        const double half = (widthAtStart + (widthAtEnd - widthAtStart) * share) / 2;
        const Point ahead = directionAt(along, at);
        const Point aside{-ahead.y * half, ahead.x * half};
        left.push_back(along[at] + aside);
        right.push_back(along[at] - aside);
    }
    left.insert(left.end(), right.rbegin(), right.rend());
    return left;
}

Polyline besideLine(const Polyline& line, double distance) {
    Polyline shifted;
    for (std::size_t at = 0; at < line.size(); ++at) {
        const Point ahead = directionAt(line, at);
        shifted.push_back(line[at] + Point{-ahead.y * distance, ahead.x * distance});
    }
    return shifted;
}

Polyline evenly(const Polyline& line, double distanceApart) {
    Polyline places;
    double next = distanceApart / 2;
    double walked = 0;
    for (std::size_t at = 1; at < line.size(); ++at) {
        const double leg = distance(line[at - 1], line[at]);
        while (leg > 0 && next <= walked + leg) {
            places.push_back(between(line[at - 1], line[at], (next - walked) / leg));
            next += distanceApart;
        }
        walked += leg;
    }
    return places;
}

std::vector<double> steps(double from, double to, double step) {
    const auto count = static_cast<int>(std::floor((to - from) / step + 1e-9)) + 1;
    std::vector<double> values;
    values.reserve(count > 0 ? static_cast<std::size_t>(count) : 0);
    for (int at = 0; at < count; ++at) values.push_back(from + step * at);
    return values;
}

Point between(Point one, Point other, double share) noexcept { return one + (other - one) * share; }

Point unit(Point vector) noexcept {
    const double length = std::hypot(vector.x, vector.y);
    return length > 0 ? vector * (1 / length) : vector;
}

Point nearestOn(const Polyline& outline, Point point) noexcept {
    Point nearest = outline.empty() ? point : outline.front();
    for (std::size_t at = 0; at < outline.size(); ++at) {
        const Point from = outline[at];
        const Point leg = outline[(at + 1) % outline.size()] - from;
        const double square = leg.x * leg.x + leg.y * leg.y;
        const Point away = point - from;
        const double share =
            square > 0 ? std::fmin(1, std::fmax(0, (away.x * leg.x + away.y * leg.y) / square)) : 0;
        const Point candidate = from + leg * share;
        if (distance(candidate, point) < distance(nearest, point)) nearest = candidate;
    }
    return nearest;
}

}  // namespace domain
