/// The arch picture on screen: shown with its findings, and pointed at tooth by tooth.
#pragma once

#include <QWidget>
#include <optional>
#include <vector>

#include "apps/desktop/look.h"
#include "domain/drawing/arch_picture.h"

namespace desktop {

class ArchView : public QWidget {
    Q_OBJECT

public:
    explicit ArchView(const Look& look);

    /// Flags its findings from `firstNumber` on, in their order.
    void show(const domain::Prescription& prescription,
              const std::vector<domain::Finding>& findings, int firstNumber = 1);

    /// Lets teeth be pointed at: with the mouse, or with the arrow keys and Enter.
    void letPoint();

    /// The tooth at a place of the widget.
    std::optional<domain::Tooth> toothAt(QPointF place) const;
    /// Where a tooth of the arch shown stands on the widget; empty for the other arch.
    QRectF placeOf(domain::Tooth tooth) const;

    QSize minimumSizeHint() const override;
    QSize sizeHint() const override { return minimumSizeHint(); }

signals:
    /// `where` is on the whole screen, for a menu.
    void toothPressed(domain::Tooth tooth, QPoint where);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    /// Pixels for each millimetre, so that the whole arch is seen.
    qreal scale() const;
    QPointF origin() const;
    void pointAt(int position);

    const Look& look_;
    domain::Picture picture_;     ///< of the arch alone
    domain::Picture withLegend_;  ///< shown where the sheet is wide enough for both
    std::vector<domain::ToothShape> teeth_;
    bool pointable_{false};
    int pointed_{0};  ///< position in the arch of the tooth the keys stand at
};

}  // namespace desktop
