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

const Rest* restAt(const Prescription& prescription, int place) {
    for (const Rest& rest : prescription.rests)
        if (rest.tooth.arch() == prescription.arch && arcPlace(rest.tooth, rest.side) == place)
            return &rest;
    return nullptr;
}

/// The rest that serves an indirect retainer: on its tooth, the one not on the fulcrum line.
const Rest* restOf(const Prescription& prescription, const IndirectRetainer& retainer) {
    for (const Rest& rest : prescription.rests)
        if (rest.tooth == retainer.tooth) return &rest;
    return nullptr;
}

void drawLever(ArchCanvas& canvas, Point rest, Point from, Point along) {
    const Point away = rest - from;
    const Point foot = from + along * (away.x * along.x + away.y * along.y);
    const double length = distance(rest, foot);
    if (length < 2) return;
    canvas.stroke({rest, foot}, {Colour::Ink, kThin}, Depicted::Lever);
    const std::string text = std::to_string(std::lround(length));
    constexpr double kSize = 2.3;
    const Words sized{.text = text,
                      .at = {},
                      .anchor = Anchor::Middle,
                      .size = kSize,
                      .bold = false,
                      .colour = Colour::Ink,
                      .depicts = Depicted::Lever};
    const Box size = boxOf(sized);
    const Box room = canvas.roomFor(size.right - size.left + 0.6, size.bottom - size.top,
                                    between(rest, foot, 0.55) + Point{2.2, 0}, unit(foot - rest));
    Words words = sized;
    words.at = {room.centre().x, room.bottom - 0.22 * kSize};
    canvas.fill({{room.left, room.top},
                 {room.right, room.top},
                 {room.right, room.bottom},
                 {room.left, room.bottom}},
                Colour::Sheet, Depicted::Lever);
    canvas.write(words);
}

void drawFulcrum(ArchCanvas& canvas, const Prescription& prescription) {
    const auto fulcrum = fulcrumOf(prescription);
    if (!fulcrum) return;
    const Rest* right = restAt(prescription, fulcrum->right);
    const Rest* left = restAt(prescription, fulcrum->left);
    if (right == nullptr || left == nullptr) return;
    const Point from = restPoint(*right);
    const Point along = unit(restPoint(*left) - from);
    constexpr double kBeyond = 6;
    canvas.stroke({from - along * kBeyond, restPoint(*left) + along * kBeyond},
                  {Colour::Ink, 0.35, LineStyle::DashDot}, Depicted::Fulcrum);
    for (const IndirectRetainer& retainer : prescription.indirectRetainers)
        if (const Rest* rest = restOf(prescription, retainer))
            if (rest->tooth.arch() == prescription.arch)
                drawLever(canvas, restPoint(*rest), from, along);
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
    }
}

void drawAxes(ArchCanvas& canvas, const Prescription& prescription) {
    drawFulcrum(canvas, prescription);
    drawPath(canvas, prescription);
}

}  // namespace domain
