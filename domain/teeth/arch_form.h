/// Where the teeth stand: the dental arch as a curve, and each tooth's place along it.
///
/// Source of the curve: Braun, Hnat, Fender, Legan, The form of the human dental arch, Angle
/// Orthodontist 1998;68:29-36: y = 3.0314 d ((x/w + 1/2)^0.8 (1/2 - x/w)^0.8). The mean widths and
/// depths are those that fit the crowns of domain/teeth/crown_size, a choice of ours: 58 and 44 mm
/// for the upper arch, 55 and 42 mm for the lower.
#pragma once

#include <array>

#include "domain/teeth/tooth.h"

namespace domain {

/// A place in the plane of a picture or an arch, in millimetres.
struct Point {
    double x{};
    double y{};
    friend constexpr Point operator+(Point a, Point b) noexcept { return {a.x + b.x, a.y + b.y}; }
    friend constexpr Point operator-(Point a, Point b) noexcept { return {a.x - b.x, a.y - b.y}; }
    friend constexpr Point operator*(Point a, double k) noexcept { return {a.x * k, a.y * k}; }
    friend constexpr bool operator==(Point, Point) = default;
};

/// Millimetres between two places.
double distance(Point a, Point b) noexcept;

struct ArchExtent {
    double width{};  ///< mm between the ends of the curve, behind the second molars
    double depth{};  ///< mm from there to the central incisors
};

constexpr ArchExtent meanExtent(Arch arch) noexcept {
    return arch == Arch::Upper ? ArchExtent{58.0, 44.0} : ArchExtent{55.0, 42.0};
}

/// A place on the arch. x grows from the patient's right to the left, y from behind to the front,
/// the origin lies midway between the ends of the curve.
struct ArchSpot {
    Point at{};
    Point outward{};  ///< unit vector away from the tongue
};

struct ToothPlace {
    Point centre{};
    Point outward{};  ///< unit vector, towards cheek or lip
    Point mesial{};   ///< unit vector at right angles to it, towards the midline along the arch
    double mesiodistal{};
    double buccolingual{};
    double from{};  ///< where along the arch the tooth begins, on the patient's right side of it
    double to{};    ///< and where it ends
};

class ArchForm {
public:
    /// Width and depth in mm, both above 0.
    ArchForm(Arch arch, ArchExtent extent);
    static const ArchForm& mean(Arch arch);

    Arch arch() const noexcept { return arch_; }
    ArchExtent extent() const noexcept { return extent_; }
    /// The curve itself: y mm in front of its ends at x mm from the midline, |x| <= width / 2.
    double curve(double x) const noexcept;
    /// Millimetres along the curve from the midline to either end.
    double halfLength() const noexcept { return lengths_.back(); }
    /// The place `along` mm from the midline, negative towards the patient's right. Beyond the ends
    /// the curve is carried on straight backwards, which is where third molars stand.
    ArchSpot spot(double along) const noexcept;
    /// Teeth stand in contact from the midline outwards, each as wide as its mean crown; on an arch
    /// longer or shorter than the mean they are wider or narrower in proportion.
    ToothPlace place(Tooth tooth) const noexcept;

private:
    static constexpr std::size_t kSteps = 128;

    Arch arch_;
    ArchExtent extent_;
    double stretch_{1};  ///< its length as a share of the mean arch's
    std::array<Point, kSteps + 1> points_{};
    std::array<double, kSteps + 1> lengths_{};
};

}  // namespace domain
