#include "apps/desktop/models/floor_model.h"

#include <algorithm>

#include "apps/desktop/models/mark.h"
#include "apps/desktop/models/words.h"

namespace models {
namespace {

bool isOpen(domain::OrderStatus status) {
    return status == domain::OrderStatus::Received || status == domain::OrderStatus::InWork;
}

/// "asked 3 d": since when they are waited for.
QString waited(const actions::FloorLine& line, domain::Instant now) {
    return waitedFor(line.waitsFor, markOf(line).mark, ago(line.waitingSince, now));
}

}  // namespace

void FloorModel::show(std::vector<actions::FloorLine> lines, domain::Instant now) {
    beginResetModel();
    lines_ = std::move(lines);
    open_ = lines_.size();
    found_.clear();
    now_ = now;
    endResetModel();
}

void FloorModel::showFound(const std::vector<actions::FloorLine>& found) {
    beginResetModel();
    lines_.erase(lines_.begin() + static_cast<std::ptrdiff_t>(open_), lines_.end());
    found_.clear();
    for (const actions::FloorLine& line : found) {
        found_.insert(line.number);
        if (std::ranges::find(lines_, line.number, &actions::FloorLine::number) == lines_.end())
            lines_.push_back(line);
    }
    endResetModel();
}

void FloorModel::goTo(domain::Instant now) {
    now_ = now;
    if (!lines_.empty()) emit dataChanged(index(0, 0), index(rowCount() - 1, ColumnCount - 1));
}

int FloorModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(lines_.size());
}

int FloorModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : ColumnCount;
}

bool FloorModel::isLate(const actions::FloorLine& line) const {
    return line.due && isOpen(line.status) && *line.due < now_.day();
}

QString FloorModel::shown(const actions::FloorLine& line, Column column) const {
    switch (column) {
        case Number:
            return text(line.number.text());
        case Description:
            return text(line.description);
        case State:
            return markOf(line).word;
        case Due:
            return line.due ? text(line.due->text()) : QStringLiteral("no day given");
        case Late:
            return line.due && isOpen(line.status) ? dueWords(*line.due, now_.day()) : QString{};
        case Waits:
            return line.waitsFor == domain::WaitsFor::Nobody ? QString{} : spoken(line.waitsFor);
        case Since:
            return waited(line, now_);
        case Patient:
            return text(line.patient);
        case Prescriber:
            return text(line.prescriber);
        case ColumnCount:
            break;
    }
    return {};
}

QVariant FloorModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const actions::FloorLine& order = line(index.row());
    const auto column = static_cast<Column>(index.column());
    if (role == Qt::DisplayRole || role == Qt::ToolTipRole) return shown(order, column);
    if (role == MarkRole && column == State) return static_cast<int>(markOf(order).mark);
    if (role == LateRole) return isLate(order);
    if (role == FoundRole) return found_.contains(order.number);
    if (role != SearchRole) return {};
    QStringList words{shown(order, Number), shown(order, Description), shown(order, State),
                      shown(order, Patient), shown(order, Prescriber)};
    if (order.stage) words += spoken(*order.stage);
    return folded(words.join(u'\n'));
}

QVariant FloorModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    switch (static_cast<Column>(section)) {
        case Number:
            return QStringLiteral("Order");
        case Description:
            return QStringLiteral("What it is");
        case State:
            return QStringLiteral("Where it stands");
        case Due:
            return QStringLiteral("Due");
        case Late:
            return QStringLiteral("From today");
        case Waits:
            return QStringLiteral("Waits for");
        case Since:
            return QStringLiteral("How long");
        case Patient:
            return QStringLiteral("Patient");
        case Prescriber:
            return QStringLiteral("Prescriber");
        case ColumnCount:
            break;
    }
    return {};
}

void FloorSearch::search(const QString& words) {
    words_ = folded(words).split(u' ', Qt::SkipEmptyParts);
    invalidateFilter();
}

bool FloorSearch::filterAcceptsRow(int row, const QModelIndex& parent) const {
    const QModelIndex order = sourceModel()->index(row, 0, parent);
    if (!words_.isEmpty() && order.data(FloorModel::FoundRole).toBool()) return true;
    const QString line = order.data(FloorModel::SearchRole).toString();
    return std::ranges::all_of(words_, [&](const QString& word) { return line.contains(word); });
}

}  // namespace models
