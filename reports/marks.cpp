#include "reports/marks.h"

namespace reports {

using domain::Colour;
using domain::Point;
using domain::Severity;

void drawCautionMark(PdfDocument& pdf, Point corner, double height) {
    const double width = height * 1.12;
    pdf.line({{corner.x + width / 2, corner.y},
              {corner.x + width, corner.y + height},
              {corner.x, corner.y + height}},
             true, {.width = height / 14});
    const double middle = corner.x + width / 2;
    const double half = height / 26;
    pdf.area({{middle - half * 1.5, corner.y + height * 0.36},
              {middle + half * 1.5, corner.y + height * 0.36},
              {middle + half, corner.y + height * 0.70},
              {middle - half, corner.y + height * 0.70}},
             Colour::Ink);
    pdf.area({{middle - half, corner.y + height * 0.77},
              {middle + half, corner.y + height * 0.77},
              {middle + half, corner.y + height * 0.86},
              {middle - half, corner.y + height * 0.86}},
             Colour::Ink);
}

void drawCheck(PdfDocument& pdf, Point corner, CheckState state) {
    if (state == CheckState::Look) return drawCautionMark(pdf, corner, kTickBox);
    pdf.box({corner.x, corner.y, corner.x + kTickBox, corner.y + kTickBox}, {.width = 0.25});
    if (state == CheckState::Given)
        pdf.line({{corner.x + 0.8, corner.y + 2.1},
                  {corner.x + 1.7, corner.y + 3.1},
                  {corner.x + 3.3, corner.y + 0.9}},
                 false, {.width = 0.5});
}

void drawFlag(PdfDocument& pdf, Point corner, const FlagNumber& flag) {
    constexpr double kHeight = 3.8;
    const std::string text = std::to_string(flag.number);
    const bool conflict = flag.severity == Severity::Conflict;
    const Colour colour = conflict                             ? Colour::Stop
                          : flag.severity == Severity::Missing ? Colour::Ask
                                                               : Colour::Ink;
    const Type type{
        .face = Face::Bold, .size = kSmallType, .colour = conflict ? Colour::Sheet : colour};
    const double width = pdf.widthOf(text, type) + 2.4;
    const std::vector<Point> cloth{{corner.x, corner.y},
                                   {corner.x + width, corner.y},
                                   {corner.x + width, corner.y + kHeight},
                                   {corner.x, corner.y + kHeight}};
    if (conflict) pdf.area(cloth, colour);
    LineLook look{.width = 0.3, .colour = colour};
    if (flag.severity == Severity::Caution) look.dashes = {1.2, 0.8};
    pdf.line(cloth, true, look);
    pdf.line({corner, {corner.x, corner.y + kHeight + 1.2}}, false,
             {.width = 0.5, .colour = colour});
    pdf.text({corner.x + 1.2, corner.y + 2.85}, text, type);
}

}  // namespace reports
