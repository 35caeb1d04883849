#include <cmath>

#include "domain/design/design_view.h"
#include "domain/drawing/arch_parts.h"

namespace domain {
namespace {

constexpr double kBeside = 0.75;   // mm the middle of an arm lies outside the tooth
constexpr double kApproach = 2.7;  // mm a bar arm runs outside the tooth
constexpr double kArmWidth = 1.15;
constexpr double kTipWidth = 0.5;
constexpr double kTipRadius = 0.72;

double angleOf(UndercutPlace place) {
    switch (place) {
        case UndercutPlace::MesioBuccal:
            return 52;
        case UndercutPlace::MidBuccal:
            return 90;
        case UndercutPlace::DistoBuccal:
            return 128;
        case UndercutPlace::MesioLingual:
            return -52;
        case UndercutPlace::MidLingual:
            return -90;
        case UndercutPlace::DistoLingual:
            return -128;
    }
    return 90;
}

bool isReplaced(const Prescription& prescription, std::optional<Tooth> tooth) {
    return tooth && toBeReplaced(prescription).has(*tooth);
}

/// The side of the tooth an arm comes from: across from its tip, or else where the saddle is.
Surface originOf(const Prescription& prescription, const Clasp& clasp) {
    if (clasp.undercut && !isBar(clasp.kind)) {
        const double tip = std::abs(angleOf(clasp.undercut->place));
        const bool tipIsMesial = tip < 90;
        const bool ring = clasp.kind == ClaspKind::Ring;
        if (tip != 90) return tipIsMesial == ring ? Surface::Mesial : Surface::Distal;
    }
    if (isReplaced(prescription, neighbour(clasp.tooth, Surface::Distal))) return Surface::Distal;
    if (isReplaced(prescription, neighbour(clasp.tooth, Surface::Mesial))) return Surface::Mesial;
    return Surface::Distal;
}

/// Round the tooth from its origin to the tip; a ring goes the long way.
Polyline circumferentialArm(const Clasp& clasp, const ToothFrame& frame, Surface origin,
                            double tip) {
    const bool lingual = tip < 0;
    const double start = origin == Surface::Mesial ? 0 : 180;
    if (clasp.kind == ClaspKind::Ring) {
        const double first = (origin == Surface::Mesial ? 24 : 156) * (lingual ? 1 : -1);
        const double last = origin == Surface::Distal ? tip : lingual ? tip + 360 : tip - 360;
        return frame.alongOutline(first, last, kBeside);
    }
    const double first = lingual ? -start : start;
    return frame.alongOutline(first, tip, kBeside);
}

/// From the gum up to the undercut: along the cheek side, then straight in.
Polyline barArm(const ToothFrame& frame, Surface origin, double tip) {
    const double side = origin == Surface::Mesial ? 1 : -1;
    const double face = tip < 0 ? -1 : 1;
    const Point end = frame.around(tip, 0.3);
    const Point before = frame.around(tip, kApproach * 0.7);
    const double tipU = (before.x - frame.centre.x) * frame.mesial.x / frame.halfWidth +
                        (before.y - frame.centre.y) * frame.mesial.y / frame.halfWidth;
    return smoothOpen({frame.at(side * 1.55, face * 0.95, face * 0.4),
                       frame.at(side * 1.12, face, face * kApproach * 0.9),
                       frame.at((side * 0.55 + tipU) / 2 + side * 0.12, face, face * kApproach),
                       before, end});
}

/// What a bar arm spreads to at the tooth.
void drawBarEnd(ArchCanvas& canvas, ClaspKind kind, const ToothFrame& frame, double tip) {
    constexpr double kSpread = 20;  // degrees to each side
    const Pen pen{Colour::Ink, 0.6};
    const auto depicts = Depicted::RetentiveArm;
    if (kind == ClaspKind::TBar)
        canvas.stroke(frame.alongOutline(tip - kSpread, tip + kSpread, 0.6), pen, depicts);
    if (kind == ClaspKind::HalfTBar)
        canvas.stroke(frame.alongOutline(tip, tip + (tip < 90 ? -kSpread : kSpread), 0.6), pen,
                      depicts);
    if (kind == ClaspKind::YBar)
        for (const double side : {-1.0, 1.0})
            canvas.stroke({frame.around(tip, 1.7), frame.around(tip + side * kSpread, 0.5)}, pen,
                          depicts);
}

void drawArm(ArchCanvas& canvas, const Prescription& prescription, const Clasp& clasp) {
    const auto face = retentiveFace(clasp);
    if (!face) return;
    const ToothFrame frame = toothFrame(clasp.tooth);
    const double tip = clasp.undercut              ? angleOf(clasp.undercut->place)
                       : *face == Surface::Lingual ? -90
                                                   : 90;
    const Surface origin = originOf(prescription, clasp);
    const Polyline arm = isBar(clasp.kind) ? barArm(frame, origin, tip)
                                           : circumferentialArm(clasp, frame, origin, tip);
    const bool wire = armMaterial(prescription, clasp) == ArmMaterial::WroughtWire;
    const auto depicts = wire ? Depicted::WroughtWire : Depicted::RetentiveArm;
    if (wire) {
        for (const double side : {0.32, -0.32})
            canvas.stroke(besideLine(arm, side), {Colour::Ink, 0.24}, depicts);
    } else {
        canvas.fill(band(arm, kArmWidth, kTipWidth), Colour::Ink, depicts);
        drawBarEnd(canvas, clasp.kind, frame, tip);
    }
    for (const Point point : evenly(arm, 1.5)) canvas.keepClear(circle(point, 0.6));
    if (!clasp.undercut) return;
    canvas.shape(circle(arm.back(), kTipRadius), Colour::Sheet, {Colour::Ink, 0.32}, depicts);
    canvas.keepClear(circle(arm.back(), kTipRadius + 0.2));
}

/// Even thickness and square ends: it opposes and does not spring.
void drawReciprocation(ArchCanvas& canvas, const Prescription& prescription, const Clasp& clasp) {
    if (!clasp.reciprocation) return;
    const ToothFrame frame = toothFrame(clasp.tooth);
    const bool buccal = clasp.reciprocation->face == Surface::Buccal;
    const double sign = buccal ? 1 : -1;
    const bool resin =
        isInterim(prescription) && clasp.reciprocation->kind == ReciprocalKind::Plate;
    const Colour inside = resin ? Colour::Resin : Colour::Metal;
    const bool fromMesial = originOf(prescription, clasp) == Surface::Mesial;
    const auto bar = [&](double from, double to, double beside, double width) {
        canvas.shape(band(frame.alongOutline(sign * from, sign * to, beside), width, width), inside,
                     {Colour::Edge, kThin}, Depicted::Reciprocation);
        for (const Point point : evenly(frame.alongOutline(sign * from, sign * to, beside), 1.5))
            canvas.keepClear(circle(point, 0.6));
    };
    switch (clasp.reciprocation->kind) {
        case ReciprocalKind::Arm: {
            // Beside a ring the opposing arm stands off as its strut.
            const double beside = clasp.kind == ClaspKind::Ring ? 2.0 : 0.6;
            return fromMesial ? bar(4, 132, beside, 1.0) : bar(176, 48, beside, 1.0);
        }
        case ReciprocalKind::Plate:
            return bar(32, 148, 0.1, 1.5);
        case ReciprocalKind::GuidePlate:
            return fromMesial ? bar(10, 40, 0.3, 1.2) : bar(170, 140, 0.3, 1.2);
        case ReciprocalKind::MinorConnector:
            // The mesial strut of the mesial-rest clasps, else the one beside the origin.
            return clasp.kind == ClaspKind::Rpi || clasp.kind == ClaspKind::Rpa || fromMesial
                       ? bar(28, 62, 0.4, 1.3)
                       : bar(152, 118, 0.4, 1.3);
    }
}

}  // namespace

std::optional<Point> armTip(const Clasp& clasp) {
    if (!clasp.undercut) return {};
    return toothFrame(clasp.tooth)
        .around(angleOf(clasp.undercut->place), isBar(clasp.kind) ? 0.3 : kBeside);
}

void drawGuidePlates(ArchCanvas& canvas, const Prescription& prescription) {
    for (const GuidePlate& plate : prescription.guidePlates) {
        if (plate.tooth.arch() != prescription.arch) continue;
        const ToothFrame frame = toothFrame(plate.tooth);
        const double middle = plate.face == Surface::Mesial ? 0 : 180;
        canvas.fill(band(frame.alongOutline(middle - 30, middle + 24, 0.15), 0.95, 0.95),
                    Colour::Edge, Depicted::GuidePlate);
        if (!plate.planePrepared.value_or(false)) continue;
        canvas.stroke({frame.around(middle - 3, 0.2), frame.around(middle - 3, 2.0)},
                      {Colour::Edge, 0.5}, Depicted::PreparedGuidePlane);
    }
}

void drawClasps(ArchCanvas& canvas, const Prescription& prescription) {
    for (const Clasp& clasp : prescription.clasps)
        if (clasp.tooth.arch() == prescription.arch) drawReciprocation(canvas, prescription, clasp);
    for (const Clasp& clasp : prescription.clasps)
        if (clasp.tooth.arch() == prescription.arch) drawArm(canvas, prescription, clasp);
}

}  // namespace domain
