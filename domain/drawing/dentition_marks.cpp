#include "domain/drawing/arch_parts.h"
#include "domain/drawing/tooth_outlines.h"

namespace domain {
namespace {

void drawHints(ArchCanvas& canvas, Tooth tooth, const ToothFrame& frame) {
    for (const auto& hint : crownHints(tooth)) {
        Polyline line;
        for (const Point point : hint) line.push_back(frame.at(point.x, point.y));
        canvas.stroke(smoothOpen(line), {Colour::Quiet, kThin}, Depicted::PresentTooth);
    }
}

void drawPresent(ArchCanvas& canvas, Tooth tooth, const ToothFrame& frame) {
    canvas.shape(frame.outline, Colour::Tooth, {Colour::Edge, kLine}, Depicted::PresentTooth);
    drawHints(canvas, tooth, frame);
}

void drawReplaced(ArchCanvas& canvas, const ToothFrame& frame) {
    canvas.shape(frame.outline, Colour::Resin, {Colour::Edge, kLine, LineStyle::Dashed},
                 Depicted::ReplacedTooth);
    for (const double u : {-0.5, 0.0, 0.5})
        for (const double v : {-0.45, 0.05, 0.55})
            canvas.dot(frame.at(u, v), 0.16, Colour::Edge, Depicted::ReplacedTooth);
}

void drawCross(ArchCanvas& canvas, const ToothFrame& frame) {
    constexpr double kArm = 1.3;
    const Point one = unit(frame.mesial + frame.outward) * kArm;
    const Point other = unit(frame.mesial - frame.outward) * kArm;
    for (const Point arm : {one, other})
        canvas.stroke({frame.centre - arm, frame.centre + arm}, {Colour::Quiet, kThick},
                      Depicted::NotReplaced);
}

/// Two small arrows that face each other along the arch.
void drawClosed(ArchCanvas& canvas, const ToothFrame& frame) {
    for (const double side : {1.0, -1.0}) {
        const Point tip = frame.centre + frame.mesial * (side * 0.5);
        const Point tail = frame.centre + frame.mesial * (side * 2.6);
        const Point barb = frame.mesial * (side * 0.9);
        canvas.stroke({tail, tip}, {Colour::Quiet, kThick}, Depicted::ClosedSpace);
        canvas.stroke({tip + barb + frame.outward * 0.7, tip, tip + barb - frame.outward * 0.7},
                      {Colour::Quiet, kThick}, Depicted::ClosedSpace);
    }
}

void drawExtracted(ArchCanvas& canvas, Tooth tooth, const ToothFrame& frame) {
    canvas.shape(frame.outline, Colour::Tooth, {Colour::Edge, kLine}, Depicted::ExtractedTooth);
    for (const auto& hint : crownHints(tooth)) {
        Polyline line;
        for (const Point point : hint) line.push_back(frame.at(point.x, point.y));
        canvas.stroke(smoothOpen(line), {Colour::Quiet, kThin}, Depicted::ExtractedTooth);
    }
    canvas.stroke({frame.around(225, 0.8), frame.around(45, 0.8)}, {Colour::Edge, 0.6},
                  Depicted::ExtractedTooth);
}

/// Two lines along the arch: what is cemented together.
void drawBridged(ArchCanvas& canvas, const ToothFrame& frame) {
    canvas.shape(frame.outline, Colour::Tooth, {Colour::Edge, kLine}, Depicted::BridgedTooth);
    for (const double v : {-0.18, 0.18})
        canvas.stroke({frame.at(0.96, v), frame.at(-0.96, v)}, {Colour::Edge, kLine},
                      Depicted::BridgedTooth);
}

void drawTooth(ArchCanvas& canvas, Tooth tooth, ToothState state, bool replaced) {
    const ToothFrame frame = toothFrame(tooth);
    switch (state) {
        case ToothState::Present:
            return replaced ? drawReplaced(canvas, frame) : drawPresent(canvas, tooth, frame);
        case ToothState::Missing:
            return drawReplaced(canvas, frame);
        case ToothState::ToBeExtracted:
            return drawExtracted(canvas, tooth, frame);
        case ToothState::NotReplaced:
            return replaced ? drawReplaced(canvas, frame) : drawCross(canvas, frame);
        case ToothState::Closed:
            return drawClosed(canvas, frame);
        case ToothState::Bridged:
            return drawBridged(canvas, frame);
    }
}

}  // namespace

ToothSet toBeReplaced(const Prescription& prescription) {
    ToothSet teeth;
    for (const Tooth tooth :
         (replacedTeeth(prescription) | prescription.dentition.all(ToothState::Missing)).teeth())
        if (tooth.arch() == prescription.arch) teeth.add(tooth);
    return teeth;
}

void drawTeeth(ArchCanvas& canvas, const Prescription& prescription) {
    const ToothSet replaced = toBeReplaced(prescription);
    for (int position = 0; position < kTeethInArch; ++position) {
        const Tooth tooth = Tooth::at(prescription.arch, position);
        drawTooth(canvas, tooth, prescription.dentition.of(tooth), replaced.has(tooth));
        canvas.keepClear(toothFrame(tooth).outline);
    }
}

}  // namespace domain
