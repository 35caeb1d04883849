#include "apps/desktop/order_room.h"

#include <QLabel>
#include <QStackedWidget>
#include <QTableView>
#include <QVBoxLayout>
#include <algorithm>

#include "apps/actions/access.h"
#include "apps/actions/workshop.h"
#include "apps/desktop/models/words.h"
#include "apps/desktop/tables.h"

namespace desktop {
namespace {

using domain::Colour;
using models::HistoryModel;
using models::Mark;
using models::StepsModel;

constexpr int kMargin = 4 * kStep;
constexpr int kLeftWidth = 640;
constexpr int kStageRow = 28;
constexpr int kGateRow = 32;
constexpr int kGateRowsLeast = 3;  ///< in view
constexpr int kGateRowsMost = 8;
constexpr int kControlColumns = 3;

RowLook stepsLook() {
    std::vector<ColumnLook> columns(StepsModel::ColumnCount);
    columns[StepsModel::Person].ink = Colour::Quiet;
    columns[StepsModel::Since] = {.pixels = kSmallText, .ink = Colour::Quiet};
    return {.height = kStageRow,
            .columns = std::move(columns),
            .barRole = StepsModel::DueRole,
            .bar = Colour::Ink,
            .barWordColumn = StepsModel::Stage};
}

RowLook historyLook() {
    std::vector<ColumnLook> columns(HistoryModel::ColumnCount);
    columns[HistoryModel::When] = {.pixels = kSmallText, .ink = Colour::Quiet};
    columns[HistoryModel::Person].ink = Colour::Quiet;
    columns[HistoryModel::Words].ink = Colour::Quiet;
    return {.height = kStageRow, .columns = std::move(columns), .barRole = kNoBar};
}

/// "patient P-17 · Dr. Somebody · due 2026-12-18, in 5 d · revision 1"
QString peopleOf(const domain::Prescription& prescription, std::int64_t revision,
                 domain::Date today) {
    const auto& identity = prescription.identity;
    QStringList parts;
    if (const auto& patient =
            identity.patientReference ? identity.patientReference : identity.patientName)
        parts += QObject::tr("patient %1").arg(models::text(*patient));
    if (identity.prescriberName) parts += models::text(*identity.prescriberName);
    parts += prescription.needed ? QObject::tr("due %1, %2")
                                       .arg(models::text(prescription.needed->text()),
                                            models::dueWords(*prescription.needed, today))
                                 : QObject::tr("no day given");
    parts += QObject::tr("revision %1").arg(revision);
    return parts.join(QStringLiteral(" · "));
}

/// "upper, III mod 1, Co-Cr"
QString whatItIs(const domain::Prescription& prescription) {
    QStringList parts{models::spoken(prescription.arch)};
    if (const auto kennedy = classify(prescription)) parts += models::text(kennedy->text());
    if (prescription.framework.material)
        parts += models::text(shortName(*prescription.framework.material));
    else if (prescription.appliance)
        parts += models::spoken(*prescription.appliance);
    return parts.join(QStringLiteral(", "));
}

RowLook gateLook() {
    std::vector<ColumnLook> columns(models::GateModel::ColumnCount);
    columns[models::GateModel::ToDo] = {.pixels = kSmallText, .ink = Colour::Quiet};
    return {.height = kGateRow, .columns = std::move(columns), .barRole = kNoBar};
}

models::Asked askedOf(const actions::OrderView& view) {
    const domain::Order& order = view.order;
    models::Asked asked{.findings = models::inOrderOfAsking(order.revision.findings),
                        .notation = notationOf(view.prescription),
                        .cautionsTaken = order.cautionsTaken,
                        .takenBy = order.acceptedBy};
    for (std::size_t i = 0; i < order.flags.size(); ++i)
        asked.atBench.push_back({order.flags[i], view.flagNotes[i]});
    return asked;
}

}  // namespace

OrderRoom::OrderRoom(Desk& desk)
    : Room{desk},
      pages_{new QStackedWidget},
      below_{new QStackedWidget},
      picture_{new ArchView{look()}},
      findings_{new FindingsPanel{look()}},
      gateTable_{makeTable(gate_, look(), gateLook(), tr("What the gate still lacks"))},
      what_{new QLabel},
      people_{new QLabel},
      emptyWords_{new QLabel},
      standing_{new Notice{look()}},
      notice_{new Notice{look()}},
      bench_{new BenchPanel{look(), desk.dialogs}},
      stepsTable_{makeTable(steps_, look(), stepsLook(), tr("Stages of the order"))},
      historyTable_{makeTable(history_, look(), historyLook(), tr("History of the order"))},
      controls_{new QGridLayout},
      start_{new ActionButton{tr("Start"), Qt::Key_F5, look()}},
      send_{new ActionButton{tr("Send"), Qt::Key_F5, look()}},
      record_{new ActionButton{tr("Record"), Qt::CTRL | Qt::Key_Return, look()}},
      finish_{new ActionButton{tr("Done"), Qt::Key_F6, look()}},
      takeBack_{new ActionButton{tr("Take back"), Qt::Key_F6, look()}},
      statement_{new ActionButton{tr("Statement"), Qt::CTRL | Qt::Key_T, look()}},
      flag_{new ActionButton{tr("Question"), Qt::Key_F7, look()}},
      answer_{new ActionButton{tr("Record answer"), Qt::Key_F8, look()}},
      accept_{new ActionButton{tr("Accept"), Qt::Key_F9, look()}},
      again_{new ActionButton{tr("Again from…"), Qt::Key_F12, look()}},
      makeAgain_{new ActionButton{tr("Make again"), Qt::CTRL | Qt::Key_M, look()}},
      printSheet_{new ActionButton{tr("Print sheet"), Qt::Key_F10, look()}},
      printQuestions_{new ActionButton{tr("Print questions"), Qt::Key_F11, look()}},
      seeRecord_{new ActionButton{tr("History"), Qt::CTRL | Qt::Key_H, look()}},
      toFloor_{new ActionButton{tr("See the floor"), Qt::Key_F5, look()}} {
    auto* both = new QWidget;
    auto* panes = new QHBoxLayout{both};
    panes->setContentsMargins(0, 0, 0, 0);
    panes->setSpacing(kMargin);
    panes->addWidget(makeLeft(), 1);
    panes->addWidget(makeRight(), 1);
    pages_->addWidget(both);
    pages_->addWidget(makeEmpty());
    pages_->setCurrentIndex(1);
    auto* sheet = new QVBoxLayout{this};
    sheet->setContentsMargins(kMargin, kStep, kMargin, kMargin);
    sheet->addWidget(pages_);
    connectControls();
}

void OrderRoom::connectControls() {
    const std::pair<ActionButton*, void (OrderRoom::*)()> deeds[] = {
        {start_, &OrderRoom::start},
        {send_, &OrderRoom::send},
        {finish_, &OrderRoom::finish},
        {takeBack_, &OrderRoom::takeBack},
        {statement_, &OrderRoom::issueStatement},
        {flag_, &OrderRoom::flag},
        {answer_, &OrderRoom::answer},
        {accept_, &OrderRoom::accept},
        {again_, &OrderRoom::again},
        {makeAgain_, &OrderRoom::makeAgain},
        {seeRecord_, &OrderRoom::toggleRecord}};
    for (const auto& [button, deed] : deeds) connect(button, &ActionButton::clicked, this, deed);
    connect(record_, &ActionButton::clicked, this, &OrderRoom::record);
    connect(printSheet_, &ActionButton::clicked, this,
            [this] { print(actions::Paper::PrescriptionSheet); });
    connect(printQuestions_, &ActionButton::clicked, this,
            [this] { print(actions::Paper::QuestionSheet); });
    connect(toFloor_, &ActionButton::clicked, this, &Room::floorWanted);
    connect(bench_, &BenchPanel::changed, this, &OrderRoom::accentNext);
    connect(bench_, &BenchPanel::ticketScanned, this, &Room::orderWanted);
}

QWidget* OrderRoom::makeLeft() {
    gateTable_->setColumnWidth(models::GateModel::Lacks, 392);
    auto* left = new QWidget;
    left->setMinimumWidth(kLeftWidth);
    auto* column = new QVBoxLayout{left};
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(picture_, 1);
    column->addWidget(gateTable_);
    column->addWidget(findings_);
    column->addStretch(1);
    return left;
}

QWidget* OrderRoom::makeRight() {
    what_->setFont(face(kLargeText, true));
    people_->setFont(face(kPlainText));
    controls_->setSpacing(2 * kStep);
    for (int column = 0; column < kControlColumns; ++column) controls_->setColumnStretch(column, 1);
    stepsTable_->setColumnWidth(StepsModel::Stage, 150);
    stepsTable_->setColumnWidth(StepsModel::State, 180);
    stepsTable_->setColumnWidth(StepsModel::Person, 64);
    historyTable_->setColumnWidth(HistoryModel::When, 162);
    historyTable_->setColumnWidth(HistoryModel::Person, 64);
    historyTable_->setColumnWidth(HistoryModel::Says, 190);
    auto* record = new QWidget;
    auto* tables = new QVBoxLayout{record};
    tables->setContentsMargins(0, 0, 0, 0);
    tables->addWidget(stepsTable_, 3);
    tables->addWidget(historyTable_, 2);
    below_->addWidget(bench_);
    below_->addWidget(record);
    auto* right = new QWidget;
    // Whatever is not on offer yet belongs somewhere, too.
    for (ActionButton* button :
         {start_, send_, record_, finish_, takeBack_, statement_, flag_, answer_, accept_, again_,
          makeAgain_, printSheet_, printQuestions_, seeRecord_}) {
        button->setParent(right);
        button->hide();
    }
    auto* column = new QVBoxLayout{right};
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2 * kStep);
    column->addWidget(what_);
    column->addWidget(people_);
    column->addWidget(standing_);
    column->addLayout(controls_);
    column->addWidget(notice_);
    column->addWidget(below_, 1);
    return right;
}

QWidget* OrderRoom::makeEmpty() {
    emptyWords_->setText(tr("No order is open. Scan its ticket, or type its number above."));
    emptyWords_->setAlignment(Qt::AlignCenter);
    emptyWords_->setWordWrap(true);
    emptyWords_->setFont(face(kLargeText));
    toFloor_->setNext(true);
    auto* empty = new QWidget;
    auto* column = new QVBoxLayout{empty};
    column->addStretch(1);
    column->addWidget(emptyWords_);
    column->addWidget(toFloor_, 0, Qt::AlignHCenter);
    column->addStretch(1);
    return empty;
}

QString OrderRoom::where() const {
    return view_ ? tr("Order %1").arg(models::text(view_->order.number.text())) : tr("Order");
}

void OrderRoom::enter() {
    if (view_) lookAgain();
    takeFocus();
}

void OrderRoom::takeFocus() {
    if (!view_)
        toFloor_->setFocus();
    else if (below_->currentWidget() == bench_)
        bench_->focusFirst();
    else
        historyTable_->setFocus();
}

void OrderRoom::whoChanged() {
    if (view_) lookAgain();
}

bool OrderRoom::shows(const domain::OrderNumber& number) const {
    return view_ && view_->order.number == number;
}

domain::Result<domain::Done> OrderRoom::show(const domain::OrderNumber& number) {
    auto view = viewed(number);
    if (!view) return view.error();
    if (!shows(number)) showsRecord_ = false;
    view_ = *std::move(view);
    notice_->beQuiet();
    readAround();
    showOrder();
    return domain::Done{};
}

/// An order whose names may be shown: that they are is noted.
domain::Result<actions::OrderView> OrderRoom::viewed(const domain::OrderNumber& number) {
    if (!desk().who) return domain::Error{domain::ErrorCode::Refused, "nobody is signed in"};
    auto view = actions::order(desk().laboratory, number);
    if (!view) return view;
    auto noted = actions::noteViewed(desk().laboratory, asWho(*desk().who), {number});
    if (!noted) return noted.error();
    return view;
}

void OrderRoom::lookAgain() {
    auto view = viewed(number());
    if (!view) {
        emptyWords_->setText(models::text(view.error().message));
        return pages_->setCurrentIndex(1);
    }
    view_ = *std::move(view);
    readAround();
    showOrder();
}

/// The laboratory as it stands, and what the gate lacks for whoever is signed in.
void OrderRoom::readAround() {
    lacking_.clear();
    auto workshop = actions::workshop(desk().laboratory);
    if (!workshop) return notice_->refuse(workshop.error());
    workshop_ = *std::move(workshop);
    auto lacking = actions::gate(desk().laboratory, number(), desk().who->person);
    if (!lacking) return notice_->refuse(lacking.error());
    lacking_ = *std::move(lacking);
}

void OrderRoom::showOrder() {
    const domain::Order& order = view_->order;
    pages_->setCurrentIndex(0);
    what_->setText(whatItIs(view_->prescription));
    people_->setText(
        peopleOf(view_->prescription, order.revisionNumber, desk().laboratory.today()));
    const models::Asked asked = askedOf(*view_);
    picture_->show(view_->prescription, asked.findings, asked.firstFinding());
    findings_->show(asked);
    steps_.show(order);
    stepsTable_->setVisible(!order.steps.empty());
    history_.show(view_->history);
    if (steps_.dueRow() >= 0)
        stepsTable_->scrollTo(steps_.index(steps_.dueRow(), 0),
                              QAbstractItemView::PositionAtCenter);
    showPlace();
    offerWhatMayBeDone();
    emit whereChanged();
}

bool OrderRoom::isAtBench() const {
    const auto* step = due();
    if (step == nullptr || isClosed(view_->order) || step->away) return false;
    const bool practice = domain::rowOf(step->stage).kind == domain::StageKind::AtPractice;
    return step->status == (practice ? domain::StageStatus::ToDo : domain::StageStatus::InHand);
}

/// The bench where something can be recorded, and beside it what its gate lacks.
void OrderRoom::showPlace() {
    const bool bench = isAtBench();
    if (bench) bench_->show(view_->order, due()->stage, workshop_, desk().laboratory.today());
    below_->setCurrentIndex(bench && !showsRecord_ ? 0 : 1);
    // While a question stands, its answer is what is lacking.
    gate_.show(bench && view_->order.flags.empty() ? lacking_ : std::vector<domain::Finding>{},
               notationOf(view_->prescription));
    const int rows = gate_.rowCount();
    gateTable_->setVisible(rows > 0);
    gateTable_->setMinimumHeight((std::min(rows, kGateRowsLeast) + 1) * kGateRow);
    gateTable_->setMaximumHeight((std::min(rows, kGateRowsMost) + 1) * kGateRow);
}

void OrderRoom::toggleRecord() {
    showsRecord_ = !showsRecord_;
    showPlace();
    offerWhatMayBeDone();
    takeFocus();
}

/// Asks the workflow itself whether it would refuse; nothing happens to the order.
std::optional<domain::Error> OrderRoom::refusalOf(const domain::Command& command) const {
    const domain::Occasion occasion{
        .at = desk().laboratory.now(), .person = desk().who->person, .workshop = workshop_};
    const auto decided = decide(view_->order, command, occasion);
    return decided ? std::nullopt : std::optional{decided.error()};
}

bool OrderRoom::may(domain::Permission permission) const {
    const auto* person = workshop_.worker(desk().who->person);
    return person != nullptr && domain::may(person->role, permission);
}

}  // namespace desktop
