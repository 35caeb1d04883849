#include "apps/desktop/stock_room.h"

#include <QLabel>
#include <QTableView>
#include <QVBoxLayout>
#include <algorithm>

#include "apps/actions/workshop.h"
#include "apps/desktop/models/words.h"
#include "apps/desktop/tables.h"

namespace desktop {
namespace {

using domain::Colour;
using domain::Permission;
using models::EquipmentModel;
using models::LotsModel;
using models::Mark;
using models::TraceModel;

constexpr int kMargin = 4 * kStep;

RowLook lotsLook() {
    std::vector<ColumnLook> columns(LotsModel::ColumnCount);
    columns[LotsModel::Lot].bold = true;
    columns[LotsModel::MakersNumber].ink = Colour::Quiet;
    return {.height = kTouch,
            .columns = std::move(columns),
            .barRole = LotsModel::BarRole,
            .barWordColumn = LotsModel::State};
}

RowLook equipmentLook() {
    std::vector<ColumnLook> columns(EquipmentModel::ColumnCount);
    columns[EquipmentModel::Code].bold = true;
    columns[EquipmentModel::Serial].ink = Colour::Quiet;
    return {.height = kTouch,
            .columns = std::move(columns),
            .barRole = EquipmentModel::BarRole,
            .barWordColumn = EquipmentModel::State};
}

RowLook traceLook() {
    std::vector<ColumnLook> columns(TraceModel::ColumnCount);
    columns[TraceModel::Order].bold = true;
    columns[TraceModel::Prescriber].ink = Colour::Quiet;
    return {.height = kTouch, .columns = std::move(columns), .barRole = kNoBar};
}

QLabel* makeHead(const QString& words) {
    auto* head = new QLabel{words};
    head->setFont(face(kLargeText, true));
    return head;
}

}  // namespace

StockRoom::StockRoom(Desk& desk)
    : Room{desk},
      lotsTable_{makeTable(lots_, look(), lotsLook(), tr("Lots of material"))},
      traceTable_{makeTable(traced_, look(), traceLook(), tr("Orders that took of the lot"))},
      equipmentTable_{makeTable(equipment_, look(), equipmentLook(), tr("Equipment"))},
      lotsHead_{makeHead(tr("Lots"))},
      traceHead_{makeHead({})},
      equipmentHead_{makeHead(tr("Equipment"))},
      notice_{new Notice{look()}},
      receive_{new ActionButton{tr("Receive a lot"), Qt::Key_F5, look()}},
      hold_{new ActionButton{tr("Hold"), Qt::Key_F6, look()}},
      release_{new ActionButton{tr("Release"), Qt::Key_F7, look()}},
      trace_{new ActionButton{tr("Trace"), Qt::Key_F8, look()}},
      open_{new ActionButton{tr("Open the order"), Qt::Key_F9, look()}} {
    auto* sheet = new QHBoxLayout{this};
    sheet->setContentsMargins(kMargin, kStep, kMargin, kMargin);
    sheet->setSpacing(kMargin);
    sheet->addWidget(makeLots(), 3);
    sheet->addWidget(makeRight(), 2);
    connect(receive_, &ActionButton::clicked, this, &StockRoom::receive);
    connect(hold_, &ActionButton::clicked, this, &StockRoom::hold);
    connect(release_, &ActionButton::clicked, this, &StockRoom::release);
    connect(trace_, &ActionButton::clicked, this, &StockRoom::trace);
    connect(open_, &ActionButton::clicked, this, &StockRoom::openTraced);
    connect(traceTable_, &QTableView::activated, this, &StockRoom::openTraced);
    connect(lotsTable_->selectionModel(), &QItemSelectionModel::currentRowChanged, this, [this] {
        traced_.show({});
        traceHead_->clear();
        offerWhatMayBeDone();
    });
}

QWidget* StockRoom::makeLots() {
    constexpr std::pair<LotsModel::Column, int> kWidths[] = {
        {LotsModel::Lot, 84},          {LotsModel::Kind, 110},  {LotsModel::Product, 112},
        {LotsModel::MakersNumber, 92}, {LotsModel::State, 152}, {LotsModel::Left, 76}};
    for (const auto& [column, width] : kWidths) lotsTable_->setColumnWidth(column, width);
    auto* actions = new QHBoxLayout;
    actions->setSpacing(2 * kStep);
    for (ActionButton* each : {receive_, hold_, release_, trace_}) actions->addWidget(each);
    actions->addStretch(1);
    auto* left = new QWidget;
    auto* column = new QVBoxLayout{left};
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2 * kStep);
    column->addWidget(lotsHead_);
    column->addWidget(lotsTable_, 1);
    column->addWidget(notice_);
    column->addLayout(actions);
    return left;
}

QWidget* StockRoom::makeRight() {
    constexpr std::pair<EquipmentModel::Column, int> kWidths[] = {{EquipmentModel::Code, 72},
                                                                  {EquipmentModel::Kind, 98},
                                                                  {EquipmentModel::Serial, 66},
                                                                  {EquipmentModel::Due, 104}};
    for (const auto& [column, width] : kWidths) equipmentTable_->setColumnWidth(column, width);
    constexpr std::pair<TraceModel::Column, int> kTraceWidths[] = {{TraceModel::Order, 88},
                                                                   {TraceModel::Patient, 72},
                                                                   {TraceModel::Prescriber, 96},
                                                                   {TraceModel::Amount, 64}};
    for (const auto& [column, width] : kTraceWidths) traceTable_->setColumnWidth(column, width);
    auto* right = new QWidget;
    auto* column = new QVBoxLayout{right};
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2 * kStep);
    column->addWidget(equipmentHead_);
    column->addWidget(equipmentTable_, 1);
    column->addWidget(traceHead_);
    column->addWidget(traceTable_, 1);
    column->addWidget(open_, 0, Qt::AlignLeft);
    return right;
}

QString StockRoom::where() const { return tr("Stock"); }

void StockRoom::enter() {
    lookUp();
    lotsTable_->setFocus();
}

void StockRoom::whoChanged() {
    traced_.show({});
    traceHead_->clear();
    lookUp();
}

const actions::LotLine* StockRoom::chosen() const {
    const QModelIndex row = lotsTable_->currentIndex();
    return row.isValid() ? &lots_.line(row.row()) : nullptr;
}

void StockRoom::choose(const domain::ThingCode& code) {
    for (int row = 0; row < lots_.rowCount(); ++row)
        if (lots_.line(row).code == code) lotsTable_->selectRow(row);
}

void StockRoom::lookUp() {
    auto lots = actions::lots(desk().laboratory);
    if (!lots) return notice_->refuse(lots.error());
    auto workshop = actions::workshop(desk().laboratory);
    if (!workshop) return notice_->refuse(workshop.error());
    workshop_ = *std::move(workshop);
    const auto before = chosen() == nullptr ? std::optional<domain::ThingCode>{} : chosen()->code;
    const domain::Date today = desk().laboratory.today();
    lots_.show(*std::move(lots), today);
    equipment_.show(workshop_, today);
    if (before) choose(*before);
    if (chosen() == nullptr && lots_.rowCount() > 0) lotsTable_->selectRow(0);
    const auto overdue = std::ranges::count_if(workshop_.equipment, [&](const auto& each) {
        return each.second.calibrationDue && *each.second.calibrationDue < today;
    });
    equipmentHead_->setText(overdue == 0 ? tr("Equipment")
                                         : tr("Equipment, %1 overdue").arg(overdue));
    lotsHead_->setText(lots_.rowCount() == 0 ? tr("No lot yet. Receive the first one.")
                                             : tr("Lots"));
    offerWhatMayBeDone();
}

bool StockRoom::may(Permission permission) const {
    const auto* person = desk().who ? workshop_.worker(desk().who->person) : nullptr;
    return person != nullptr && domain::may(person->role, permission);
}

void StockRoom::offerWhatMayBeDone() {
    const actions::LotLine* lot = chosen();
    const bool keeps = may(Permission::KeepLots);
    const std::pair<ActionButton*, bool> offers[] = {
        {receive_, keeps},
        {hold_, keeps && lot != nullptr && !lot->kept.held},
        {release_, keeps && lot != nullptr && lot->kept.held},
        {trace_, may(Permission::TraceLots) && lot != nullptr},
        {open_, traced_.rowCount() > 0}};
    for (const auto& [button, isOffered] : offers) {
        button->setEnabled(isOffered);
        button->setNext(false);
    }
    const QString keepers = tr("for: %1").arg(models::text(rolesThatMay(Permission::KeepLots)));
    for (ActionButton* each : {receive_, hold_, release_})
        each->setToolTip(keeps ? QString{} : keepers);
    traceTable_->setVisible(traced_.rowCount() > 0);
    open_->setVisible(traced_.rowCount() > 0);
    (lot == nullptr ? receive_ : trace_)->setNext(true);
}

void StockRoom::took(const domain::Result<actions::Kept>& kept, const QString& done) {
    lookUp();
    if (!kept) return notice_->refuse(kept.error());
    notice_->say(Mark::Done, done);
}

void StockRoom::receive() {
    const auto given = desk().dialogs.lot();
    if (!given) return;
    const auto kept = actions::receiveLot(desk().laboratory, given->code, given->lot, who());
    took(kept, tr("%1 received.").arg(models::text(given->code.text())));
    if (kept) choose(given->code);
}

void StockRoom::hold() {
    const domain::ThingCode code = chosen()->code;
    const auto why = desk().dialogs.why("Put lot " + code.text() + " into quarantine");
    if (why)
        took(actions::holdLot(desk().laboratory, code, *why, who()),
             tr("%1 is in quarantine.").arg(models::text(code.text())));
}

void StockRoom::release() {
    const domain::ThingCode code = chosen()->code;
    const auto why = desk().dialogs.why("Release lot " + code.text() + " from quarantine");
    if (why)
        took(actions::releaseLot(desk().laboratory, code, *why, who()),
             tr("%1 may be used again.").arg(models::text(code.text())));
}

void StockRoom::trace() {
    const std::string code = chosen()->code.text();
    auto traces = actions::traceLot(desk().laboratory, code, who());
    if (!traces) return notice_->refuse(traces.error());
    notice_->beQuiet();
    traced_.show(*std::move(traces));
    traceHead_->setText(traced_.rowCount() == 0
                            ? tr("No order took of %1.").arg(models::text(code))
                            : tr("Orders that took of %1").arg(models::text(code)));
    offerWhatMayBeDone();
    if (traced_.rowCount() > 0) traceTable_->selectRow(0);
}

void StockRoom::openTraced() {
    const QModelIndex row = traceTable_->currentIndex();
    if (row.isValid()) emit orderWanted(traced_.order(row.row()));
}

}  // namespace desktop
