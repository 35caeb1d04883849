/// The floor as a table: every order, what it is, where it stands, and who waits for whom.
#pragma once

#include <QAbstractTableModel>
#include <QSortFilterProxyModel>
#include <vector>

#include "apps/actions/order_view.h"
#include "apps/actions/orders.h"

namespace models {

class FloorModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column {
        Number,
        Description,
        State,
        Due,
        Late,
        Waits,
        Since,
        Patient,
        Prescriber,
        ColumnCount
    };
    enum Role {
        MarkRole = Qt::UserRole,  ///< int of a Mark, in the column State
        LateRole,                 ///< whether the due day has passed and the order is not over
        SearchRole,               ///< everything a search looks at, folded
    };

    using QAbstractTableModel::QAbstractTableModel;

    /// Shows these orders, with their times told from `now`.
    void show(std::vector<actions::FloorLine> lines, domain::Instant now);

    /// The order of a row of this model.
    const actions::FloorLine& line(int row) const { return lines_[static_cast<std::size_t>(row)]; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    QString shown(const actions::FloorLine& line, Column column) const;
    bool isLate(const actions::FloorLine& line) const;

    std::vector<actions::FloorLine> lines_;
    domain::Instant now_;
};

/// Keeps the orders that have every word of the search in them, whatever the case and the accents.
class FloorSearch : public QSortFilterProxyModel {
    Q_OBJECT

public:
    using QSortFilterProxyModel::QSortFilterProxyModel;

    void search(const QString& words);

protected:
    bool filterAcceptsRow(int row, const QModelIndex& parent) const override;

private:
    QStringList words_;
};

}  // namespace models
