#include "apps/desktop/picture_painter.h"

#include <QPolygonF>
#include <algorithm>
#include <cmath>

namespace desktop {
namespace {

QPolygonF polygonOf(const std::vector<domain::Point>& line) {
    QPolygonF polygon;
    for (const domain::Point& point : line) polygon << QPointF{point.x, point.y};
    return polygon;
}

/// Paints one mark; the painter already counts in millimetres.
class MarkPainter {
public:
    MarkPainter(QPainter& painter, qreal scale, const Look& look)
        : painter_{painter}, scale_{scale}, look_{look} {}

    void operator()(const domain::Fill& fill) const {
        painter_.setPen(Qt::NoPen);
        painter_.setBrush(look_.of(fill.colour));
        painter_.drawPolygon(polygonOf(fill.outline));
    }

    void operator()(const domain::Stroke& stroke) const {
        // A line thinner than a pixel would fade away on a dim panel.
        const qreal width = std::max(stroke.width, 1 / scale_);
        QPen pen{look_.of(stroke.colour), width, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin};
        if (const auto dashes = domain::dashesOf(stroke.style); !dashes.empty()) {
            QList<qreal> pattern;  // Qt counts dashes in widths of the pen
            for (const double dash : dashes) pattern << dash / width;
            pen.setDashPattern(pattern);
        }
        painter_.setPen(pen);
        painter_.setBrush(Qt::NoBrush);
        if (stroke.closed)
            painter_.drawPolygon(polygonOf(stroke.line));
        else
            painter_.drawPolyline(polygonOf(stroke.line));
    }

    void operator()(const domain::Words& words) const {
        const QString text = QString::fromStdString(words.text);
        const QFont font =
            face(std::max(1, static_cast<int>(std::lround(words.size * scale_))), words.bold);
        const qreal length = QFontMetricsF{font}.horizontalAdvance(text);
        QPointF at = painter_.transform().map(QPointF{words.at.x, words.at.y});
        switch (words.anchor) {
            case domain::Anchor::Left:
                break;
            case domain::Anchor::Middle:
                at.rx() -= length / 2;
                break;
            case domain::Anchor::Right:
                at.rx() -= length;
                break;
        }
        painter_.save();
        painter_.resetTransform();
        painter_.setFont(font);
        painter_.setPen(look_.of(words.colour));
        painter_.drawText(at, text);
        painter_.restore();
    }

private:
    QPainter& painter_;
    qreal scale_;
    const Look& look_;
};

}  // namespace

void paintPicture(QPainter& painter, const domain::Picture& picture, QPointF place, qreal scale,
                  const Look& look) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(place);
    painter.scale(scale, scale);
    const MarkPainter paint{painter, scale, look};
    for (const domain::Mark& mark : picture.marks) std::visit(paint, mark);
    painter.restore();
}

}  // namespace desktop
