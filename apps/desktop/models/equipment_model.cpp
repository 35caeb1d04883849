#include "apps/desktop/models/equipment_model.h"

#include "apps/desktop/models/words.h"

namespace models {

Marked markOf(const domain::Equipment& equipment, domain::Date today) {
    if (!equipment.calibrationDue) return {Mark::Done, QStringLiteral("needs none")};
    const std::int64_t days = equipment.calibrationDue->days() - today.days();
    if (days < 0) return {Mark::Refused, QStringLiteral("overdue %1 d").arg(-days)};
    return {Mark::Done, QStringLiteral("holds %1 d").arg(days)};
}

void EquipmentModel::show(const domain::Workshop& workshop, domain::Date today) {
    beginResetModel();
    equipment_.assign(workshop.equipment.begin(), workshop.equipment.end());
    today_ = today;
    endResetModel();
}

int EquipmentModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(equipment_.size());
}

int EquipmentModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : ColumnCount;
}

QVariant EquipmentModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const auto& [code, thing] = equipment_[static_cast<std::size_t>(index.row())];
    const Marked marked = markOf(thing, today_);
    if (role == MarkRole && index.column() == State) return static_cast<int>(marked.mark);
    if (role == BarRole) return marked.mark == Mark::Refused;
    if (role != Qt::DisplayRole) return {};
    switch (static_cast<Column>(index.column())) {
        case Code:
            return text(code.text());
        case Kind:
            return spoken(thing.kind);
        case Serial:
            return text(thing.serial);
        case Due:
            return thing.calibrationDue ? text(thing.calibrationDue->text()) : QString{};
        case State:
            return marked.word;
        case ColumnCount:
            break;
    }
    return {};
}

QVariant EquipmentModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    static constexpr std::array<const char*, ColumnCount> kHeads{"Code", "Kind", "Serial",
                                                                 "Valid until", "Calibration"};
    return QString::fromLatin1(kHeads[static_cast<std::size_t>(section)]);
}

}  // namespace models
