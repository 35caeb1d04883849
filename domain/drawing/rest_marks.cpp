#include <cmath>

#include "domain/design/fulcrum.h"
#include "domain/drawing/arch_parts.h"

namespace domain {
namespace {

double towards(std::optional<Surface> side) { return side == Surface::Distal ? -1 : 1; }

/// An occlusal seat narrows from the marginal ridge towards the middle of the tooth; a cingulum
/// seat lies across the tongue side as a crescent; an incisal one cuts a corner of the edge.
Polyline wedge(const Rest& rest) {
    const ToothFrame frame = toothFrame(rest.tooth);
    const double u = towards(rest.side);
    switch (rest.kind) {
        case RestKind::Occlusal:
            return smoothClosed({frame.at(u * 0.94, 0.30), frame.at(u * 0.98, 0.0),
                                 frame.at(u * 0.94, -0.30), frame.at(u * 0.58, -0.20),
                                 frame.at(u * 0.26, 0.0), frame.at(u * 0.58, 0.20)});
        case RestKind::Cingulum:
            return smoothClosed({frame.at(0.52, -0.36), frame.at(0.0, -0.16),
                                 frame.at(-0.52, -0.36), frame.at(-0.34, -0.66),
                                 frame.at(0.0, -0.80), frame.at(0.34, -0.66)});
        case RestKind::Incisal:
            return smoothClosed({frame.at(u * 0.92, 0.34), frame.at(u * 0.96, 0.02),
                                 frame.at(u * 0.48, 0.08), frame.at(u * 0.46, 0.38)});
    }
    return {};
}

Point middleOf(const Polyline& outline) {
    Point sum{};
    for (const Point point : outline) sum = sum + point;
    return outline.empty() ? sum : sum * (1.0 / static_cast<double>(outline.size()));
}

void drawRest(ArchCanvas& canvas, const Rest& rest) {
    const Polyline outline = wedge(rest);
    if (rest.seatPrepared.value_or(false))
        canvas.shape(outline, Colour::Edge, {Colour::Edge, kThin}, Depicted::PreparedRest);
    else
        canvas.shape(outline, Colour::Tooth, {Colour::Edge, 0.4, LineStyle::Dotted},
                     Depicted::UnpreparedRest);
}

/// The rest that serves an indirect retainer: on its tooth, the one not on the fulcrum line.
const Rest* restOf(const Prescription& prescription, const IndirectRetainer& retainer) {
    for (const Rest& rest : prescription.rests)
        if (rest.tooth == retainer.tooth) return &rest;
    return nullptr;
}

struct Lever {
    Point rest{};
    Point foot{};     ///< on the fulcrum line, at right angles to it
    double across{};  ///< mm from the line, on the arch rather than on the picture
};

struct Axes {
    Point right{};  ///< the two rests the fulcrum line runs through
    Point left{};
    std::vector<Lever> levers{};
};

std::optional<Axes> axesOf(const Prescription& prescription) {
    const auto fulcrum = fulcrumOf(prescription);
    if (!fulcrum) return {};
    const ArchForm form{prescription.arch, extentOf(prescription)};
    Axes axes{.right = restPoint(fulcrum->right), .left = restPoint(fulcrum->left), .levers = {}};
    const Point along = unit(axes.left - axes.right);
    for (const IndirectRetainer& retainer : prescription.indirectRetainers) {
        const Rest* rest = restOf(prescription, retainer);
        if (rest == nullptr || rest->tooth.arch() != prescription.arch) continue;
        const Point from = restPoint(*rest);
        const Point away = from - axes.right;
        axes.levers.push_back({from, axes.right + along * (away.x * along.x + away.y * along.y),
                               std::abs(fulcrum->across(placeOf(form, *rest)))});
    }
    return axes;
}

void drawLeverNumber(ArchCanvas& canvas, const Lever& lever) {
    constexpr double kSize = 2.3;
    Words words{.text = std::to_string(std::lround(lever.across)),
                .at = {},
                .anchor = Anchor::Middle,
                .size = kSize,
                .bold = false,
                .colour = Colour::Ink,
                .depicts = Depicted::Lever};
    const Box size = boxOf(words);
    const Point along = unit(lever.foot - lever.rest);
    const Point aside{-along.y, along.x};
    // Beside the line, on the side of the midline.
    const Point middle = between(lever.rest, lever.foot, 0.5);
    const Point inwards = aside * (aside.x * (kArchPictureWidth / 2 - middle.x) < 0 ? -1 : 1);
    const Box room = canvas.roomFor(size.right - size.left, size.bottom - size.top,
                                    middle + inwards * 2, inwards);
    words.at = room.centre() - size.centre();
    canvas.write(words);
}

void drawFulcrum(ArchCanvas& canvas, const Axes& axes) {
    constexpr double kBeyond = 6;
    const Point along = unit(axes.left - axes.right);
    const Polyline line{axes.right - along * kBeyond, axes.left + along * kBeyond};
    canvas.stroke(line, {Colour::Ink, 0.35, LineStyle::DashDot}, Depicted::Fulcrum);
    for (const Point point : evenly(line, 1)) canvas.keepClear(circle(point, 0.3));
    for (const Lever& lever : axes.levers) {
        canvas.stroke({lever.rest, lever.foot}, {Colour::Ink, kThin}, Depicted::Lever);
        for (const Point point : evenly({lever.rest, lever.foot}, 1))
            canvas.keepClear(circle(point, 0.3));
    }
}

std::string tiltText(const InsertionPath& path) {
    std::string text =
        "path " + decimalText(path.tilt.count(), MillidegreeUnit::kPerWritten) + "\u00B0";
    if (path.towards != TiltDirection::None) text += ' ' + wordsOf(path.towards);
    return text;
}

/// Which way the tilt points on the plane of the arch.
Point tiltPoint(TiltDirection towards) {
    switch (towards) {
        case TiltDirection::None:
            return {0, 0};
        case TiltDirection::Anterior:
            return {0, 1};
        case TiltDirection::Posterior:
            return {0, -1};
        case TiltDirection::Right:
            return {-1, 0};
        case TiltDirection::Left:
            return {1, 0};
    }
    return {0, 0};
}

/// An arrow as it lies on the arch; with no tilt its point comes straight at the viewer.
void drawPath(ArchCanvas& canvas, const Prescription& prescription) {
    if (!prescription.survey.path) return;
    const InsertionPath& path = *prescription.survey.path;
    const Arch arch = prescription.arch;
    constexpr double kBehind = -9;
    const Point centre = onPlane(arch, -9, kBehind);
    const Pen pen{Colour::Ink, 0.35};
    const Point flat = tiltPoint(path.towards);
    if (path.tilt.count() == 0 || path.towards == TiltDirection::None) {
        canvas.outline(circle(centre, 1.5), pen, Depicted::InsertionPath);
        canvas.dot(centre, 0.4, Colour::Ink, Depicted::InsertionPath);
    } else {
        const Point ahead{flat.x, arch == Arch::Upper ? -flat.y : flat.y};
        const Point aside{-ahead.y, ahead.x};
        const Point tip = centre + ahead * 2.6;
        canvas.stroke({centre - ahead * 2.6, tip}, pen, Depicted::InsertionPath);
        canvas.fill({tip, tip - ahead * 1.5 + aside * 0.8, tip - ahead * 1.5 - aside * 0.8},
                    Colour::Ink, Depicted::InsertionPath);
    }
    canvas.write({.text = tiltText(path),
                  .at = centre + Point{4, 0.8},
                  .anchor = Anchor::Left,
                  .size = 2.3,
                  .bold = false,
                  .colour = Colour::Ink,
                  .depicts = Depicted::InsertionPath});
}

}  // namespace

Point restPoint(const Rest& rest) { return middleOf(wedge(rest)); }

void drawRests(ArchCanvas& canvas, const Prescription& prescription) {
    for (const Rest& rest : prescription.rests)
        if (rest.tooth.arch() == prescription.arch) drawRest(canvas, rest);
    for (const IndirectRetainer& retainer : prescription.indirectRetainers) {
        if (retainer.tooth.arch() != prescription.arch) continue;
        const Rest* rest = restOf(prescription, retainer);
        const Point centre = rest != nullptr ? restPoint(*rest) : toothFrame(retainer.tooth).centre;
        canvas.outline(circle(centre, 2.3), {Colour::Edge, 0.4}, Depicted::IndirectRetainer);
        canvas.keepClear(circle(centre, 2.5));
    }
}

void drawAxes(ArchCanvas& canvas, const Prescription& prescription) {
    if (const auto axes = axesOf(prescription)) drawFulcrum(canvas, *axes);
    drawPath(canvas, prescription);
}

void drawAxisNumbers(ArchCanvas& canvas, const Prescription& prescription) {
    if (const auto axes = axesOf(prescription))
        for (const Lever& lever : axes->levers) drawLeverNumber(canvas, lever);
}

}  // namespace domain
