#include "apps/desktop/order_room.h"

#include <QHeaderView>
#include <QLabel>
#include <QStackedWidget>
#include <QTableView>
#include <QVBoxLayout>
#include <algorithm>

#include "apps/actions/examination.h"
#include "apps/desktop/models/words.h"
#include "apps/desktop/row_delegate.h"

namespace desktop {
namespace {

using domain::Colour;
using models::HistoryModel;
using models::Mark;
using models::StepsModel;

constexpr int kMargin = 4 * kStep;
constexpr int kLeftWidth = 640;
constexpr int kStageRow = 28;

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
    constexpr int kNoBar = -1;
    return {.height = kStageRow, .columns = std::move(columns), .barRole = kNoBar};
}

QTableView* makeTable(QAbstractItemModel& model, const Look& look, RowLook row,
                      const QString& name) {
    auto* table = new QTableView;
    table->setModel(&model);
    table->setItemDelegate(new RowDelegate{look, std::move(row), table});
    table->setAccessibleName(name);
    table->setSelectionBehavior(QAbstractItemView::SelectRows);
    table->setSelectionMode(QAbstractItemView::SingleSelection);
    table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table->setShowGrid(false);
    table->setTabKeyNavigation(false);
    table->setWordWrap(false);
    table->setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    table->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    table->verticalHeader()->hide();
    table->verticalHeader()->setMinimumSectionSize(kStageRow);
    table->verticalHeader()->setDefaultSectionSize(kStageRow);
    table->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    table->horizontalHeader()->setHighlightSections(false);
    table->horizontalHeader()->setStretchLastSection(true);
    return table;
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
      picture_{new ArchView{look()}},
      findings_{new FindingsPanel{look()}},
      what_{new QLabel},
      people_{new QLabel},
      standing_{new Notice{look()}},
      notice_{new Notice{look()}},
      stepsTable_{makeTable(steps_, look(), stepsLook(), tr("Stages of the order"))},
      historyTable_{makeTable(history_, look(), historyLook(), tr("History of the order"))},
      start_{new ActionButton{tr("Start"), Qt::Key_F5, look()}},
      finish_{new ActionButton{tr("Done"), Qt::Key_F6, look()}},
      flag_{new ActionButton{tr("Flag a question"), Qt::Key_F7, look()}},
      answer_{new ActionButton{tr("Record answer"), Qt::Key_F8, look()}},
      accept_{new ActionButton{tr("Accept"), Qt::Key_F9, look()}},
      printSheet_{new ActionButton{tr("Print sheet"), Qt::Key_F10, look()}},
      printQuestions_{new ActionButton{tr("Print questions"), Qt::Key_F11, look()}},
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

    connect(start_, &ActionButton::clicked, this, &OrderRoom::start);
    connect(finish_, &ActionButton::clicked, this, &OrderRoom::finish);
    connect(flag_, &ActionButton::clicked, this, &OrderRoom::flag);
    connect(answer_, &ActionButton::clicked, this, &OrderRoom::answer);
    connect(accept_, &ActionButton::clicked, this, &OrderRoom::accept);
    connect(printSheet_, &ActionButton::clicked, this,
            [this] { print(actions::Paper::PrescriptionSheet); });
    connect(printQuestions_, &ActionButton::clicked, this,
            [this] { print(actions::Paper::QuestionSheet); });
    connect(toFloor_, &ActionButton::clicked, this, &Room::floorWanted);
}

QWidget* OrderRoom::makeLeft() {
    auto* left = new QWidget;
    left->setMinimumWidth(kLeftWidth);
    auto* column = new QVBoxLayout{left};
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(picture_, 1);
    column->addWidget(findings_);
    column->addStretch(1);
    return left;
}

QWidget* OrderRoom::makeRight() {
    what_->setFont(face(kLargeText, true));
    people_->setFont(face(kPlainText));
    auto* bench = new QGridLayout;
    bench->setSpacing(2 * kStep);
    bench->addWidget(accept_, 0, 0);
    bench->addWidget(start_, 0, 1);
    bench->addWidget(finish_, 0, 2);
    bench->addWidget(flag_, 1, 0);
    bench->addWidget(answer_, 1, 1);
    bench->addWidget(printSheet_, 1, 2);
    bench->addWidget(printQuestions_, 2, 2);
    bench->addWidget(standing_, 2, 0, 1, 2);
    for (int column = 0; column < 3; ++column) bench->setColumnStretch(column, 1);
    stepsTable_->setColumnWidth(StepsModel::Stage, 150);
    stepsTable_->setColumnWidth(StepsModel::State, 180);
    stepsTable_->setColumnWidth(StepsModel::Person, 64);
    historyTable_->setColumnWidth(HistoryModel::When, 162);
    historyTable_->setColumnWidth(HistoryModel::Person, 64);
    historyTable_->setColumnWidth(HistoryModel::Says, 190);
    auto* right = new QWidget;
    auto* column = new QVBoxLayout{right};
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2 * kStep);
    column->addWidget(what_);
    column->addWidget(people_);
    column->addLayout(bench);
    column->addWidget(notice_);
    column->addWidget(stepsTable_, 3);
    column->addWidget(historyTable_, 2);
    return right;
}

QWidget* OrderRoom::makeEmpty() {
    auto* words = new QLabel{tr("No order is open. Scan its ticket, or type its number above.")};
    words->setAlignment(Qt::AlignCenter);
    words->setFont(face(kLargeText));
    toFloor_->setNext(true);
    auto* empty = new QWidget;
    auto* column = new QVBoxLayout{empty};
    column->addStretch(1);
    column->addWidget(words);
    column->addWidget(toFloor_, 0, Qt::AlignHCenter);
    column->addStretch(1);
    return empty;
}

QString OrderRoom::where() const {
    return view_ ? tr("Order %1").arg(models::text(view_->order.number.text())) : tr("Order");
}

void OrderRoom::enter() {
    if (view_) lookAgain();
    (view_ ? static_cast<QWidget*>(historyTable_) : toFloor_)->setFocus();
}

domain::Result<domain::Done> OrderRoom::show(const domain::OrderNumber& number) {
    auto view = actions::order(desk().laboratory, number);
    if (!view) return view.error();
    view_ = *std::move(view);
    notice_->beQuiet();
    showOrder();
    return domain::Done{};
}

void OrderRoom::lookAgain() {
    auto view = actions::order(desk().laboratory, view_->order.number);
    if (!view) return notice_->refuse(view.error());
    view_ = *std::move(view);
    showOrder();
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
    offerWhatMayBeDone();
    emit whereChanged();
}

/// Asks the workflow itself whether it would refuse; nothing happens to the order.
std::optional<domain::Error> OrderRoom::refusalOf(const domain::Command& command) const {
    const domain::Occasion occasion{.at = desk().laboratory.now(), .person = *desk().who};
    const auto decided = decide(view_->order, command, occasion);
    return decided ? std::nullopt : std::optional{decided.error()};
}

void OrderRoom::offerWhatMayBeDone() {
    if (!view_) return;
    const domain::Order& order = view_->order;
    const domain::SealedText some{};
    const std::pair<ActionButton*, domain::Command> offers[] = {
        {accept_, domain::Accept{.reason = some}},
        {start_, domain::Start{}},
        {finish_, domain::Finish{}},
        {flag_, domain::Flag{}},
        {answer_, domain::Answer{.words = some, .revision = order.revision}},
    };
    ActionButton* next = nullptr;
    for (const auto& [button, command] : offers) {
        const auto refusal = desk().who ? refusalOf(command) : std::nullopt;
        button->setEnabled(desk().who && !refusal);
        button->setToolTip(refusal ? models::text(refusal->message) : QString{});
        button->setNext(false);
        if (button->isEnabled() && (next == nullptr || next == flag_)) next = button;
    }
    printSheet_->setEnabled(desk().who.has_value());
    printQuestions_->setEnabled(desk().who &&
                                (!order.flags.empty() || blocks(order.revision.findings)));
    if (next != nullptr && next != flag_) next->setNext(true);
    const domain::StageStep* due = currentStep(order);
    const QString stage = due == nullptr ? QString{} : models::spoken(due->stage);
    start_->say(start_->isEnabled() ? tr("Start %1").arg(stage) : tr("Start"));
    finish_->say(finish_->isEnabled() ? tr("%1 done").arg(stage) : tr("Done"));
    const models::Marked standing = models::markOf(order);
    standing_->say(standing.mark, standing.word);
    if (!desk().who)
        standing_->say(
            Mark::Asked,
            tr("Say who you are before you change anything: your code, top right, Ctrl+U."));
}

actions::Who OrderRoom::who() const { return {*desk().who, {}}; }

void OrderRoom::took(const domain::Result<actions::Outcome>& outcome) {
    if (!outcome) {
        notice_->refuse(outcome.error());
        return lookAgain();
    }
    notice_->beQuiet();
    lookAgain();
    notice_->say(Mark::Done, models::text(view_->history.back().says) + QLatin1Char{'.'});
}

void OrderRoom::start() { took(actions::start(desk().laboratory, view_->order.number, {}, who())); }

void OrderRoom::finish() {
    took(actions::finish(desk().laboratory, view_->order.number, {}, who()));
}

void OrderRoom::flag() {
    if (const auto given = desk().dialogs.flag())
        took(actions::flag(desk().laboratory, view_->order.number, given->reason, given->note,
                           who()));
}

void OrderRoom::answer() {
    const auto given = desk().dialogs.answer();
    if (!given) return;
    std::optional<domain::Prescription> prescription;
    if (given->file) {
        auto read = actions::readPrescription(*given->file);
        if (!read) return notice_->refuse(read.error());
        prescription = *std::move(read);
    }
    took(
        actions::answer(desk().laboratory, view_->order.number, given->words, prescription, who()));
}

void OrderRoom::accept() {
    const auto rules = untakenCautions(view_->order);
    std::vector<domain::Finding> cautions;
    for (const domain::Finding& finding : view_->order.revision.findings)
        if (finding.severity == domain::Severity::Caution &&
            std::ranges::count(rules, finding.rule) != 0)
            cautions.push_back(finding);
    std::optional<std::string> reason;
    if (!cautions.empty()) {
        reason = desk().dialogs.reasonFor(cautions);
        if (!reason) return;
    }
    took(actions::accept(desk().laboratory, view_->order.number, reason, who()));
}

void OrderRoom::print(actions::Paper paper) {
    const auto printed = actions::print(desk().laboratory, view_->order.number, paper, {}, who());
    if (!printed) return notice_->refuse(printed.error());
    notice_->say(Mark::Done, tr("Printed to %1.").arg(models::text(printed->string())));
    desk().dialogs.show(*printed);
}

}  // namespace desktop
