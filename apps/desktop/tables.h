/// A table of rows in the look of the house.
#pragma once

#include "apps/desktop/row_delegate.h"

class QAbstractItemModel;
class QTableView;

namespace desktop {

/// A role no model answers: no bar at the left edge.
inline constexpr int kNoBar = -1;

/// Rows of the look's height, chosen one at a time, with no grid and nothing to edit.
QTableView* makeTable(QAbstractItemModel& model, const Look& look, RowLook row,
                      const QString& name);

}  // namespace desktop
