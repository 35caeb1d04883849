#include "apps/desktop/models/steps_model.h"

#include "apps/desktop/models/mark.h"
#include "apps/desktop/models/words.h"

namespace models {

void StepsModel::show(const domain::Order& order) {
    beginResetModel();
    steps_ = order.steps;
    const domain::StageStep* due = currentStep(order);
    dueRow_ = due == nullptr ? -1 : static_cast<int>(due - order.steps.data());
    endResetModel();
}

int StepsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(steps_.size());
}

int StepsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : ColumnCount;
}

QVariant StepsModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const domain::StageStep& step = steps_[static_cast<std::size_t>(index.row())];
    const Marked marked = markOf(step.stage, step.status);
    if (role == DueRole) return index.row() == dueRow_;
    if (role == Qt::ToolTipRole) return text(domain::rowOf(step.stage).work);
    if (role == MarkRole && index.column() == State) return static_cast<int>(marked.mark);
    if (role != Qt::DisplayRole) return {};
    switch (static_cast<Column>(index.column())) {
        case Stage:
            return spoken(step.stage);
        case State:
            return marked.word;
        case Person:
            return step.person ? text(step.person->text()) : QString{};
        case Since:
            return step.since ? text(step.since->text()) : QString{};
        case ColumnCount:
            break;
    }
    return {};
}

QVariant StepsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    switch (static_cast<Column>(section)) {
        case Stage:
            return QStringLiteral("Stage");
        case State:
            return QStringLiteral("How far");
        case Person:
            return QStringLiteral("Who");
        case Since:
            return QStringLiteral("Since");
        case ColumnCount:
            break;
    }
    return {};
}

}  // namespace models
