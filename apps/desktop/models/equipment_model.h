/// The equipment with the day its calibration holds until.
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "apps/desktop/models/mark.h"
#include "domain/workshop/workshop.h"

namespace models {

/// "overdue 12 d", "holds 30 d", "needs none", each with its mark.
Marked markOf(const domain::Equipment& equipment, domain::Date today);

class EquipmentModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Code, Kind, Serial, Due, State, ColumnCount };
    enum Role {
        MarkRole = Qt::UserRole,  ///< int of a Mark, in the column State
        BarRole,                  ///< whether its calibration is overdue
    };

    using QAbstractTableModel::QAbstractTableModel;

    void show(const domain::Workshop& workshop, domain::Date today);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    std::vector<std::pair<domain::ThingCode, domain::Equipment>> equipment_;
    domain::Date today_{domain::Date::ofDays(0)};
};

}  // namespace models
