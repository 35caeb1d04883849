/// The floor as a table: the open orders and those a search found, what each is, where it stands,
/// and who waits for whom.
#pragma once

#include <QAbstractTableModel>
#include <QSortFilterProxyModel>
#include <set>
#include <vector>

#include "apps/actions/floor.h"
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
        FoundRole,                ///< whether the search of the records found it
    };

    using QAbstractTableModel::QAbstractTableModel;

    /// Shows these orders, with their times told from `now`.
    void show(std::vector<actions::FloorLine> lines, domain::Instant now);
    /// Shows, below them, those that a search of the records found and that are not among them.
    void showFound(const std::vector<actions::FloorLine>& found);
    /// Tells the times from `now`.
    void goTo(domain::Instant now);

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
    std::size_t open_{0};  ///< so many of them were shown; the rest were found
    std::set<domain::OrderNumber> found_;
    domain::Instant now_;
};

/// Keeps the orders that have every word of the search in them, whatever the case and the accents,
/// and those the records found by it.
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
