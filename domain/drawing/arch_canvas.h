/// The sheet the arch picture is drawn on: arch and tooth coordinates to picture coordinates, and
/// the room that is taken; private to this folder.
#pragma once

#include <optional>

#include "domain/drawing/curves.h"
#include "domain/drawing/picture.h"

namespace domain {

struct Pen {
    Colour colour{Colour::Ink};
    double width{0.25};  ///< mm
    LineStyle style{LineStyle::Solid};
};

inline constexpr double kThin = 0.18;   ///< mm: fissures, lattice
inline constexpr double kLine = 0.28;   ///< mm: outlines
inline constexpr double kThick = 0.45;  ///< mm: edges of what matters most

/// One tooth in picture coordinates. Angles go round it from its mesial side over the cheek side:
/// 0 mesial, 90 buccal, 180 distal, -90 lingual.
struct ToothFrame {
    Point centre{};
    Point outward{};
    Point mesial{};
    double halfWidth{};  ///< mm, half the mesio-distal size
    double halfDepth{};  ///< mm, half the bucco-lingual size
    Polyline outline{};

    /// u = 1 is the mesial contact, v = 1 the cheek side; then `beyond` mm further outwards.
    Point at(double u, double v, double beyond = 0) const noexcept {
        return centre + mesial * (u * halfWidth) + outward * (v * halfDepth + beyond);
    }
    /// The place of the outline in that direction, `beyond` mm outside it.
    Point around(double degrees, double beyond) const;
    /// A line along the outline from one angle to another.
    Polyline alongOutline(double fromDegrees, double toDegrees, double beyond) const;
};

ToothFrame toothFrame(Tooth tooth);

/// The place `along` mm from the midline of the arch, `offset` mm outside its curve (negative:
/// towards the tongue).
Point onArch(Arch arch, double along, double offset);
/// The same from one place along the arch to another.
Polyline alongArch(Arch arch, double from, double to, double offset);
/// A place of the arch plane: x from the midline, y in front of the ends of the curve.
Point onPlane(Arch arch, double x, double y);

/// Collects the marks and keeps labels out of each other's way.
class ArchCanvas {
public:
    void fill(Polyline outline, Colour colour, Depicted depicts);
    void stroke(Polyline line, const Pen& pen, Depicted depicts);
    void outline(Polyline closed, const Pen& pen, Depicted depicts);
    /// An area and the line around it.
    void shape(const Polyline& closed, Colour inside, const Pen& pen, Depicted depicts);
    void dot(Point centre, double radius, Colour colour, Depicted depicts);
    void write(Words words);

    /// Labels keep out of the area from now on.
    void keepClear(const Polyline& outline);
    void keepClear(const Box& box) { taken_.push_back(box); }
    bool isClear(const Box& box) const;
    /// Where a label of that size may stand, as near to `wish` as there is room; of places equally
    /// near the one furthest `away` is taken.
    Box roomFor(double width, double height, Point wish, Point away) const;

    const std::vector<Mark>& marks() const noexcept { return marks_; }
    std::vector<Mark> takeMarks() { return std::move(marks_); }

private:
    std::vector<Mark> marks_{};
    std::vector<Box> taken_{};
    struct Area {
        Box around{};
        Polyline outline{};
    };
    std::vector<Area> areas_{};
};

}  // namespace domain
