/// One order: its picture, its findings, its stages and history, and what may be done with it.
#pragma once

#include "apps/desktop/action_button.h"
#include "apps/desktop/arch_view.h"
#include "apps/desktop/findings_panel.h"
#include "apps/desktop/models/history_model.h"
#include "apps/desktop/models/steps_model.h"
#include "apps/desktop/notice.h"
#include "apps/desktop/room.h"

#include "apps/actions/papers.h"

class QLabel;
class QStackedWidget;
class QTableView;

namespace desktop {

class OrderRoom : public Room {
    Q_OBJECT

public:
    explicit OrderRoom(Desk& desk);

    QString where() const override;
    void enter() override;
    void whoChanged() override { offerWhatMayBeDone(); }

    /// Shows an order; false, with the reason in `trouble`, if there is none.
    domain::Result<domain::Done> show(const domain::OrderNumber& number);

private:
    QWidget* makeLeft();
    QWidget* makeRight();
    QWidget* makeEmpty();
    void lookAgain();
    void showOrder();
    void offerWhatMayBeDone();
    std::optional<domain::Error> refusalOf(const domain::Command& command) const;
    void took(const domain::Result<actions::Outcome>& outcome);
    actions::Who who() const;

    void start();
    void finish();
    void flag();
    void answer();
    void accept();
    void print(actions::Paper paper);

    std::optional<actions::OrderView> view_;
    models::StepsModel steps_;
    models::HistoryModel history_;
    QStackedWidget* pages_;
    ArchView* picture_;
    FindingsPanel* findings_;
    QLabel* what_;
    QLabel* people_;
    Notice* standing_;  ///< where the order stands, and what would be needed
    Notice* notice_;    ///< what came of the last action
    QTableView* stepsTable_;
    QTableView* historyTable_;
    ActionButton* start_;
    ActionButton* finish_;
    ActionButton* flag_;
    ActionButton* answer_;
    ActionButton* accept_;
    ActionButton* printSheet_;
    ActionButton* printQuestions_;
    ActionButton* toFloor_;
};

}  // namespace desktop
