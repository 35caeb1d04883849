#include "apps/desktop/tick_row.h"

#include <QPainter>

#include "apps/desktop/marks.h"

namespace desktop {
namespace {

constexpr int kMarkSize = 22;
constexpr int kPadding = 2 * kStep;
constexpr int kStateWidth = 110;

}  // namespace

TickRow::TickRow(const QString& words, const Look& look) : look_{look} {
    setText(words);
    setCheckable(true);
    setAccessibleName(words);
    setAccessibleDescription(tr("key Space ticks"));
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::PointingHandCursor);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void TickRow::setRecorded(bool recorded) {
    recorded_ = recorded;
    if (recorded) setChecked(true);
    setEnabled(!recorded);
    update();
}

QSize TickRow::sizeHint() const { return {40 * kStep, kTouch}; }

void TickRow::paintEvent(QPaintEvent*) {
    using domain::Colour;
    using models::Mark;
    QPainter painter{this};
    painter.fillRect(rect(), look_.of(isDown() || underMouse() ? Colour::Ground : Colour::Sheet));
    painter.fillRect(0, height() - 1, width(), 1, look_.of(Colour::Line));
    if (hasFocus()) {
        painter.setPen(QPen{look_.of(Colour::Ink), 2});
        painter.drawRect(rect().adjusted(1, 1, -2, -2));
    }
    const QRectF box(kPadding, (height() - kMarkSize) / 2.0, kMarkSize, kMarkSize);
    paintMark(painter, box, isChecked() ? Mark::Done : Mark::ToDo, look_);
    const QString state = recorded_     ? tr("recorded")
                          : isChecked() ? tr("not recorded yet")
                                        : QString{};
    QRect inner = rect().adjusted(kMarkSize + 2 * kPadding, 0, -kPadding, 0);
    painter.setFont(face(kSmallText));
    painter.setPen(look_.of(Colour::Quiet));
    painter.drawText(inner, Qt::AlignVCenter | Qt::AlignRight, state);
    inner.setRight(inner.right() - kStateWidth);
    painter.setFont(face(kPlainText));
    painter.setPen(look_.of(recorded_ ? Colour::Quiet : Colour::Ink));
    painter.drawText(inner, Qt::AlignVCenter | Qt::AlignLeft | Qt::TextWordWrap, text());
}

}  // namespace desktop
