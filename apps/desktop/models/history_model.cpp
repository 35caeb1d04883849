#include "apps/desktop/models/history_model.h"

#include "apps/desktop/models/words.h"

namespace models {

void HistoryModel::show(std::vector<actions::HistoryLine> history) {
    beginResetModel();
    history_ = std::move(history);
    endResetModel();
}

int HistoryModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(history_.size());
}

int HistoryModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : ColumnCount;
}

QVariant HistoryModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    if (role != Qt::DisplayRole && role != Qt::ToolTipRole) return {};
    const actions::HistoryLine& line =
        history_[history_.size() - 1 - static_cast<std::size_t>(index.row())];
    switch (static_cast<Column>(index.column())) {
        case When:
            return text(line.event.at.text());
        case Person:
            return text(line.event.person.text());
        case Says:
            return text(line.says);
        case Words:
            return text(line.words);
        case ColumnCount:
            break;
    }
    return {};
}

QVariant HistoryModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    switch (static_cast<Column>(section)) {
        case When:
            return QStringLiteral("When");
        case Person:
            return QStringLiteral("Who");
        case Says:
            return QStringLiteral("What happened");
        case Words:
            return QStringLiteral("In their words");
        case ColumnCount:
            break;
    }
    return {};
}

}  // namespace models
