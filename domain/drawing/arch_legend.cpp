#include <algorithm>
#include <array>
#include <set>

#include "domain/drawing/arch_parts.h"

namespace domain {
namespace {

constexpr double kSwatchWidth = 8;
constexpr double kRow = 3.35;
constexpr double kSize = 2.3;

Polyline rectangle(const Box& box) {
    return {
        {box.left, box.top}, {box.right, box.top}, {box.right, box.bottom}, {box.left, box.bottom}};
}

/// Draws the mark once more, small, in the box.
using Swatch = void (*)(ArchCanvas&, const Box&, Depicted);

Polyline rounded(const Box& box) {
    const Point centre = box.centre();
    const double half = (box.right - box.left) / 2 * 0.42;
    const double high = (box.bottom - box.top) / 2;
    return smoothClosed({centre + Point{half, 0}, centre + Point{half * 0.8, high},
                         centre + Point{-half * 0.8, high}, centre + Point{-half, 0},
                         centre + Point{-half * 0.8, -high}, centre + Point{half * 0.8, -high}});
}

Polyline level(const Box& box, double share = 0.5) {
    const double y = box.top + (box.bottom - box.top) * share;
    return {{box.left, y}, {box.right, y}};
}

void tooth(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    canvas.shape(rounded(box), Colour::Tooth, {Colour::Edge, kLine}, depicts);
}

void replacedTooth(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    canvas.shape(rounded(box), Colour::Resin, {Colour::Edge, kLine, LineStyle::Dashed}, depicts);
    for (const double x : {-1.4, 0.0, 1.4})
        canvas.dot(box.centre() + Point{x, 0}, 0.16, Colour::Edge, depicts);
}

void cross(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    const Point centre = box.centre();
    for (const double side : {1.0, -1.0})
        canvas.stroke({centre + Point{-0.9, -0.9 * side}, centre + Point{0.9, 0.9 * side}},
                      {Colour::Quiet, kThick}, depicts);
}

void facingArrows(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    const Point centre = box.centre();
    for (const double side : {1.0, -1.0}) {
        const Point tip = centre + Point{side * 0.5, 0};
        canvas.stroke({tip + Point{side * 2.4, 0}, tip}, {Colour::Quiet, kThick}, depicts);
        canvas.stroke({tip + Point{side * 0.9, 0.7}, tip, tip + Point{side * 0.9, -0.7}},
                      {Colour::Quiet, kThick}, depicts);
    }
}

void extractedTooth(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    tooth(canvas, box, depicts);
    canvas.stroke({box.centre() + Point{-1.8, 1.5}, box.centre() + Point{1.8, -1.5}},
                  {Colour::Edge, 0.6}, depicts);
}

void bridgedTooth(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    tooth(canvas, box, depicts);
    for (const double share : {0.38, 0.62}) {
        Polyline line = level(box, share);
        line.front().x += 2.4;
        line.back().x -= 2.4;
        canvas.stroke(line, {Colour::Edge, kLine}, depicts);
    }
}

void scalloped(ArchCanvas& canvas, const Box& box, Colour colour, Depicted depicts) {
    const double top = box.top + 0.5;
    const double bottom = box.bottom - 0.5;
    const Polyline edge{
        {box.left, top},           {box.left + 1, top - 0.4}, {box.left + 2, top},
        {box.left + 3, top - 0.4}, {box.left + 4, top},       {box.left + 5, top - 0.4},
        {box.left + 6, top},       {box.left + 7, top - 0.4}, {box.right, top}};
    Polyline outline = smoothOpen(edge);
    outline.push_back({box.right, bottom});
    outline.push_back({box.left, bottom});
    canvas.shape(outline, colour, {Colour::Edge, kLine}, depicts);
}

void saddle(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    scalloped(canvas, box, depicts == Depicted::MetalBase ? Colour::Metal : Colour::Resin, depicts);
}

void onResin(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    canvas.fill(rectangle(box), Colour::Resin, depicts);
}

void lattice(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    onResin(canvas, box, depicts);
    for (const double share : {0.15, 0.85})
        canvas.stroke(level(box, share), {Colour::Edge, 0.32}, depicts);
    for (const double x : steps(box.left + 1, box.right - 1, 2))
        canvas.stroke({{x, box.top + 0.3}, {x, box.bottom - 0.3}}, {Colour::Edge, 0.32}, depicts);
}

void mesh(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    onResin(canvas, box, depicts);
    const double high = box.bottom - box.top;
    for (const double x : steps(box.left, box.right - high, 0.9)) {
        canvas.stroke({{x, box.top}, {x + high, box.bottom}}, {Colour::Edge, kThin}, depicts);
        canvas.stroke({{x, box.bottom}, {x + high, box.top}}, {Colour::Edge, kThin}, depicts);
    }
}

void beads(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    onResin(canvas, box, depicts);
    for (const double share : {0.3, 0.7})
        for (const double x : steps(box.left + 0.8, box.right - 0.2, 1.4))
            canvas.dot({x, box.top + (box.bottom - box.top) * share}, 0.24, Colour::Edge, depicts);
}

void tissueStop(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    const Point centre = box.centre();
    canvas.shape(rectangle({centre.x - 1, centre.y - 1, centre.x + 1, centre.y + 1}), Colour::Metal,
                 {Colour::Edge, kLine}, depicts);
}

void doubleLine(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    const auto style =
        depicts == Depicted::InternalFinishLine ? LineStyle::Dashed : LineStyle::Solid;
    for (const double share : {0.38, 0.62})
        canvas.stroke(level(box, share), {Colour::Ink, 0.24, style}, depicts);
}

void plate(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    canvas.shape(rectangle(box), depicts == Depicted::ResinPlate ? Colour::Resin : Colour::Metal,
                 {Colour::Edge, kThick}, depicts);
}

void strut(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    const double y = box.centre().y;
    canvas.shape(rectangle({box.left + 1, y - 0.8, box.right - 1, y + 0.8}), Colour::Metal,
                 {Colour::Edge, kLine}, depicts);
}

Polyline wedge(Point centre) {
    return smoothClosed({centre + Point{-1.6, 1.1}, centre + Point{-1.8, 0},
                         centre + Point{-1.6, -1.1}, centre + Point{0, -0.7},
                         centre + Point{1.5, 0}, centre + Point{0, 0.7}});
}

void rest(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    if (depicts == Depicted::PreparedRest)
        canvas.fill(wedge(box.centre()), Colour::Ink, depicts);
    else
        canvas.outline(wedge(box.centre()), {Colour::Ink, 0.4, LineStyle::Dotted}, depicts);
}

void ringedRest(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    canvas.fill(smoothClosed({box.centre() + Point{-0.9, 0.6}, box.centre() + Point{-0.9, -0.6},
                              box.centre() + Point{0.8, 0}}),
                Colour::Ink, depicts);
    canvas.outline(circle(box.centre(), 1.35), {Colour::Ink, 0.4}, depicts);
}

void arm(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    Polyline line = level(box);
    line.back().x -= 0.8;
    if (depicts == Depicted::WroughtWire)
        for (const double side : {0.32, -0.32})
            canvas.stroke(besideLine(line, side), {Colour::Ink, 0.24}, depicts);
    else
        canvas.fill(band(line, 1.15, 0.5), Colour::Ink, depicts);
    canvas.shape(circle(line.back(), 0.72), Colour::Sheet, {Colour::Ink, 0.32}, depicts);
}

void depth(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    canvas.write({.text = "0.25",
                  .at = {box.centre().x, box.centre().y + 0.8},
                  .anchor = Anchor::Middle,
                  .size = kSize,
                  .bold = false,
                  .colour = Colour::Ink,
                  .depicts = depicts});
}

void reciprocation(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    const double y = box.centre().y;
    canvas.shape(rectangle({box.left, y - 0.5, box.right, y + 0.5}), Colour::Metal,
                 {Colour::Edge, kThin}, depicts);
}

void guidePlate(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    const Point centre = box.centre();
    canvas.fill(rectangle({centre.x - 0.5, box.top, centre.x + 0.5, box.bottom}), Colour::Ink,
                depicts);
    if (depicts == Depicted::PreparedGuidePlane)
        canvas.stroke({centre, centre + Point{2.2, 0}}, {Colour::Ink, 0.5}, depicts);
}

void fulcrum(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    canvas.stroke(level(box), {Colour::Ink, 0.35, LineStyle::DashDot}, depicts);
}

void lever(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    canvas.stroke(level(box), {Colour::Ink, kThin}, depicts);
}

void path(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    const Point tip = box.centre() + Point{2.4, 0};
    canvas.stroke({box.centre() - Point{2.4, 0}, tip}, {Colour::Ink, 0.35}, depicts);
    canvas.fill({tip, tip + Point{-1.5, 0.8}, tip + Point{-1.5, -0.8}}, Colour::Ink, depicts);
}

void flag(ArchCanvas& canvas, const Box& box, Depicted depicts) {
    const bool filled = depicts == Depicted::ConflictFlag;
    const Colour line = depicts == Depicted::MissingFlag ? Colour::Ask
                        : filled                         ? Colour::Stop
                                                         : Colour::Ink;
    const auto style = depicts == Depicted::CautionFlag ? LineStyle::Dashed : LineStyle::Solid;
    const Point centre = box.centre();
    const Box cloth{centre.x - 1.6, box.top, centre.x + 1.6, box.bottom - 0.4};
    canvas.shape(rectangle(cloth), filled ? Colour::Stop : Colour::Sheet, {line, 0.32, style},
                 depicts);
    canvas.stroke({{cloth.left, cloth.top}, {cloth.left, box.bottom + 0.4}}, {line, 0.5}, depicts);
}

struct LegendRow {
    Depicted depicts{};
    std::string_view words{};
    Swatch draw{};
};

constexpr std::array<LegendRow, kDepicted - 1> kRows{{
    {Depicted::PresentTooth, "tooth that stands", tooth},
    {Depicted::ReplacedTooth, "tooth to be replaced", replacedTooth},
    {Depicted::NotReplaced, "missing, not replaced", cross},
    {Depicted::ClosedSpace, "missing, space closed", facingArrows},
    {Depicted::ExtractedTooth, "tooth to be extracted", extractedTooth},
    {Depicted::BridgedTooth, "fixed bridge or implant", bridgedTooth},
    {Depicted::Saddle, "saddle, resin base", saddle},
    {Depicted::MetalBase, "saddle, metal base", saddle},
    {Depicted::OpenLattice, "open lattice", lattice},
    {Depicted::Mesh, "mesh", mesh},
    {Depicted::Bead, "beads", beads},
    {Depicted::TissueStop, "tissue stop", tissueStop},
    {Depicted::ExternalFinishLine, "external finish line", doubleLine},
    {Depicted::InternalFinishLine, "internal finish line", doubleLine},
    {Depicted::MajorConnector, "", plate},
    {Depicted::ResinPlate, "plate, resin", plate},
    {Depicted::MinorConnector, "minor connector", strut},
    {Depicted::PreparedRest, "rest, seat prepared", rest},
    {Depicted::UnpreparedRest, "rest, seat not prepared", rest},
    {Depicted::IndirectRetainer, "indirect retainer", ringedRest},
    {Depicted::RetentiveArm, "retentive arm", arm},
    {Depicted::WroughtWire, "retentive arm, wrought wire", arm},
    {Depicted::UndercutDepth, "depth of undercut, mm", depth},
    {Depicted::Reciprocation, "reciprocating part", reciprocation},
    {Depicted::GuidePlate, "guide plate", guidePlate},
    {Depicted::PreparedGuidePlane, "guide plane prepared", guidePlate},
    {Depicted::Fulcrum, "fulcrum line", fulcrum},
    {Depicted::Lever, "lever, mm in a mean arch", lever},
    {Depicted::InsertionPath, "path of insertion, tilt", path},
    {Depicted::MissingFlag, "missing: see its number", flag},
    {Depicted::ConflictFlag, "in conflict: see its number", flag},
    {Depicted::CautionFlag, "caution: see its number", flag},
}};

std::string wordsFor(const LegendRow& row, const Prescription& prescription) {
    if (row.depicts != Depicted::MajorConnector || !prescription.majorConnector)
        return std::string{row.words};
    const MajorConnector& connector = *prescription.majorConnector;
    std::string words = wordsOf(connector.kind);
    if (connector.width) words += ", " + text(*connector.width);
    return words;
}

}  // namespace

double drawLegend(ArchCanvas& canvas, const Prescription& prescription) {
    std::set<Depicted> depicted;
    for (const Mark& mark : canvas.marks())
        depicted.insert(std::visit([](const auto& any) { return any.depicts; }, mark));
    constexpr double kLeft = kArchPictureWidth + 6;
    double top = 1;
    for (const LegendRow& row : kRows) {
        if (!depicted.contains(row.depicts)) continue;
        row.draw(canvas, {kLeft, top + 0.4, kLeft + kSwatchWidth, top + 2.6}, row.depicts);
        canvas.write({.text = wordsFor(row, prescription),
                      .at = {kLeft + kSwatchWidth + 2, top + 2.35},
                      .anchor = Anchor::Left,
                      .size = kSize,
                      .bold = false,
                      .colour = Colour::Ink,
                      .depicts = Depicted::Frame});
        top += kRow;
    }
    return top;
}

}  // namespace domain
