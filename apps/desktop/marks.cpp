#include "apps/desktop/marks.h"

#include <QPainterPath>
#include <QPolygonF>

namespace desktop {
namespace {

using domain::Colour;
using models::Mark;

constexpr qreal kGrid = 16;
constexpr qreal kStroke = 1.6;

void paintHalfCircle(QPainter& painter) {
    const QRectF circle{2, 2, 12, 12};
    constexpr int kQuarterTurn = 90 * 16;  // Qt counts in sixteenths of a degree
    painter.drawEllipse(circle);
    painter.setBrush(painter.pen().color());
    painter.drawPie(circle, -kQuarterTurn, 2 * kQuarterTurn);
}

void paintTickedSquare(QPainter& painter, const Look& look) {
    painter.setBrush(painter.pen().color());
    painter.drawRect(QRectF{2, 2, 12, 12});
    painter.setPen(QPen{look.of(Colour::Sheet), kStroke * 1.2, Qt::SolidLine, Qt::SquareCap});
    painter.drawPolyline(QPolygonF{{4.8, 8.2}, {7.1, 10.6}, {11.2, 5.4}});
}

void paintHourGlass(QPainter& painter) {
    painter.drawPolygon(QPolygonF{{3, 2}, {13, 2}, {8, 8}});
    painter.setBrush(painter.pen().color());
    painter.drawPolygon(QPolygonF{{3, 14}, {13, 14}, {8, 8}});
}

void paintAskedDiamond(QPainter& painter) {
    painter.drawPolygon(QPolygonF{{8, 0.9}, {15.1, 8}, {8, 15.1}, {0.9, 8}});
    QFont font = face(9, true);
    painter.setFont(font);
    painter.drawText(QRectF{0, 0, kGrid, kGrid}, Qt::AlignCenter, QStringLiteral("?"));
}

void paintOutwardTriangle(QPainter& painter) {
    painter.drawLine(QPointF{2, 2.5}, QPointF{2, 13.5});
    painter.drawPolygon(QPolygonF{{5, 2.5}, {14.5, 8}, {5, 13.5}});
}

void paintBarredOctagon(QPainter& painter) {
    painter.drawPolygon(QPolygonF{
        {5, 1.2}, {11, 1.2}, {14.8, 5}, {14.8, 11}, {11, 14.8}, {5, 14.8}, {1.2, 11}, {1.2, 5}});
    painter.fillRect(QRectF{4.4, 6.9, 7.2, 2.2}, painter.pen().color());
}

void paintCaution(QPainter& painter) {
    painter.drawPolygon(QPolygonF{{8, 1.6}, {15, 14}, {1, 14}});
    painter.fillRect(QRectF{7.2, 5.8, 1.6, 4.4}, painter.pen().color());
    painter.fillRect(QRectF{7.2, 11.2, 1.6, 1.6}, painter.pen().color());
}

}  // namespace

Colour colourOf(Mark mark) {
    switch (mark) {
        case Mark::ToDo:
        case Mark::InHand:
        case Mark::Waiting:
            return Colour::Ink;
        case Mark::Done:
            return Colour::Good;
        case Mark::Asked:
        case Mark::Caution:
            return Colour::Ask;
        case Mark::Away:
            return Colour::Away;
        case Mark::Refused:
            return Colour::Stop;
    }
    return Colour::Ink;
}

void paintMark(QPainter& painter, const QRectF& box, Mark mark, const Look& look) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(box.topLeft());
    painter.scale(box.width() / kGrid, box.height() / kGrid);
    painter.setPen(
        QPen{look.of(colourOf(mark)), kStroke, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin});
    painter.setBrush(Qt::NoBrush);
    switch (mark) {
        case Mark::ToDo:
            painter.drawEllipse(QRectF{2, 2, 12, 12});
            break;
        case Mark::InHand:
            paintHalfCircle(painter);
            break;
        case Mark::Done:
            paintTickedSquare(painter, look);
            break;
        case Mark::Waiting:
            paintHourGlass(painter);
            break;
        case Mark::Asked:
            paintAskedDiamond(painter);
            break;
        case Mark::Away:
            paintOutwardTriangle(painter);
            break;
        case Mark::Refused:
            paintBarredOctagon(painter);
            break;
        case Mark::Caution:
            paintCaution(painter);
            break;
    }
    painter.restore();
}

}  // namespace desktop
