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
    const auto unticked = std::ranges::count(lacking, kChecklistRule, &domain::Finding::rule);
    for (const domain::Finding& finding : lacking) {
        const bool isTick = finding.rule == kChecklistRule;
        if (isTick &&
            &finding != &*std::ranges::find(lacking, kChecklistRule, &domain::Finding::rule))
            continue;
        QString lacks = isTick ? QStringLiteral("%1 of the checklist not ticked").arg(unticked)
                               : text(finding.found);
        if (finding.tooth)
            lacks = QStringLiteral("%1: %2").arg(text(nameOf(*finding.tooth, notation)), lacks);
        rows_.push_back(
            {.mark = markOf(finding.severity).mark == Mark::Refused ? Mark::Refused : Mark::ToDo,
             .lacks = lacks,
             .toDo = text(finding.question),
             .why = QStringLiteral("%1 %2\n%3")
                        .arg(text(finding.requirement), text(finding.question),
                             text(finding.source))});
    }
    endResetModel();
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
    return index.column() == Lacks ? row.lacks : row.toDo;
}

QVariant GateModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    return section == Lacks ? QStringLiteral("Still lacking") : QStringLiteral("What to do");
}

}  // namespace models
