/// What happened to an order, one line an event, the newest first.
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "apps/actions/order_view.h"
#include "apps/actions/orders.h"

namespace models {

class HistoryModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { When, Person, Says, Words, ColumnCount };

    using QAbstractTableModel::QAbstractTableModel;

    /// Takes the history as it is recorded, the oldest first.
    void show(std::vector<actions::HistoryLine> history);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    std::vector<actions::HistoryLine> history_;
};

}  // namespace models
