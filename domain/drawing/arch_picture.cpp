#include "domain/drawing/arch_picture.h"

#include <algorithm>

#include "domain/drawing/arch_parts.h"

namespace domain {

Picture archPicture(const Prescription& prescription, const std::vector<Finding>& findings,
                    const ArchPictureOptions& options) {
    ArchCanvas canvas;
    drawMajorConnector(canvas, prescription);
    drawSaddles(canvas, prescription);
    drawMinorConnectors(canvas, prescription);
    drawTeeth(canvas, prescription);
    drawCingulumBar(canvas, prescription);
    drawGuidePlates(canvas, prescription);
    drawRests(canvas, prescription);
    drawClasps(canvas, prescription);
    drawAxes(canvas, prescription);
    drawLabels(canvas, prescription, options);
    drawAxisNumbers(canvas, prescription);
    drawFlags(canvas, prescription, findings, options);
    Picture picture{.width = kArchPictureWidth, .height = kArchPictureHeight, .marks = {}};
    if (options.legend) {
        picture.height = std::max(picture.height, drawLegend(canvas, prescription));
        picture.width += kLegendWidth;
    }
    picture.marks = canvas.takeMarks();
    return picture;
}

std::vector<ToothShape> toothShapes(Arch arch) {
    std::vector<ToothShape> shapes;
    for (int position = 0; position < kTeethInArch; ++position) {
        const Tooth tooth = Tooth::at(arch, position);
        shapes.push_back({.tooth = tooth, .outline = toothFrame(tooth).outline});
    }
    return shapes;
}

}  // namespace domain
