/// Paints the rows of a table: hairlines, the mark before its word, a bar at the left edge.
#pragma once

#include <QStyledItemDelegate>
#include <vector>

#include "apps/desktop/look.h"

namespace desktop {

/// How one column is written.
struct ColumnLook {
    int pixels{kPlainText};
    bool bold{false};
    domain::Colour ink{domain::Colour::Ink};
};

struct RowLook {
    int height{kTouch};
    std::vector<ColumnLook> columns;
    /// A role of bool: a bar stands at the left edge where it holds.
    int barRole{};
    domain::Colour bar{domain::Colour::Stop};
    /// The column that says in words what the bar says, in the colour of the bar; -1 for none.
    int barWordColumn{-1};
};

/// The hairline below a row; above and below the chosen one a line in ink, thicker where the keys
/// go.
void paintRowEdge(QPainter& painter, const QStyleOptionViewItem& option, const Look& look);

/// The role under which every model of ours tells the mark of a cell.
inline constexpr int kMarkRole = Qt::UserRole;

class RowDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    RowDelegate(const Look& look, RowLook row, QObject* parent)
        : QStyledItemDelegate{parent}, look_{look}, row_{std::move(row)} {}

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    const Look& look_;
    RowLook row_;
};

}  // namespace desktop
