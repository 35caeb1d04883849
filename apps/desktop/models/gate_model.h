/// What the gate of a stage still lacks, and what to do about it.
#pragma once

#include <QAbstractTableModel>
#include <QStringList>
#include <string>
#include <vector>

#include "apps/desktop/models/mark.h"
#include "domain/rules/finding.h"
#include "domain/teeth/numbering.h"

namespace models {

class GateModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Lacks, ToDo, ColumnCount };
    enum Role {
        MarkRole = Qt::UserRole,  ///< int of a Mark, in the column Lacks
    };

    using QAbstractTableModel::QAbstractTableModel;

    /// The same of several teeth is one row. The lines of the checklist stand where they are
    /// ticked, so here they are only counted.
    void show(const std::vector<domain::Finding>& lacking, domain::Notation notation);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    struct Row {
        std::string rule;
        Mark mark{};
        QString lacks;  ///< empty: lines of the checklist
        QString toDo;
        QString why;  ///< the requirement and its source
        QStringList teeth{};
        int count{0};

        QString words() const;
    };
    static Row rowOf(const domain::Finding& finding, const QString& lacks);

    std::vector<Row> rows_;
};

}  // namespace models
