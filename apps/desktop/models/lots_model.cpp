#include "apps/desktop/models/lots_model.h"

#include "apps/desktop/models/words.h"

namespace models {

Marked markOf(const domain::KeptLot& kept, domain::Date today) {
    if (kept.held) return {Mark::Refused, QStringLiteral("in quarantine")};
    if (kept.lot.expiry && *kept.lot.expiry < today)
        return {Mark::Refused, QStringLiteral("expired")};
    if (kept.left() <= 0) return {Mark::Done, QStringLiteral("used up")};
    return {Mark::InHand, QStringLiteral("in use")};
}

void LotsModel::show(std::vector<actions::LotLine> lots, domain::Date today) {
    beginResetModel();
    lots_ = std::move(lots);
    today_ = today;
    endResetModel();
}

int LotsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(lots_.size());
}

int LotsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : ColumnCount;
}

QString LotsModel::shown(const actions::LotLine& lot, Column column) const {
    switch (column) {
        case Lot:
            return text(lot.code.text());
        case Kind:
            return spoken(lot.kept.lot.kind);
        case Product:
            return text(lot.kept.lot.product);
        case MakersNumber:
            return text(lot.kept.lot.makersNumber);
        case State:
            return markOf(lot.kept, today_).word;
        case Left:
            return text(amountText(lot.kept.lot.kind, lot.kept.left()));
        case Expiry:
            return lot.kept.lot.expiry ? text(lot.kept.lot.expiry->text())
                                       : QStringLiteral("no day given");
        case ColumnCount:
            break;
    }
    return {};
}

QVariant LotsModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const actions::LotLine& lot = line(index.row());
    const auto column = static_cast<Column>(index.column());
    const Marked marked = markOf(lot.kept, today_);
    if (role == Qt::ToolTipRole && column == Product)
        return QStringLiteral("%1, %2").arg(shown(lot, Product), text(lot.kept.lot.maker));
    if (role == Qt::DisplayRole || role == Qt::ToolTipRole) return shown(lot, column);
    if (role == MarkRole && column == State) return static_cast<int>(marked.mark);
    if (role == BarRole) return marked.mark == Mark::Refused;
    return {};
}

QVariant LotsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    static constexpr std::array<const char*, ColumnCount> kHeads{
        "Lot", "Kind", "Product", "Maker's no.", "State", "Left", "Use until"};
    return QString::fromLatin1(kHeads[static_cast<std::size_t>(section)]);
}

}  // namespace models
