#include "reports/pdf_picture.h"

#include "reports/text.h"

namespace reports {
namespace {

using domain::Point;

class Painter {
public:
    Painter(PdfDocument& pdf, Point corner, double scale)
        : pdf_{pdf}, corner_{corner}, scale_{scale} {}

    void operator()(const domain::Fill& fill) const {
        pdf_.area(placed(fill.outline), fill.colour);
    }
    void operator()(const domain::Stroke& stroke) const {
        std::vector<double> dashes = domain::dashesOf(stroke.style);
        for (double& dash : dashes) dash *= scale_;
        pdf_.line(placed(stroke.line), stroke.closed,
                  {.width = stroke.width * scale_, .colour = stroke.colour, .dashes = dashes});
    }
    void operator()(const domain::Words& words) const {
        const Type type{.face = words.bold ? Face::Bold : Face::Plain,
                        .size = words.size * scale_ / kMmPerPoint,
                        .colour = words.colour};
        const std::string text = printable(words.text);
        Point at = placed(words.at);
        const double width = pdf_.widthOf(pdf_.shown(text, type.face), type);
        if (words.anchor == domain::Anchor::Middle) at.x -= width / 2;
        if (words.anchor == domain::Anchor::Right) at.x -= width;
        pdf_.text(at, text, type);
    }

private:
    Point placed(Point at) const { return corner_ + at * scale_; }
    std::vector<Point> placed(std::vector<Point> line) const {
        for (Point& point : line) point = placed(point);
        return line;
    }

    PdfDocument& pdf_;
    Point corner_;
    double scale_;
};

}  // namespace

void draw(PdfDocument& pdf, const domain::Picture& picture, Point corner, double scale) {
    const Painter painter{pdf, corner, scale};
    for (const domain::Mark& mark : picture.marks) std::visit(painter, mark);
}

}  // namespace reports
