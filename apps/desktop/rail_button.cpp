#include "apps/desktop/rail_button.h"

#include <QPainter>

namespace desktop {

RailButton::RailButton(const QString& word, const QKeySequence& key, const Look& look)
    : look_{look} {
    setText(word);
    setShortcut(key);
    setCheckable(true);
    setAutoExclusive(true);
    setAccessibleName(word);
    setAccessibleDescription(tr("room, key %1").arg(keyShown()));
    setFocusPolicy(Qt::TabFocus);
    setCursor(Qt::PointingHandCursor);
}

QSize RailButton::sizeHint() const { return {24 * kStep, 16 * kStep}; }

void RailButton::paintEvent(QPaintEvent*) {
    using domain::Colour;
    QPainter painter{this};
    painter.fillRect(rect(), look_.of(isChecked() ? Colour::Sheet : Colour::Ground));
    if (isChecked()) painter.fillRect(0, 0, kStep, height(), look_.of(Colour::Ink));
    if (hasFocus()) {
        painter.setPen(QPen{look_.of(Colour::Ink), 2});
        painter.drawRect(rect().adjusted(6, 3, -4, -4));
    }
    const QRect inner = rect().adjusted(4 * kStep, 0, -kStep, 0);
    painter.setPen(look_.of(Colour::Ink));
    painter.setFont(face(kPlainText, isChecked()));
    painter.drawText(inner.adjusted(0, 12, 0, -height() / 2 + 4), Qt::AlignLeft | Qt::AlignVCenter,
                     text());
    painter.setPen(look_.of(Colour::Quiet));
    painter.setFont(face(kSmallText));
    painter.drawText(inner.adjusted(0, height() / 2, 0, -12), Qt::AlignLeft | Qt::AlignVCenter,
                     keyShown());
}

}  // namespace desktop
