#include <algorithm>
#include <cmath>
#include <numbers>

#include "domain/design/design_view.h"
#include "domain/drawing/arch_parts.h"

namespace domain {
namespace {

constexpr double kHalfTooth = 4.2;  // mm from the curve of the arch to the gingival margin
constexpr double kUnderSaddle = -8;

double mm(std::optional<Microns> length, double otherwise) {
    return length ? millimetres(*length) : otherwise;
}

/// How far along one side of the arch the parts stand that a connector joins, mm from the midline.
struct Reach {
    double front{};
    double back{};
};

/// Of the saddles behind the canines; where there are none, of the teeth that carry parts.
Reach reachOf(const Prescription& prescription, Side side) {
    constexpr Reach kNothingThere{22.5, 46.5};
    std::vector<Tooth> saddled;
    std::vector<Tooth> leaning;
    for (const Tooth tooth : toBeReplaced(prescription).teeth())
        if (tooth.side() == side && tooth.place() > 3) saddled.push_back(tooth);
    for (const Tooth tooth : abutments(prescription).teeth())
        if (tooth.arch() == prescription.arch && tooth.side() == side) leaning.push_back(tooth);
    const auto& teeth = saddled.empty() ? leaning : saddled;
    if (teeth.empty()) return kNothingThere;
    Reach reach{1000, 0};
    for (const Tooth tooth : teeth) {
        const ToothPlace place = ArchForm::mean(tooth.arch()).place(tooth);
        reach.front = std::min({reach.front, std::abs(place.from), std::abs(place.to)});
        reach.back = std::max({reach.back, std::abs(place.from), std::abs(place.to)});
    }
    return reach;
}

/// Half of a border across the arch: level at the midline, meeting the side smoothly.
void addHalfBorder(Polyline& line, Point side, Point middle) {
    constexpr int kSteps = 14;
    for (int step = 1; step <= kSteps; ++step) {
        const double share = static_cast<double>(step) / kSteps;
        const double eased = 1 - (1 - share) * (1 - share);
        line.push_back(
            {side.x + (middle.x - side.x) * share, side.y + (middle.y - side.y) * eased});
    }
}

void addBorderAcross(Polyline& line, Point from, Point middle, Point to) {
    addHalfBorder(line, from, middle);
    Polyline half;
    addHalfBorder(half, to, middle);
    line.insert(line.end(), half.rbegin(), half.rend());
    line.push_back(to);
}

/// The border of a plate along the teeth: under the saddles, elsewhere its clearance away from
/// the margins, stepping from one to the other over a short way.
class LateralBorder {
public:
    explicit LateralBorder(const Prescription& prescription)
        : arch_{prescription.arch},
          runs_{saddleRuns(prescription)},
          away_{prescription.majorConnector->gingivalClearance
                    ? -kHalfTooth - mm(prescription.majorConnector->gingivalClearance, 0)
                    : -1.0} {}

    Polyline from(double first, double last) const {
        Polyline line;
        const int steps = static_cast<int>(std::abs(last - first) / 0.8) + 2;
        for (int step = 0; step <= steps; ++step) {
            const double along = first + (last - first) * step / steps;
            line.push_back(onArch(arch_, along, smoothedOffset(along)));
        }
        return line;
    }
    double away() const noexcept { return away_; }

private:
    double smoothedOffset(double along) const {
        constexpr int kEachWay = 4;
        constexpr double kRamp = 2.0;
        double sum = 0;
        for (int sample = -kEachWay; sample <= kEachWay; ++sample)
            sum += offsetAt(along + kRamp * sample / kEachWay);
        return sum / (2 * kEachWay + 1);
    }
    double offsetAt(double along) const {
        const bool saddled =
            std::ranges::any_of(runs_, [&](const SaddleRun& run) { return run.covers(along); });
        return saddled ? kUnderSaddle : away_;
    }

    Arch arch_;
    std::vector<SaddleRun> runs_;
    double away_;
};

Polyline strap(const Prescription& prescription, double width) {
    const Arch arch = prescription.arch;
    const Reach right = reachOf(prescription, Side::Right);
    const Reach left = reachOf(prescription, Side::Left);
    const Polyline rightEdge = alongArch(arch, -right.back, -right.front, kUnderSaddle);
    const Polyline leftEdge = alongArch(arch, left.front, left.back, kUnderSaddle);
    const double middle =
        (rightEdge.front().y + rightEdge.back().y + leftEdge.front().y + leftEdge.back().y) / 4;
    const double centre = onPlane(arch, 0, 0).x;
    const double ahead = arch == Arch::Upper ? -1 : 1;
    Polyline outline = rightEdge;
    addBorderAcross(outline, rightEdge.back(), {centre, middle + ahead * width / 2},
                    leftEdge.front());
    outline.insert(outline.end(), leftEdge.begin(), leftEdge.end());
    addBorderAcross(outline, leftEdge.back(), {centre, middle - ahead * width / 2},
                    rightEdge.front());
    return outline;
}

double backOf(const Prescription& prescription) {
    return std::max(
        {reachOf(prescription, Side::Right).back, reachOf(prescription, Side::Left).back, 46.5});
}

Polyline plate(const Prescription& prescription) {
    const double back = backOf(prescription);
    Polyline outline = LateralBorder{prescription}.from(-back, back);
    const Point right = outline.front();
    const Point left = outline.back();
    addBorderAcross(outline, left, {(left.x + right.x) / 2, left.y - 2.5}, right);
    return outline;
}

Polyline horseshoe(const Prescription& prescription, double width) {
    const LateralBorder border{prescription};
    const double back = backOf(prescription);
    Polyline outline = border.from(-back, back);
    const double inner = std::min(border.away(), -kHalfTooth - 2) - width;
    const Polyline inside = alongArch(prescription.arch, back - 1, 1 - back, inner);
    outline.insert(outline.end(), inside.begin(), inside.end());
    return outline;
}

/// The opening of a double strap: an oval as long as prescribed and as the straps leave room for.
Polyline opening(const Prescription& prescription, const Polyline& outer) {
    const Box box = boxOf(outer);
    const MajorConnector& connector = *prescription.majorConnector;
    const double room = box.bottom - box.top - 6 - mm(connector.width, 8);
    const double half = std::clamp(mm(connector.opening, 15), 6.0, std::max(6.0, room)) / 2;
    const Point centre{box.centre().x, box.top + 6 + half + 0.5};
    const Point side = nearestOn(outer, centre + Point{0, half * 0.4});
    const double across = std::max(4.0, distance(side, centre) - 7.5);
    Polyline oval;
    for (int corner = 0; corner < 16; ++corner) {
        const double angle = 2 * std::numbers::pi * corner / 16;
        // Broader behind than in front, as the palate is.
        const double wide = across * (1 + 0.16 * std::sin(angle));
        const auto rounded = [](double value) {
            return std::copysign(std::pow(std::abs(value), 0.8), value);
        };
        oval.push_back(centre +
                       Point{wide * rounded(std::cos(angle)), half * rounded(std::sin(angle))});
    }
    return smoothClosed(oval);
}

/// From the front of the canines to behind the second molars, so that both straps have room.
Polyline doubleStrapOuter(const Prescription& prescription) {
    const double front = std::min(
        {reachOf(prescription, Side::Right).front, reachOf(prescription, Side::Left).front, 17.0});
    const double back = std::max(backOf(prescription), 53.0);
    const LateralBorder border{prescription};
    Polyline outline = border.from(-back, -front);
    const Polyline leftEdge = border.from(front, back);
    const double centre = onPlane(prescription.arch, 0, 0).x;
    addBorderAcross(outline, outline.back(), {centre, outline.back().y - 1.5}, leftEdge.front());
    outline.insert(outline.end(), leftEdge.begin(), leftEdge.end());
    addBorderAcross(outline, outline.back(), {centre, outline.back().y - 2.5}, outline.front());
    return outline;
}

/// How far back a lower bar goes on one side: to the last tooth that carries a part, or a little
/// way under the front of a saddle that has no tooth behind it.
double barEnd(const Prescription& prescription, Side side) {
    const double sign = side == Side::Right ? -1 : 1;
    double end = 22;
    for (const Tooth tooth : abutments(prescription).teeth())
        if (tooth.arch() == prescription.arch && tooth.side() == side) {
            const ToothPlace place = ArchForm::mean(tooth.arch()).place(tooth);
            end = std::max(end, std::abs(place.from + place.to) / 2);
        }
    for (const SaddleRun& run : saddleRuns(prescription)) {
        const double front = side == Side::Right ? -run.to : run.from;
        if (sign * (run.from + run.to) > 0) end = std::max(end, front + 8);
    }
    return end;
}

Polyline lowerBar(const Prescription& prescription, double top, double height) {
    return band(alongArch(prescription.arch, -barEnd(prescription, Side::Right),
                          barEnd(prescription, Side::Left), top - height / 2),
                height, height);
}

double barTop(const MajorConnector& connector) {
    return -kHalfTooth - mm(connector.gingivalClearance, 4);
}

Polyline lingualPlate(const Prescription& prescription, double height) {
    const double right = barEnd(prescription, Side::Right);
    const double left = barEnd(prescription, Side::Left);
    // It begins under the teeth: their own tongue sides are its scallops.
    Polyline outline = alongArch(prescription.arch, -right, left, -0.8);
    const Polyline lower =
        alongArch(prescription.arch, left, -right, barTop(*prescription.majorConnector) - height);
    outline.insert(outline.end(), lower.begin(), lower.end());
    return outline;
}

constexpr double kLabialTop = 8.4;
constexpr double kSublingualDrop = 3;

bool liesOnTeeth(ConnectorKind kind) {
    return kind == ConnectorKind::CingulumBar || kind == ConnectorKind::DoubleLingualBar;
}

}  // namespace

std::vector<Polyline> connectorOutlines(const Prescription& prescription) {
    if (!prescription.majorConnector) return {};
    const MajorConnector& connector = *prescription.majorConnector;
    if (archOf(connector.kind) != prescription.arch) return {};  // a rule says so; nothing to draw
    switch (connector.kind) {
        case ConnectorKind::PalatalStrap:
            return {strap(prescription, mm(connector.width, 10))};
        case ConnectorKind::PalatalBar:
            return {strap(prescription, mm(connector.width, 6))};
        case ConnectorKind::DoublePalatalStrap:
            return {doubleStrapOuter(prescription)};
        case ConnectorKind::Horseshoe:
            return {horseshoe(prescription, mm(connector.width, 7))};
        case ConnectorKind::PalatalPlate:
            return {plate(prescription)};
        case ConnectorKind::LingualBar:
        case ConnectorKind::DoubleLingualBar:
            return {lowerBar(prescription, barTop(connector), mm(connector.width, 4))};
        case ConnectorKind::LingualPlate:
            return {lingualPlate(prescription, mm(connector.width, 4))};
        case ConnectorKind::SublingualBar:
            return {lowerBar(prescription, barTop(connector) - kSublingualDrop,
                             mm(connector.width, 4))};
        case ConnectorKind::LabialBar:
            return {lowerBar(prescription, kLabialTop, 3)};
        case ConnectorKind::CingulumBar:
            return {};
    }
    return {};
}

void drawMajorConnector(ArchCanvas& canvas, const Prescription& prescription) {
    const bool resin = isInterim(prescription);
    const auto depicts = resin ? Depicted::ResinPlate : Depicted::MajorConnector;
    for (const Polyline& outline : connectorOutlines(prescription)) {
        canvas.shape(outline, resin ? Colour::Resin : Colour::Metal, {Colour::Edge, kThick},
                     depicts);
        if (prescription.majorConnector->kind == ConnectorKind::DoublePalatalStrap)
            canvas.shape(opening(prescription, outline), Colour::Sheet, {Colour::Edge, kThick},
                         depicts);
        // Words may stand on the metal or beside it, not across its edge.
        for (const Point point : evenly(outline, 1)) canvas.keepClear(circle(point, 0.3));
    }
}

void drawCingulumBar(ArchCanvas& canvas, const Prescription& prescription) {
    if (!prescription.majorConnector || prescription.arch != Arch::Lower) return;
    if (!liesOnTeeth(prescription.majorConnector->kind)) return;
    constexpr double kMostBack = 26;
    const double right = std::min(barEnd(prescription, Side::Right), kMostBack);
    const double left = std::min(barEnd(prescription, Side::Left), kMostBack);
    canvas.shape(band(alongArch(prescription.arch, -right, left, -2.0), 1.9, 1.9), Colour::Metal,
                 {Colour::Edge, kLine}, Depicted::MajorConnector);
}

void drawMinorConnectors(ArchCanvas& canvas, const Prescription& prescription) {
    constexpr double kWidth = 1.8;
    constexpr double kShort = 6;  // where it lies within a plate, or nothing is there to reach
    const auto outlines = connectorOutlines(prescription);
    for (const MinorConnector& minor : prescription.minorConnectors) {
        if (minor.tooth.arch() != prescription.arch) continue;
        const ToothFrame frame = toothFrame(minor.tooth);
        std::optional<Surface> side = minor.side;
        for (const Rest& rest : prescription.rests)
            if (!side && rest.tooth == minor.tooth) side = rest.side;
        const double u = side == Surface::Mesial ? 0.72 : side == Surface::Distal ? -0.72 : 0;
        const Point start = frame.at(u, -0.5);
        Point end = start - frame.outward * kShort;
        for (const Polyline& outline : outlines)
            if (!contains(outline, frame.at(u, -1, -1.2))) {
                const Point joint = nearestOn(outline, frame.at(u, -1));
                end = joint + unit(joint - start) * 1.2;
            }
        const Polyline strut = band({start, end}, kWidth, kWidth);
        canvas.shape(strut, Colour::Metal, {Colour::Edge, kLine}, Depicted::MinorConnector);
        canvas.keepClear(strut);
    }
}

}  // namespace domain
