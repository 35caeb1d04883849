#include "apps/desktop/models/gate_model.h"

#include <algorithm>

#include "apps/desktop/models/words.h"

namespace models {
namespace {

constexpr std::string_view kChecklistRule = "gate.checklist";

}  // namespace

void GateModel::show(const std::vector<domain::Finding>& lacking, domain::Notation notation) {
    beginResetModel();
    rows_.clear();
    for (const domain::Finding& finding : lacking) {
        const bool isTick = finding.rule == kChecklistRule;
        const QString lacks = isTick ? QString{} : text(finding.found);
        auto row = std::ranges::find_if(rows_, [&](const Row& each) {
            return each.rule == finding.rule && each.lacks == lacks;
        });
        if (row == rows_.end()) row = rows_.insert(rows_.end(), rowOf(finding, lacks));
        ++row->count;
        if (finding.tooth) row->teeth += text(nameOf(*finding.tooth, notation));
    }
    endResetModel();
}

GateModel::Row GateModel::rowOf(const domain::Finding& finding, const QString& lacks) {
    const bool conflict = finding.severity == domain::Severity::Conflict;
    return {
        .rule = finding.rule,
        .mark = conflict ? Mark::Refused : Mark::ToDo,
        .lacks = lacks,
        .toDo = text(finding.question),
        .why = QStringLiteral("%1 %2\n%3")
                   .arg(text(finding.requirement), text(finding.question), text(finding.source))};
}

QString GateModel::Row::words() const {
    if (lacks.isEmpty()) return QStringLiteral("%1 of the checklist not ticked").arg(count);
    if (teeth.isEmpty()) return lacks;
    return QStringLiteral("%1: %2").arg(teeth.join(QStringLiteral(", ")), lacks);
}

int GateModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int GateModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : ColumnCount;
}

QVariant GateModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const Row& row = rows_[static_cast<std::size_t>(index.row())];
    if (role == MarkRole && index.column() == Lacks) return static_cast<int>(row.mark);
    if (role == Qt::ToolTipRole) return row.why;
    if (role != Qt::DisplayRole) return {};
    return index.column() == Lacks ? row.words() : row.toDo;
}

QVariant GateModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    return section == Lacks ? QStringLiteral("Still lacking") : QStringLiteral("What to do");
}

}  // namespace models
