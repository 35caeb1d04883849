/// The bench: the checklist of the stage in hand to tick, and fields for what its gate demands.
#pragma once

#include <QScrollArea>

#include "apps/desktop/dialogs.h"
#include "apps/desktop/models/bench_form.h"
#include "apps/desktop/tick_row.h"

class QComboBox;
class QGridLayout;
class QLabel;
class QVBoxLayout;

namespace desktop {

class LineField;

class BenchPanel : public QScrollArea {
    Q_OBJECT

public:
    BenchPanel(const Look& look, Dialogs& dialogs);

    /// Shows a stage as it stands. What was typed and not recorded stays, as long as it is the same
    /// attempt at the same stage of the same order.
    void show(const domain::Order& order, domain::Stage stage, const domain::Workshop& workshop,
              domain::Date today);
    /// Nothing is typed or ticked any more: it was recorded.
    void forget();

    /// Whether something was ticked or typed that is not on record.
    bool isPending() const;
    models::BenchAnswer answer() const;
    /// Where the person goes on: the line in trouble, or the first that is not on record.
    void focusLine(std::size_t line);
    void focusFirst();

signals:
    void changed();
    /// A ticket was scanned into a field.
    void ticketScanned(const domain::OrderNumber& number);

private:
    /// A line on the sheet: a tick, or a widget for each cell.
    struct Shown {
        TickRow* tick{};
        std::vector<QWidget*> cells{};
    };
    void build(const domain::Order& order, domain::Stage stage);
    Shown makeLine(const models::BenchLine& line, QVBoxLayout& sheet, QGridLayout& grid);
    QWidget* makeCell(const models::BenchLine& line, const models::BenchCell& cell);
    LineField* makeField(const models::BenchLine& line, const models::BenchCell& cell);
    void returned(LineField* field);
    TickRow* makeTick(const QString& words, bool recorded);
    QStringList pendingTicks() const;
    models::Typed typed() const;
    void put(const models::Typed& texts, const QStringList& ticks);

    const Look& look_;
    Dialogs& dialogs_;
    QString of_;  ///< which order, stage and attempt is shown
    std::vector<models::BenchLine> lines_;
    std::vector<Shown> shown_;
    std::vector<TickRow*> checklist_;
};

}  // namespace desktop
