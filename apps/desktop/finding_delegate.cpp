#include "apps/desktop/finding_delegate.h"

#include <QListView>
#include <QPainter>

#include "apps/desktop/marks.h"
#include "apps/desktop/models/findings_model.h"
#include "apps/desktop/row_delegate.h"

namespace desktop {
namespace {

using domain::Colour;
using models::FindingsModel;

constexpr int kPadding = 2 * kStep;
constexpr int kFlagWidth = 36;
constexpr int kHeadHeight = 24;
constexpr int kMarkSize = 16;

QString cell(const QModelIndex& index, int column) {
    return index.siblingAtColumn(column).data().toString();
}

QString headOf(const QModelIndex& index) {
    const QString tooth = cell(index, FindingsModel::Tooth);
    const QString severity = cell(index, FindingsModel::Severity);
    return tooth.isEmpty() ? severity : QStringLiteral("%1, tooth %2").arg(severity, tooth);
}

QString foundOf(const QModelIndex& index) {
    return QStringLiteral("Found: %1").arg(cell(index, FindingsModel::Found));
}

QString askOf(const QModelIndex& index) {
    return QStringLiteral("To ask: %1").arg(cell(index, FindingsModel::Question));
}

/// The paragraphs of a card below its head, each with its height at a given width.
struct Paragraph {
    QString words;
    QFont font;
    Colour ink;
    int height;
};

std::vector<Paragraph> paragraphsOf(const QModelIndex& index, int width, bool whole) {
    std::vector<Paragraph> list;
    const auto add = [&](const QString& words, int pixels, Colour ink) {
        const QFont font = face(pixels);
        const int height = QFontMetrics{font}
                               .boundingRect(QRect{0, 0, width, 10'000}, Qt::TextWordWrap, words)
                               .height();
        list.push_back({words, font, ink, height + 2});
    };
    add(foundOf(index), kPlainText, Colour::Ink);
    add(askOf(index), kPlainText, Colour::Ink);
    if (whole) {
        add(cell(index, FindingsModel::Requirement), kSmallText, Colour::Quiet);
        add(QStringLiteral("Source: %1").arg(cell(index, FindingsModel::Source)), kSmallText,
            Colour::Quiet);
    }
    return list;
}

/// The same with and without a scroll bar, so that no card changes its height when one comes.
int widthOf(const QStyleOptionViewItem& option) {
    constexpr int kScrollBar = 3 * kStep;
    const int list = option.widget == nullptr ? option.rect.width() : option.widget->width();
    return list - kScrollBar - kFlagWidth - 2 * kPadding;
}

bool isChosen(const QStyleOptionViewItem& option, const QModelIndex& index) {
    const auto* list = qobject_cast<const QListView*>(option.widget);
    return list != nullptr && list->currentIndex() == index;
}

}  // namespace

void FindingDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                            const QModelIndex& index) const {
    const bool chosen = isChosen(option, index);
    const auto mark = static_cast<models::Mark>(index.data(FindingsModel::MarkRole).toInt());
    painter->save();
    painter->fillRect(option.rect, look_.of(chosen ? Colour::Ground : Colour::Sheet));
    paintRowEdge(*painter, option, look_);
    int top = option.rect.top() + kPadding;
    const int left = option.rect.left() + kPadding;
    const QRectF flag(left, top, 24, 24);
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setPen(QPen{look_.of(colourOf(mark)), 1.5});
    painter->setBrush(look_.of(Colour::Sheet));
    painter->drawEllipse(flag.adjusted(1, 1, -1, -1));
    painter->setFont(face(kSmallText, true));
    painter->drawText(flag, Qt::AlignCenter, cell(index, FindingsModel::Number));
    const int wordsLeft = left + kFlagWidth;
    const int width = widthOf(option);
    paintMark(*painter, QRectF(wordsLeft, top + 3, kMarkSize, kMarkSize), mark, look_);
    const QRect head{wordsLeft + kMarkSize + kPadding, top, width - kMarkSize - kPadding,
                     kHeadHeight - 2};
    painter->setPen(look_.of(colourOf(mark)));
    painter->setFont(face(kPlainText, true));
    painter->drawText(head, Qt::AlignVCenter | Qt::AlignLeft, headOf(index));
    painter->setPen(look_.of(Colour::Quiet));
    painter->setFont(face(kSmallText));
    painter->drawText(head, Qt::AlignVCenter | Qt::AlignRight, cell(index, FindingsModel::Rule));
    top += kHeadHeight;
    for (const Paragraph& paragraph : paragraphsOf(index, width, chosen)) {
        painter->setFont(paragraph.font);
        painter->setPen(look_.of(paragraph.ink));
        painter->drawText(QRect{wordsLeft, top, width, paragraph.height}, Qt::TextWordWrap,
                          paragraph.words);
        top += paragraph.height;
    }
    painter->restore();
}

QSize FindingDelegate::sizeHint(const QStyleOptionViewItem& option,
                                const QModelIndex& index) const {
    const int width = widthOf(option);
    int height = 2 * kPadding + kHeadHeight;
    for (const Paragraph& paragraph : paragraphsOf(index, width, isChosen(option, index)))
        height += paragraph.height;
    return {width + kFlagWidth + 2 * kPadding, height};
}

}  // namespace desktop
