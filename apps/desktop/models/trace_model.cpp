#include "apps/desktop/models/trace_model.h"

#include "apps/desktop/models/mark.h"
#include "apps/desktop/models/words.h"

namespace models {
namespace {

/// "in it, delivered 2026-11-20"; "not in it: that attempt was done again".
QString stateOf(const actions::TracedDevice& device) {
    if (!device.isInDevice) return QStringLiteral("not in it: done again since");
    return device.delivered
               ? QStringLiteral("in it, delivered %1").arg(text(device.delivered->text()))
               : QStringLiteral("in it, %1").arg(spoken(device.status));
}

}  // namespace

void TraceModel::show(std::vector<actions::LotTrace> traces) {
    beginResetModel();
    rows_.clear();
    for (actions::LotTrace& trace : traces)
        for (actions::TracedDevice& device : trace.devices)
            rows_.push_back({trace.kept.lot.kind, std::move(device)});
    endResetModel();
}

int TraceModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int TraceModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : ColumnCount;
}

QVariant TraceModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const auto& [kind, device] = rows_[static_cast<std::size_t>(index.row())];
    if (role == MarkRole && index.column() == State)
        return static_cast<int>(!device.isInDevice ? Mark::ToDo
                                : device.delivered ? Mark::Done
                                                   : Mark::InHand);
    if (role != Qt::DisplayRole && role != Qt::ToolTipRole) return {};
    switch (static_cast<Column>(index.column())) {
        case Order:
            return text(device.order.text());
        case Patient:
            return text(device.patient);
        case Prescriber:
            return text(device.prescriber);
        case Amount:
            return text(amountText(kind, device.amount));
        case State:
            return stateOf(device);
        case ColumnCount:
            break;
    }
    return {};
}

QVariant TraceModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    static constexpr std::array<const char*, ColumnCount> kHeads{"Order", "Patient", "Prescriber",
                                                                 "Took", "Whether it is in it"};
    return QString::fromLatin1(kHeads[static_cast<std::size_t>(section)]);
}

}  // namespace models
