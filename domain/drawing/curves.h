/// Smooth lines through a few points, and bands along a line; private to this folder.
#pragma once

#include <vector>

#include "domain/teeth/arch_form.h"

namespace domain {

using Polyline = std::vector<Point>;

/// A smooth curve through the points (centripetal enough at even spacing: uniform Catmull-Rom).
Polyline smoothOpen(const Polyline& through);
Polyline smoothClosed(const Polyline& through);

Polyline circle(Point centre, double radius);

/// The closed outline of a band along a line, its width going evenly from one value to another.
Polyline band(const Polyline& along, double widthAtStart, double widthAtEnd);

/// The line shifted sideways, to the left of its direction for positive values.
Polyline besideLine(const Polyline& line, double distance);

/// Places on a line at even distances, the first half a distance from its start.
Polyline evenly(const Polyline& line, double distance);

/// from, from + step, ... up to and including `to`.
std::vector<double> steps(double from, double to, double step);

Point between(Point one, Point other, double share) noexcept;
/// The vector with length 1; (0, 0) stays.
Point unit(Point vector) noexcept;
/// The place on a closed outline nearest to the point.
Point nearestOn(const Polyline& outline, Point point) noexcept;

}  // namespace domain
