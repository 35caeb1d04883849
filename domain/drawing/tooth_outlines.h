/// The shapes of crowns seen from above their edges, one for each kind of tooth, drawn by us;
/// private to this folder.
#pragma once

#include <span>
#include <vector>

#include "domain/teeth/arch_form.h"

namespace domain {

/// Corners of a smooth closed curve: x = 1 the mesial contact, -1 the distal one, y = 1 the cheek
/// or lip side, -1 the tongue side.
std::span<const Point> crownCorners(Tooth tooth);

/// Lines that hint at edges, ridges and fissures, in the same coordinates, each to be smoothed.
std::vector<std::vector<Point>> crownHints(Tooth tooth);

}  // namespace domain
