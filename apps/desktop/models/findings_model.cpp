#include "apps/desktop/models/findings_model.h"

#include <algorithm>

#include "apps/desktop/models/mark.h"
#include "apps/desktop/models/words.h"

namespace models {

void FindingsModel::show(std::vector<domain::Finding> findings, domain::Notation notation,
                         Taken taken) {
    beginResetModel();
    findings_ = std::move(findings);
    notation_ = notation;
    taken_ = std::move(taken);
    endResetModel();
}

int FindingsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(findings_.size());
}

int FindingsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : ColumnCount;
}

/// "caution, taken by RZ": whoever takes a caution is named wherever it is shown.
QString FindingsModel::severityOf(const domain::Finding& finding) const {
    const QString word = markOf(finding.severity).word;
    const bool taken = finding.severity == domain::Severity::Caution && taken_.by &&
                       std::ranges::count(taken_.rules, finding.rule) != 0;
    return taken ? QStringLiteral("%1, taken by %2").arg(word, text(taken_.by->text())) : word;
}

QString FindingsModel::shown(int row, Column column) const {
    const domain::Finding& finding = findings_[static_cast<std::size_t>(row)];
    switch (column) {
        case Number:
            return QString::number(row + 1);
        case Severity:
            return severityOf(finding);
        case Tooth:
            return finding.tooth ? text(nameOf(*finding.tooth, notation_)) : QString{};
        case Found:
            return text(finding.found);
        case Requirement:
            return text(finding.requirement);
        case Question:
            return text(finding.question);
        case Rule:
            return text(finding.rule);
        case Source:
            return text(finding.source);
        case ColumnCount:
            break;
    }
    return {};
}

QVariant FindingsModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    if (role == Qt::DisplayRole) return shown(index.row(), static_cast<Column>(index.column()));
    if (role == MarkRole)
        return static_cast<int>(
            markOf(findings_[static_cast<std::size_t>(index.row())].severity).mark);
    if (role == Qt::AccessibleTextRole)
        return QStringLiteral("%1, %2, %3, to ask: %4")
            .arg(shown(index.row(), Number), shown(index.row(), Severity),
                 shown(index.row(), Found), shown(index.row(), Question));
    return {};
}

QVariant FindingsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    switch (static_cast<Column>(section)) {
        case Number:
            return QStringLiteral("Flag");
        case Severity:
            return QStringLiteral("Severity");
        case Tooth:
            return QStringLiteral("Tooth");
        case Found:
            return QStringLiteral("Found");
        case Requirement:
            return QStringLiteral("Must hold");
        case Question:
            return QStringLiteral("To ask");
        case Rule:
            return QStringLiteral("Rule");
        case Source:
            return QStringLiteral("Source");
        case ColumnCount:
            break;
    }
    return {};
}

}  // namespace models
