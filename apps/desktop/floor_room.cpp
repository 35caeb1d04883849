#include "apps/desktop/floor_room.h"

#include <QHeaderView>
#include <QLabel>
#include <QStackedWidget>
#include <QTableView>
#include <QTimer>
#include <QVBoxLayout>

#include "apps/actions/access.h"
#include "apps/desktop/row_delegate.h"

namespace desktop {
namespace {

using domain::Colour;
using models::FloorModel;

constexpr int kRowHeight = 48;
constexpr int kMargin = 4 * kStep;
constexpr int kLookAgainEvery = 30'000;  ///< ms; others work at the same records

RowLook rowLook() {
    std::vector<ColumnLook> columns(FloorModel::ColumnCount);
    columns[FloorModel::Number] = {.pixels = kLargeText, .bold = true};
    for (const auto column : {FloorModel::Since, FloorModel::Patient, FloorModel::Prescriber})
        columns[column].ink = Colour::Quiet;
    return {.height = kRowHeight,
            .columns = std::move(columns),
            .barRole = FloorModel::LateRole,
            .barWordColumn = FloorModel::Late};
}

}  // namespace

FloorRoom::FloorRoom(Desk& desk)
    : Room{desk},
      table_{new QTableView},
      count_{new QLabel},
      emptyWords_{new QLabel},
      notice_{new Notice{look()}},
      open_{new ActionButton{tr("Open the order"), Qt::Key_Return, look()}},
      fresh_{new ActionButton{tr("Take in a prescription"), Qt::Key_F5, look()}},
      pages_{new QStackedWidget} {
    found_.setSourceModel(&orders_);
    pages_->addWidget(makeList());
    pages_->addWidget(makeEmpty());
    auto* actions = new QHBoxLayout;
    actions->addWidget(count_, 1);
    actions->addWidget(fresh_);
    actions->addWidget(open_);
    auto* sheet = new QVBoxLayout{this};
    sheet->setContentsMargins(kMargin, kStep, kMargin, kMargin);
    sheet->addWidget(notice_);
    sheet->addWidget(pages_, 1);
    sheet->addLayout(actions);

    connect(open_, &ActionButton::clicked, this, &FloorRoom::openChosen);
    connect(fresh_, &ActionButton::clicked, this, &Room::intakeWanted);
    connect(table_, &QTableView::activated, this, &FloorRoom::openChosen);
    auto* clock = new QTimer{this};
    connect(clock, &QTimer::timeout, this, [this] {
        if (isVisible()) lookUp();
    });
    clock->start(kLookAgainEvery);
}

QWidget* FloorRoom::makeList() {
    table_->setObjectName(QStringLiteral("floor"));
    table_->setModel(&found_);
    table_->setItemDelegate(new RowDelegate{look(), rowLook(), table_});
    table_->setAccessibleName(tr("Orders on the floor"));
    table_->setSelectionBehavior(QAbstractItemView::SelectRows);
    table_->setSelectionMode(QAbstractItemView::SingleSelection);
    table_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table_->setShowGrid(false);
    table_->setTabKeyNavigation(false);
    table_->verticalHeader()->hide();
    table_->verticalHeader()->setDefaultSectionSize(kRowHeight);
    table_->verticalHeader()->setMinimumSectionSize(kRowHeight);
    table_->setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    QHeaderView* header = table_->horizontalHeader();
    header->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    header->setHighlightSections(false);
    constexpr std::pair<FloorModel::Column, int> kWidths[] = {
        {FloorModel::Number, 124}, {FloorModel::Description, 216}, {FloorModel::State, 226},
        {FloorModel::Due, 106},    {FloorModel::Late, 84},         {FloorModel::Waits, 88},
        {FloorModel::Since, 118},  {FloorModel::Patient, 108}};
    for (const auto& [column, width] : kWidths) table_->setColumnWidth(column, width);
    header->setSectionResizeMode(FloorModel::Prescriber, QHeaderView::Stretch);
    return table_;
}

QWidget* FloorRoom::makeEmpty() {
    emptyWords_->setAlignment(Qt::AlignCenter);
    emptyWords_->setFont(face(kLargeText));
    return emptyWords_;
}

QString FloorRoom::where() const { return tr("Floor"); }

void FloorRoom::enter() {
    lookUp();
    table_->setFocus();
}

void FloorRoom::lookUp() {
    const auto entries = actions::entries(desk().laboratory);
    if (!entries) return notice_->refuse(entries.error());
    notice_->beQuiet();
    if (*entries == shownEntries_) return orders_.goTo(desk().laboratory.now());
    auto lines = actions::floor(desk().laboratory);
    if (!lines) return showNothing(lines.error());
    if (auto noted = noteLook(*lines); !noted) return showNothing(noted.error());
    shownEntries_ = *entries;
    const QModelIndex chosen = table_->currentIndex();
    const QString kept = chosen.siblingAtColumn(FloorModel::Number).data().toString();
    orders_.show(*std::move(lines), desk().laboratory.now());
    findInRecords();
    for (int row = 0; row < found_.rowCount(); ++row)
        if (found_.index(row, FloorModel::Number).data().toString() == kept) table_->selectRow(row);
    showWhatIsThere();
}

void FloorRoom::search(const QString& words) {
    words_ = words;
    findInRecords();
    found_.search(words);
    showWhatIsThere();
}

void FloorRoom::findInRecords() {
    const auto found = actions::findOrders(desk().laboratory, words_.toStdString());
    if (!found) return notice_->refuse(found.error());
    if (auto noted = noteLook(*found); !noted) return notice_->refuse(noted.error());
    orders_.showFound(*found);
}

/// Names are about to be shown.
domain::Result<domain::Done> FloorRoom::noteLook(const std::vector<actions::FloorLine>& lines) {
    if (!desk().who) return domain::Error{domain::ErrorCode::Refused, "nobody is signed in"};
    std::vector<domain::OrderNumber> numbers;
    numbers.reserve(lines.size());
    for (const actions::FloorLine& line : lines) numbers.push_back(line.number);
    return actions::noteViewed(desk().laboratory, asWho(*desk().who), numbers);
}

void FloorRoom::showNothing(const domain::Error& why) {
    shownEntries_ = -1;
    orders_.show({}, desk().laboratory.now());
    showWhatIsThere();
    notice_->refuse(why);
}

void FloorRoom::showWhatIsThere() {
    const int all = orders_.rowCount();
    const int shown = found_.rowCount();
    if (shown > 0 && !table_->currentIndex().isValid()) table_->selectRow(0);
    pages_->setCurrentIndex(shown > 0 ? 0 : 1);
    emptyWords_->setText(all == 0 ? tr("No order yet. Take in the first prescription.")
                                  : tr("No order has these words. Esc shows all orders again."));
    count_->setText(shown != all ? tr("%1 of %2 orders").arg(shown).arg(all)
                    : all == 1   ? tr("1 order")
                                 : tr("%1 orders").arg(all));
    open_->setEnabled(shown > 0);
    open_->setNext(shown > 0);
    fresh_->setNext(all == 0);
}

void FloorRoom::openChosen() {
    const QModelIndex chosen = table_->currentIndex();
    if (!chosen.isValid()) return;
    emit orderWanted(orders_.line(found_.mapToSource(chosen).row()).number);
}

}  // namespace desktop
