/// The layers of the arch picture, from the tissue up; private to this folder.
#pragma once

#include "domain/drawing/arch_canvas.h"
#include "domain/drawing/arch_picture.h"

namespace domain {

/// Teeth to be replaced: those of the saddles, and those charted as missing and to be replaced.
ToothSet toBeReplaced(const Prescription& prescription);

/// Consecutive teeth of one saddle, as an interval along the arch.
struct SaddleRun {
    double from{};  ///< mm from the midline, negative on the patient's right
    double to{};
    bool freeRight{};  ///< no tooth stands behind its end on the patient's right
    bool freeLeft{};
    const Saddle* saddle{};

    bool covers(double along) const noexcept { return from - 0.5 <= along && along <= to + 0.5; }
};
std::vector<SaddleRun> saddleRuns(const Prescription& prescription);

/// The border a saddle shows to the tongue, mm from the curve of the arch.
inline constexpr double kSaddleInner = -9.4;

/// The major connector's outline, where there is one and it lies beside the teeth.
std::vector<Polyline> connectorOutlines(const Prescription& prescription);

void drawMajorConnector(ArchCanvas& canvas, const Prescription& prescription);
/// The bars that lie upon the teeth.
void drawCingulumBar(ArchCanvas& canvas, const Prescription& prescription);
void drawMinorConnectors(ArchCanvas& canvas, const Prescription& prescription);
void drawSaddles(ArchCanvas& canvas, const Prescription& prescription);
void drawTeeth(ArchCanvas& canvas, const Prescription& prescription);
void drawGuidePlates(ArchCanvas& canvas, const Prescription& prescription);
void drawRests(ArchCanvas& canvas, const Prescription& prescription);
void drawClasps(ArchCanvas& canvas, const Prescription& prescription);
/// The fulcrum line, the levers to it, the path of insertion; then their numbers, where room is.
void drawAxes(ArchCanvas& canvas, const Prescription& prescription);
void drawAxisNumbers(ArchCanvas& canvas, const Prescription& prescription);

/// Where the middle of a rest lies.
Point restPoint(const Rest& rest);
/// Where the tip of a retentive arm lies; nullopt where its undercut is not given.
std::optional<Point> armTip(const Clasp& clasp);

/// Tooth numbers, sides, depths of undercuts and flags, each where there is room.
void drawLabels(ArchCanvas& canvas, const Prescription& prescription,
                const ArchPictureOptions& options);
void drawFlags(ArchCanvas& canvas, const Prescription& prescription,
               const std::vector<Finding>& findings, const ArchPictureOptions& options);

/// The legend of what the marks so far depict, from x = kArchPictureWidth on.
/// Returns how far down it reaches.
double drawLegend(ArchCanvas& canvas, const Prescription& prescription);
inline constexpr double kLegendWidth = 56;

}  // namespace domain
