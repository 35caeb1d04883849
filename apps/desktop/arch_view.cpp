#include "apps/desktop/arch_view.h"

#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "apps/desktop/models/words.h"
#include "apps/desktop/picture_painter.h"

namespace desktop {
namespace {

constexpr qreal kLeastTooth = 28;  ///< px, so that a gloved finger meets one tooth
constexpr qreal kPointerWidth = 4;

QPolygonF outlineOf(const domain::ToothShape& shape, QPointF origin, qreal scale) {
    QPolygonF outline;
    for (const domain::Point& point : shape.outline)
        outline << origin + QPointF{point.x, point.y} * scale;
    return outline;
}

/// Pixels for each mm at which the narrowest tooth of either arch is wide enough.
qreal leastScale() {
    qreal narrowest = domain::kArchPictureWidth;
    for (const domain::Arch arch : {domain::Arch::Upper, domain::Arch::Lower})
        for (const domain::ToothShape& shape : domain::toothShapes(arch)) {
            const domain::Box box = boxOf(shape.outline);
            narrowest = std::min({narrowest, box.right - box.left, box.bottom - box.top});
        }
    return kLeastTooth / narrowest;
}

}  // namespace

ArchView::ArchView(const Look& look) : look_{look} {
    setAccessibleName(tr("Arch picture"));
    show({}, {});
}

void ArchView::show(const domain::Prescription& prescription,
                    const std::vector<domain::Finding>& findings, int firstNumber) {
    domain::ArchPictureOptions options{
        .notation = notationOf(prescription), .legend = false, .firstNumber = firstNumber};
    picture_ = archPicture(prescription, findings, options);
    options.legend = true;
    withLegend_ = archPicture(prescription, findings, options);
    teeth_ = domain::toothShapes(prescription.arch);
    setAccessibleDescription(
        tr("%1 arch, patient's right on the left").arg(models::spoken(prescription.arch)));
    update();
}

void ArchView::letPoint() {
    pointable_ = true;
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setToolTip(tr("Point at a tooth: arrow keys, then Enter, or click it"));
}

qreal ArchView::scale() const {
    return std::min(width() / domain::kArchPictureWidth, height() / domain::kArchPictureHeight);
}

QPointF ArchView::origin() const {
    const bool roomForLegend = withLegend_.width * scale() <= width();
    const qreal shown = roomForLegend ? withLegend_.width : picture_.width;
    return {(width() - shown * scale()) / 2, 0};
}

std::optional<domain::Tooth> ArchView::toothAt(QPointF place) const {
    for (const domain::ToothShape& shape : teeth_)
        if (outlineOf(shape, origin(), scale()).containsPoint(place, Qt::OddEvenFill))
            return shape.tooth;
    return {};
}

QRectF ArchView::placeOf(domain::Tooth tooth) const {
    const auto shape = std::ranges::find(teeth_, tooth, &domain::ToothShape::tooth);
    return shape == teeth_.end() ? QRectF{} : outlineOf(*shape, origin(), scale()).boundingRect();
}

QSize ArchView::minimumSizeHint() const {
    const qreal scale = leastScale();
    return {static_cast<int>(std::ceil(domain::kArchPictureWidth * scale)),
            static_cast<int>(std::ceil(domain::kArchPictureHeight * scale))};
}

void ArchView::paintEvent(QPaintEvent*) {
    QPainter painter{this};
    painter.fillRect(rect(), look_.of(domain::Colour::Sheet));
    const bool roomForLegend = withLegend_.width * scale() <= width();
    paintPicture(painter, roomForLegend ? withLegend_ : picture_, origin(), scale(), look_);
    if (!pointable_ || !hasFocus()) return;
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen{look_.of(domain::Colour::Ink), kPointerWidth});
    painter.setBrush(Qt::NoBrush);
    painter.drawPolygon(outlineOf(teeth_[static_cast<std::size_t>(pointed_)], origin(), scale()));
}

void ArchView::resizeEvent(QResizeEvent*) {
    // More height than the width can use would only push apart what stands below.
    setMaximumHeight(std::max(
        minimumSizeHint().height(),
        static_cast<int>(width() * domain::kArchPictureHeight / domain::kArchPictureWidth)));
}

void ArchView::mousePressEvent(QMouseEvent* event) {
    const auto tooth = toothAt(event->position());
    if (!pointable_ || !tooth) return;
    pointed_ = tooth->position();
    update();
    emit toothPressed(*tooth, event->globalPosition().toPoint());
}

void ArchView::mouseMoveEvent(QMouseEvent* event) {
    setCursor(toothAt(event->position()) ? Qt::PointingHandCursor : Qt::ArrowCursor);
}

void ArchView::pointAt(int position) {
    pointed_ = std::clamp(position, 0, domain::kTeethInArch - 1);
    update();
}

void ArchView::keyPressEvent(QKeyEvent* event) {
    if (!pointable_) return QWidget::keyPressEvent(event);
    switch (event->key()) {
        case Qt::Key_Left:
            return pointAt(pointed_ - 1);
        case Qt::Key_Right:
            return pointAt(pointed_ + 1);
        case Qt::Key_Home:
            return pointAt(0);
        case Qt::Key_End:
            return pointAt(domain::kTeethInArch - 1);
        case Qt::Key_Return:
        case Qt::Key_Enter:
        case Qt::Key_Space: {
            const domain::Tooth tooth = teeth_[static_cast<std::size_t>(pointed_)].tooth;
            emit toothPressed(tooth, mapToGlobal(placeOf(tooth).center().toPoint()));
            return;
        }
        default:
            return QWidget::keyPressEvent(event);
    }
}

}  // namespace desktop
