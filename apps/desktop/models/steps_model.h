/// The stages of an order's route, each with how far it is.
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "domain/production/order.h"

namespace models {

class StepsModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Stage, State, Person, Since, ColumnCount };
    enum Role {
        MarkRole = Qt::UserRole,  ///< int of a Mark, in the column State
        DueRole,                  ///< whether this is the stage the order stands at
    };

    using QAbstractTableModel::QAbstractTableModel;

    void show(const domain::Order& order);

    /// The row of the stage the order stands at; -1 before acceptance and after delivery.
    int dueRow() const noexcept { return dueRow_; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    std::vector<domain::StageStep> steps_;
    int dueRow_{-1};
};

}  // namespace models
