/// What is asked about a prescription as a table: questions flagged at the bench, then the findings
/// of the rules, numbered as on the question sheet and as the flags on its picture.
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "apps/desktop/models/mark.h"
#include "domain/teeth/numbering.h"

namespace models {

/// A question that stopped the work at the bench.
struct AskedAtBench {
    domain::OpenFlag flag;
    std::string note{};
};

/// Everything that is asked or to be known about one prescription.
struct Asked {
    std::vector<AskedAtBench> atBench{};
    std::vector<domain::Finding> findings{};  ///< as inOrderOfAsking() gives them
    domain::Notation notation{};              ///< that their teeth are written in
    std::vector<std::string> cautionsTaken{};
    std::optional<domain::PersonCode> takenBy{};

    /// The number of the first finding: those of the bench come first.
    int firstFinding() const { return static_cast<int>(atBench.size()) + 1; }
};

/// What must be answered before what must be known; otherwise in the order of the rules.
std::vector<domain::Finding> inOrderOfAsking(std::vector<domain::Finding> findings);

/// "2 questions, 1 caution", or that there is nothing to ask.
QString summaryOf(const Asked& asked);

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

    void show(const Asked& asked);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    struct Row {
        Mark mark{};
        std::array<QString, ColumnCount> cells;
    };
    static Row rowOf(const AskedAtBench& asked);
    static Row rowOf(const domain::Finding& finding, const Asked& asked);
    void append(Row row);

    std::vector<Row> rows_;
};

}  // namespace models
