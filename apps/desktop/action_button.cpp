#include "apps/desktop/action_button.h"

#include <QPainter>

namespace desktop {
namespace {

constexpr int kPadding = 3 * kStep;
constexpr int kGap = 3 * kStep;

}  // namespace

ActionButton::ActionButton(const QString& word, const QKeySequence& key, const Look& look,
                           QWidget* parent)
    : QAbstractButton{parent}, look_{look}, key_{key} {
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::PointingHandCursor);
    say(word);
}

void ActionButton::say(const QString& word) {
    setText(word);
    setShortcut(key_);  // setText() takes the shortcut away
    setAccessibleName(word);
    setAccessibleDescription(QStringLiteral("key %1").arg(keyShown()));
    updateGeometry();
    update();
}

void ActionButton::setNext(bool next) {
    if (next_ == next) return;
    next_ = next;
    updateGeometry();
    update();
}

QString ActionButton::keyShown() const {
    // As it is printed on most keyboards.
    return key_.toString(QKeySequence::NativeText).replace(QLatin1String{"Return"}, tr("Enter"));
}

QSize ActionButton::sizeHint() const {
    const int words = QFontMetrics{face(kPlainText, true)}.horizontalAdvance(text());
    const int key = QFontMetrics{face(kSmallText)}.horizontalAdvance(keyShown());
    return {words + key + kGap + 2 * kPadding, kTouch};
}

void ActionButton::paintEvent(QPaintEvent*) {
    using domain::Colour;
    QPainter painter{this};
    painter.setRenderHint(QPainter::Antialiasing);
    const bool filled = next_ && isEnabled();
    const QColor ink = look_.of(!isEnabled() ? Colour::Quiet
                                : filled     ? Colour::OnAccent
                                             : Colour::Ink);
    const QColor border = look_.of(!isEnabled() ? Colour::Line
                                   : filled     ? Colour::Accent
                                                : Colour::Quiet);
    const QColor fill = look_.of(filled                     ? Colour::Accent
                                 : isDown() || underMouse() ? Colour::Ground
                                                            : Colour::Sheet);
    painter.setPen(QPen{border, 1});
    painter.setBrush(fill);
    painter.drawRoundedRect(QRectF{rect()}.adjusted(0.5, 0.5, -0.5, -0.5), 3, 3);
    if (hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen{filled ? ink : look_.of(Colour::Ink), 2});
        painter.drawRoundedRect(QRectF{rect()}.adjusted(3, 3, -3, -3), 2, 2);
    }
    const QRect inner = rect().adjusted(kPadding, 0, -kPadding, 0);
    painter.setPen(ink);
    painter.setFont(face(kPlainText, filled));
    painter.drawText(inner, Qt::AlignVCenter | Qt::AlignLeft, text());
    painter.setFont(face(kSmallText));
    painter.setPen(filled ? ink : look_.of(Colour::Quiet));
    painter.drawText(inner, Qt::AlignVCenter | Qt::AlignRight, keyShown());
}

}  // namespace desktop
