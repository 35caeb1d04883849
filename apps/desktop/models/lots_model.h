/// The lots of material: what they are, whether they may be used, how much is left, and until when.
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "apps/actions/lots.h"
#include "apps/desktop/models/mark.h"

namespace models {

/// "in use", "in quarantine", "expired", "used up", each with its mark.
Marked markOf(const domain::KeptLot& kept, domain::Date today);

class LotsModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Lot, Kind, Product, MakersNumber, State, Left, Expiry, ColumnCount };
    enum Role {
        MarkRole = Qt::UserRole,  ///< int of a Mark, in the column State
        BarRole,                  ///< whether nobody may use it
    };

    using QAbstractTableModel::QAbstractTableModel;

    void show(std::vector<actions::LotLine> lots, domain::Date today);
    const actions::LotLine& line(int row) const { return lots_[static_cast<std::size_t>(row)]; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    QString shown(const actions::LotLine& lot, Column column) const;

    std::vector<actions::LotLine> lots_;
    domain::Date today_{domain::Date::ofDays(0)};
};

}  // namespace models
