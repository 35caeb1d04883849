/// Paints a finding as a card: its flag, severity and tooth, what must hold, and what was found.
#pragma once

#include <QStyledItemDelegate>

#include "apps/desktop/look.h"

namespace desktop {

class FindingDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    FindingDelegate(const Look& look, QObject* parent) : QStyledItemDelegate{parent}, look_{look} {}

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    const Look& look_;
};

}  // namespace desktop
