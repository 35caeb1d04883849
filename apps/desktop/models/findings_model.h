/// The findings of a prescription as a table, numbered as the flags on its picture.
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "domain/base/id.h"
#include "domain/rules/finding.h"
#include "domain/teeth/numbering.h"

namespace models {

/// The cautions somebody took responsibility for.
struct Taken {
    std::vector<std::string> rules{};
    std::optional<domain::PersonCode> by{};
};

class FindingsModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column {
        Number,
        Severity,
        Tooth,
        Found,
        Requirement,
        Question,
        Rule,
        Source,
        ColumnCount
    };
    enum Role {
        MarkRole = Qt::UserRole,  ///< int of a Mark
    };

    using QAbstractTableModel::QAbstractTableModel;

    /// Shows these findings, their teeth written in `notation`.
    void show(std::vector<domain::Finding> findings, domain::Notation notation, Taken taken = {});

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    QString severityOf(const domain::Finding& finding) const;
    QString shown(int row, Column column) const;

    std::vector<domain::Finding> findings_;
    domain::Notation notation_{};
    Taken taken_;
};

}  // namespace models
