#include <algorithm>
#include <cmath>
#include <numbers>

#include "domain/drawing/arch_parts.h"

namespace domain {
namespace {

constexpr double kOuter = 6.4;     // mm outside the curve of the arch
constexpr double kScallop = 0.45;  // how far the edge swings
constexpr double kScallopPitch = 3.4;
constexpr double kFreeEndBeyond = 2.5;  // the base goes on behind the last tooth
constexpr double kRound = 3.0;          // over which a free end is rounded

bool standsBehind(const Prescription& prescription, int position, int step) {
    for (int at = position + step; at >= 0 && at < kTeethInArch; at += step)
        if (prescription.dentition.stands(Tooth::at(prescription.arch, at))) return true;
    return false;
}

SaddleRun runOf(const Prescription& prescription, const Saddle& saddle, int first, int last) {
    const ArchForm& form = ArchForm::mean(prescription.arch);
    SaddleRun run{.from = form.place(Tooth::at(prescription.arch, first)).from,
                  .to = form.place(Tooth::at(prescription.arch, last)).to,
                  .freeRight = !standsBehind(prescription, first, -1),
                  .freeLeft = !standsBehind(prescription, last, 1),
                  .saddle = &saddle};
    if (run.freeRight) run.from -= kFreeEndBeyond;
    if (run.freeLeft) run.to += kFreeEndBeyond;
    return run;
}

/// One near a bounded end and in the middle, falling to zero in a quarter circle at a free end.
double fullness(const SaddleRun& run, double along) {
    double least = 1;
    const auto rounded = [&](double fromEnd) {
        const double share = std::clamp(1 - fromEnd / kRound, 0.0, 1.0);
        least = std::min(least, std::sqrt(1 - share * share));
    };
    if (run.freeRight) rounded(along - run.from);
    if (run.freeLeft) rounded(run.to - along);
    return least;
}

Polyline edgeOf(Arch arch, const SaddleRun& run, double offset) {
    constexpr int kSteps = 96;
    Polyline line;
    const double length = run.to - run.from;
    const double bumps = std::max(1.0, std::round(length / kScallopPitch));
    for (int step = 0; step <= kSteps; ++step) {
        const double share = static_cast<double>(step) / kSteps;
        const double along = run.from + length * share;
        const double swing = kScallop * std::abs(std::sin(std::numbers::pi * bumps * share));
        const double reach = (std::abs(offset) + swing) * fullness(run, along);
        line.push_back(onArch(arch, along, offset < 0 ? -reach : reach));
    }
    return line;
}

/// The part of the ridge the retention framework covers. On a lower free end that is two thirds of
/// it, on an upper one all (teaching notes on minor connectors; secondary source).
SaddleRun frameworkOf(Arch arch, SaddleRun run) {
    const double cut = arch == Arch::Lower ? (run.to - run.from) / 3 : 1.5;
    run.from += run.freeRight ? cut : 0.6;
    run.to -= run.freeLeft ? cut : 0.6;
    return run;
}

constexpr double kRailOut = 5.4;
constexpr double kRailIn = kSaddleInner + 0.9;

void drawLattice(ArchCanvas& canvas, Arch arch, const SaddleRun& run) {
    const Pen pen{Colour::Edge, 0.32};
    for (const double rail : {kRailOut, kRailIn})
        canvas.stroke(alongArch(arch, run.from, run.to, rail), pen, Depicted::OpenLattice);
    const int rungs = std::max(2, static_cast<int>(std::round((run.to - run.from) / 2.8)));
    for (int rung = 0; rung <= rungs; ++rung) {
        const double along = run.from + (run.to - run.from) * rung / rungs;
        canvas.stroke({onArch(arch, along, kRailIn), onArch(arch, along, kRailOut)}, pen,
                      Depicted::OpenLattice);
    }
}

/// Slanting lines both ways, cut off at the ends of the run.
void drawMesh(ArchCanvas& canvas, Arch arch, const SaddleRun& run) {
    constexpr double kPitch = 1.5;
    constexpr double kHigh = kRailOut - kRailIn;
    for (const double slant : {1.0, -1.0})
        for (const double start : steps(run.from - kHigh, run.to + kHigh, kPitch)) {
            const double end = start + slant * kHigh;
            const auto heightAt = [&](double along) { return kRailIn + (along - start) * slant; };
            const double low = std::max(std::min(start, end), run.from);
            const double high = std::min(std::max(start, end), run.to);
            if (low >= high) continue;
            constexpr int kSteps = 5;
            Polyline line;
            for (int step = 0; step <= kSteps; ++step) {
                const double along = low + (high - low) * step / kSteps;
                line.push_back(onArch(arch, along, heightAt(along)));
            }
            canvas.stroke(line, {Colour::Edge, kThin}, Depicted::Mesh);
        }
}

void drawBeads(ArchCanvas& canvas, Arch arch, const SaddleRun& run) {
    constexpr double kPitch = 1.5;
    for (const double offset : steps(kRailIn, kRailOut, kPitch))
        for (const double along : steps(run.from + 0.6, run.to - 0.4, kPitch))
            canvas.dot(onArch(arch, along, offset), 0.24, Colour::Edge, Depicted::Bead);
}

void drawRetention(ArchCanvas& canvas, Arch arch, const SaddleRun& run) {
    if (!run.saddle->retention) return;
    const SaddleRun framework = frameworkOf(arch, run);
    switch (*run.saddle->retention) {
        case ResinRetention::OpenLattice:
            return drawLattice(canvas, arch, framework);
        case ResinRetention::Mesh:
            return drawMesh(canvas, arch, framework);
        case ResinRetention::Bead:
            return drawBeads(canvas, arch, framework);
    }
}

void drawTissueStop(ArchCanvas& canvas, Arch arch, const SaddleRun& run) {
    const SaddleRun framework = frameworkOf(arch, run);
    for (const auto& [free, along] :
         {std::pair{run.freeRight, framework.from}, std::pair{run.freeLeft, framework.to}}) {
        if (!free) continue;
        // Beside the last tooth, towards the tongue, where it is not covered.
        const double inwards = along < 0 ? 1.3 : -1.3;
        canvas.shape({onArch(arch, along, -5.9), onArch(arch, along + 2 * inwards, -5.9),
                      onArch(arch, along + 2 * inwards, -8.1), onArch(arch, along, -8.1)},
                     Colour::Metal, {Colour::Edge, kLine}, Depicted::TissueStop);
    }
}

void drawDoubleLine(ArchCanvas& canvas, const Polyline& line, const Pen& pen, Depicted depicts) {
    canvas.stroke(besideLine(line, 0.3), pen, depicts);
    canvas.stroke(besideLine(line, -0.3), pen, depicts);
}

/// The parts of a line that lie on the metal; all of it where no metal is given yet.
std::vector<Polyline> onMetal(const Prescription& prescription, const Polyline& line) {
    const auto outlines = connectorOutlines(prescription);
    std::vector<Polyline> parts(1);
    for (const Point point : line) {
        const bool on = std::ranges::any_of(
            outlines, [&](const Polyline& outline) { return contains(outline, point); });
        if (on || outlines.empty())
            parts.back().push_back(point);
        else if (!parts.back().empty())
            parts.emplace_back();
    }
    std::erase_if(parts, [](const Polyline& part) { return part.size() < 2; });
    return parts;
}

/// The outer line beside the resin, the inner one further towards the tongue: never in one place.
void drawFinishLines(ArchCanvas& canvas, const Prescription& prescription, const SaddleRun& run) {
    const double from = run.from + (run.freeRight ? kRound : 0.3);
    const double to = run.to - (run.freeLeft ? kRound : 0.3);
    const auto lines = [&](double offset, const Pen& pen, Depicted depicts) {
        const Polyline whole = alongArch(prescription.arch, from, to, offset);
        for (const Polyline& part : onMetal(prescription, whole))
            drawDoubleLine(canvas, part, pen, depicts);
    };
    const FinishLines& given = run.saddle->finishLines;
    if (given.external.value_or(false))
        lines(kSaddleInner - 0.9, {Colour::Edge, 0.24}, Depicted::ExternalFinishLine);
    if (given.internal.value_or(false))
        lines(kSaddleInner - 2.3, {Colour::Edge, 0.24, LineStyle::Dashed},
              Depicted::InternalFinishLine);
}

}  // namespace

std::vector<SaddleRun> saddleRuns(const Prescription& prescription) {
    std::vector<SaddleRun> runs;
    for (const Saddle& saddle : prescription.saddles) {
        std::vector<int> positions;
        for (const Tooth tooth : saddle.teeth)
            if (tooth.arch() == prescription.arch) positions.push_back(tooth.position());
        std::ranges::sort(positions);
        for (std::size_t at = 0; at < positions.size();) {
            std::size_t last = at;
            while (last + 1 < positions.size() && positions[last + 1] <= positions[last] + 1)
                ++last;
            runs.push_back(runOf(prescription, saddle, positions[at], positions[last]));
            at = last + 1;
        }
    }
    return runs;
}

void drawSaddles(ArchCanvas& canvas, const Prescription& prescription) {
    const Arch arch = prescription.arch;
    for (const SaddleRun& run : saddleRuns(prescription)) {
        const bool metal = run.saddle->base == BaseKind::Metal;
        Polyline outline = edgeOf(arch, run, kOuter);
        const Polyline inner = edgeOf(arch, run, kSaddleInner);
        outline.insert(outline.end(), inner.rbegin(), inner.rend());
        canvas.shape(outline, metal ? Colour::Metal : Colour::Resin, {Colour::Edge, kLine},
                     metal ? Depicted::MetalBase : Depicted::Saddle);
        canvas.keepClear(outline);
        drawRetention(canvas, arch, run);
        if (run.saddle->tissueStop.value_or(false)) drawTissueStop(canvas, arch, run);
        drawFinishLines(canvas, prescription, run);
    }
}

}  // namespace domain
