/// Which orders took of a lot, for whom, and whether it is in what they got.
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "apps/actions/lots.h"

namespace models {

class TraceModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Order, Patient, Prescriber, Amount, State, ColumnCount };
    enum Role {
        MarkRole = Qt::UserRole,  ///< int of a Mark, in the column State
    };

    using QAbstractTableModel::QAbstractTableModel;

    void show(std::vector<actions::LotTrace> traces);
    const domain::OrderNumber& order(int row) const {
        return rows_[static_cast<std::size_t>(row)].device.order;
    }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    struct Row {
        domain::LotKind kind{};
        actions::TracedDevice device;
    };
    std::vector<Row> rows_;
};

}  // namespace models
