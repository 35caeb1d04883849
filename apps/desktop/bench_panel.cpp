#include "apps/desktop/bench_panel.h"

#include <QComboBox>
#include <QGridLayout>
#include <QLabel>
#include <QVBoxLayout>
#include <algorithm>

#include "apps/desktop/action_button.h"
#include "apps/desktop/line_field.h"
#include "apps/desktop/models/words.h"

namespace desktop {
namespace {

using models::BenchCell;
using models::BenchLine;
using models::CellKind;

QString textOf(const QWidget* cell) {
    if (const auto* box = qobject_cast<const QComboBox*>(cell)) return box->currentText();
    const auto* field = qobject_cast<const QLineEdit*>(cell);
    return field == nullptr ? cell->findChild<QLineEdit*>()->text() : field->text();
}

void setText(QWidget* cell, const QString& text) {
    if (auto* box = qobject_cast<QComboBox*>(cell))
        return box->setCurrentIndex(box->findText(text));
    auto* field = qobject_cast<QLineEdit*>(cell);
    (field == nullptr ? cell->findChild<QLineEdit*>() : field)->setText(text);
}

QString keyOf(const domain::Order& order, domain::Stage stage) {
    const auto step = std::ranges::find(order.steps, stage, &domain::StageStep::stage);
    return QStringLiteral("%1 %2 %3")
        .arg(models::text(order.number.text()), models::text(codeOf(stage)))
        .arg(step == order.steps.end() ? 0 : step->attempt);
}

}  // namespace

BenchPanel::BenchPanel(const Look& look, Dialogs& dialogs) : look_{look}, dialogs_{dialogs} {
    setObjectName(QStringLiteral("bench"));
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFocusPolicy(Qt::NoFocus);
}

void BenchPanel::show(const domain::Order& order, domain::Stage stage,
                      const domain::Workshop& workshop, domain::Date today) {
    const QString of = keyOf(order, stage);
    const bool isSame = of == of_;
    const models::Typed texts = isSame ? typed() : models::Typed{};
    const QStringList ticks = isSame ? pendingTicks() : QStringList{};
    of_ = of;
    lines_ = models::benchLines(order, stage, workshop, today);
    build(order, stage);
    put(texts, ticks);
}

void BenchPanel::build(const domain::Order& order, domain::Stage stage) {
    auto* page = new QWidget;
    page->setObjectName(QStringLiteral("sheet"));
    auto* sheet = new QVBoxLayout{page};
    sheet->setContentsMargins(0, 0, 2 * kStep, 0);
    sheet->setSpacing(0);
    shown_.clear();
    checklist_.clear();
    const auto records = recordsOf(order, stage);
    for (const std::string& item : planOf(order, stage).checklist) {
        const bool recorded =
            std::ranges::count(records, domain::StageRecord{domain::Ticked{item}}) > 0;
        checklist_.push_back(makeTick(models::text(item), recorded));
        sheet->addWidget(checklist_.back());
    }
    auto* grid = new QGridLayout;
    grid->setContentsMargins(0, kStep, 0, 0);
    grid->setHorizontalSpacing(3 * kStep);
    grid->setVerticalSpacing(2 * kStep);
    for (int column = 0; column < 2; ++column) grid->setColumnStretch(column, 1);
    for (const BenchLine& line : lines_) shown_.push_back(makeLine(line, *sheet, *grid));
    sheet->addLayout(grid);
    sheet->addStretch(1);
    // Not at once: a field of the old page may be the one whose signal brought us here.
    if (QWidget* old = takeWidget()) old->deleteLater();
    setWidget(page);
}

TickRow* BenchPanel::makeTick(const QString& words, bool recorded) {
    auto* tick = new TickRow{words, look_};
    tick->setRecorded(recorded);
    connect(tick, &TickRow::toggled, this, &BenchPanel::changed);
    return tick;
}

BenchPanel::Shown BenchPanel::makeLine(const BenchLine& line, QVBoxLayout& sheet,
                                       QGridLayout& grid) {
    Shown shown;
    if (line.cells.front().kind == CellKind::Tick) {
        shown.tick = makeTick(line.title, !line.recorded.isEmpty());
        sheet.addWidget(shown.tick);
        return shown;
    }
    auto* block = new QVBoxLayout;
    block->setSpacing(kStep);
    auto* title = new QLabel{line.recorded.isEmpty()
                                 ? line.title
                                 : tr("%1 · recorded: %2").arg(line.title, line.recorded)};
    title->setTextFormat(Qt::PlainText);
    title->setToolTip(title->text());
    title->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    block->addWidget(title);
    auto* row = new QHBoxLayout;
    row->setSpacing(2 * kStep);
    for (const BenchCell& cell : line.cells) {
        shown.cells.push_back(makeCell(line, cell));
        row->addWidget(shown.cells.back(), 1);
    }
    block->addLayout(row);
    // One cell takes half the width, so that two such lines stand side by side.
    const bool half = line.cells.size() == 1;
    int at = grid.rowCount();
    const bool besides = half && grid.itemAtPosition(at - 1, 0) != nullptr &&
                         grid.itemAtPosition(at - 1, 1) == nullptr;
    if (besides)
        grid.addLayout(block, at - 1, 1);
    else
        grid.addLayout(block, at, 0, 1, half ? 1 : 2);
    return shown;
}

QWidget* BenchPanel::makeCell(const BenchLine& line, const BenchCell& cell) {
    if (cell.kind == CellKind::Choice) {
        auto* box = new QComboBox;
        box->addItems(cell.choices);
        box->setPlaceholderText(cell.word);
        box->setCurrentIndex(-1);
        box->setMinimumHeight(kTouch);
        box->setAccessibleName(QStringLiteral("%1, %2").arg(line.title, cell.word));
        connect(box, &QComboBox::currentIndexChanged, this, &BenchPanel::changed);
        return box;
    }
    LineField* field = makeField(line, cell);
    if (cell.kind != CellKind::File) return field;
    auto* both = new QWidget;
    auto* row = new QHBoxLayout{both};
    row->setContentsMargins(0, 0, 0, 0);
    auto* choose = new ActionButton{tr("Choose"), Qt::CTRL | Qt::Key_O, look_};
    connect(choose, &ActionButton::clicked, field, [this, field] {
        if (const auto file = dialogs_.cureLogFile()) field->setText(models::text(file->string()));
    });
    row->addWidget(field, 1);
    row->addWidget(choose);
    both->setFocusProxy(field);
    return both;
}

LineField* BenchPanel::makeField(const BenchLine& line, const BenchCell& cell) {
    auto* field = new LineField{cell.initial};
    field->setPlaceholderText(
        cell.example.isEmpty() ? cell.word : tr("%1, as %2").arg(cell.word, cell.example));
    field->setToolTip(field->placeholderText());
    field->setMinimumHeight(kTouch);
    field->setAccessibleName(QStringLiteral("%1, %2").arg(line.title, cell.word));
    field->setAccessibleDescription(tr("key Enter goes on to the next"));
    connect(field, &QLineEdit::textChanged, this, &BenchPanel::changed);
    connect(field, &QLineEdit::returnPressed, this, [this, field] { returned(field); });
    return field;
}

void BenchPanel::returned(LineField* field) {
    if (const auto ticket = domain::OrderNumber::parse(field->text().trimmed().toStdString())) {
        field->clear();
        emit ticketScanned(*ticket);
        return;
    }
    focusNextChild();
}

void BenchPanel::forget() { of_.clear(); }

QStringList BenchPanel::pendingTicks() const {
    QStringList words;
    for (const TickRow* tick : checklist_)
        if (tick->isPending()) words += tick->text();
    return words;
}

models::Typed BenchPanel::typed() const {
    models::Typed texts;
    for (const Shown& line : shown_) {
        QStringList cells;
        if (line.tick != nullptr && line.tick->isPending()) cells += line.tick->text();
        for (const QWidget* cell : line.cells) cells += textOf(cell);
        texts.push_back(std::move(cells));
    }
    return texts;
}

void BenchPanel::put(const models::Typed& texts, const QStringList& ticks) {
    for (TickRow* tick : checklist_)
        if (ticks.contains(tick->text()) && !tick->isRecorded()) tick->setChecked(true);
    if (texts.size() != shown_.size()) return;
    for (std::size_t i = 0; i < shown_.size(); ++i) {
        if (shown_[i].tick != nullptr && !texts[i].isEmpty()) shown_[i].tick->setChecked(true);
        for (std::size_t cell = 0; cell < shown_[i].cells.size(); ++cell)
            setText(shown_[i].cells[cell], texts[i].value(static_cast<qsizetype>(cell)));
    }
}

bool BenchPanel::isPending() const {
    if (!pendingTicks().isEmpty()) return true;
    const models::Typed texts = typed();
    for (std::size_t i = 0; i < lines_.size(); ++i)
        if (!models::isUntouched(lines_[i], texts[i])) return true;
    return false;
}

models::BenchAnswer BenchPanel::answer() const {
    return models::benchRecords(lines_, typed(), pendingTicks());
}

void BenchPanel::focusLine(std::size_t line) {
    const Shown& shown = shown_[line];
    QWidget* there = shown.tick != nullptr ? shown.tick : shown.cells.front();
    there->setFocus();
    ensureWidgetVisible(there);
}

void BenchPanel::focusFirst() {
    for (TickRow* tick : checklist_)
        if (!tick->isChecked()) return tick->setFocus();
    for (std::size_t i = 0; i < lines_.size(); ++i)
        if (lines_[i].recorded.isEmpty()) return focusLine(i);
    if (!shown_.empty()) return focusLine(0);
    for (TickRow* tick : checklist_)
        if (tick->isEnabled()) return tick->setFocus();
}

}  // namespace desktop
