#include "apps/desktop/row_delegate.h"

#include <QPainter>
#include <QWidget>

#include "apps/desktop/marks.h"

namespace desktop {
namespace {

constexpr int kPadding = 2 * kStep;
constexpr int kMarkSize = 18;

}  // namespace

void paintRowEdge(QPainter& painter, const QStyleOptionViewItem& option, const Look& look) {
    const QRect& row = option.rect;
    const bool chosen = option.state.testFlag(QStyle::State_Selected);
    if (!chosen) {
        painter.fillRect(QRect{row.left(), row.bottom(), row.width(), 1},
                         look.of(domain::Colour::Line));
        return;
    }
    const bool focused = option.widget != nullptr && option.widget->hasFocus();
    const int width = focused ? 2 : 1;
    const QColor ink = look.of(focused ? domain::Colour::Ink : domain::Colour::Quiet);
    painter.fillRect(QRect{row.left(), row.top(), row.width(), width}, ink);
    painter.fillRect(QRect{row.left(), row.bottom() + 1 - width, row.width(), width}, ink);
}

void RowDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                        const QModelIndex& index) const {
    using domain::Colour;
    const bool chosen = option.state.testFlag(QStyle::State_Selected);
    const bool barred = index.data(row_.barRole).toBool();
    const ColumnLook& column = row_.columns[static_cast<std::size_t>(index.column())];
    painter->save();
    painter->fillRect(option.rect, look_.of(chosen ? Colour::Ground : Colour::Sheet));
    paintRowEdge(*painter, option, look_);
    if (barred && index.column() == 0)
        painter->fillRect(QRect{option.rect.left(), option.rect.top(), kStep, option.rect.height()},
                          look_.of(row_.bar));
    QRect inner = option.rect.adjusted(kPadding, 0, -kPadding, 0);
    if (const QVariant mark = index.data(kMarkRole); mark.isValid()) {
        const QRectF box(inner.left(), inner.center().y() - kMarkSize / 2.0, kMarkSize, kMarkSize);
        paintMark(*painter, box, static_cast<models::Mark>(mark.toInt()), look_);
        inner.setLeft(inner.left() + kMarkSize + kPadding);
    }
    const bool barWord = barred && index.column() == row_.barWordColumn;
    painter->setFont(face(column.pixels, column.bold || barWord));
    painter->setPen(look_.of(barWord ? row_.bar : column.ink));
    const QString words =
        painter->fontMetrics().elidedText(index.data().toString(), Qt::ElideRight, inner.width());
    painter->drawText(inner, Qt::AlignVCenter | Qt::AlignLeft, words);
    painter->restore();
}

QSize RowDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const {
    const ColumnLook& column = row_.columns[static_cast<std::size_t>(index.column())];
    const int words =
        QFontMetrics{face(column.pixels, column.bold)}.horizontalAdvance(index.data().toString());
    const int mark = index.data(kMarkRole).isValid() ? kMarkSize + kPadding : 0;
    return {words + mark + 2 * kPadding + kStep, row_.height};
}

}  // namespace desktop
