/// One order: its picture, what its gate lacks, its findings, the bench, and what may be done.
#pragma once

#include <functional>

#include "apps/actions/order_view.h"
#include "apps/actions/papers.h"
#include "apps/desktop/action_button.h"
#include "apps/desktop/arch_view.h"
#include "apps/desktop/bench_panel.h"
#include "apps/desktop/findings_panel.h"
#include "apps/desktop/models/gate_model.h"
#include "apps/desktop/models/history_model.h"
#include "apps/desktop/models/steps_model.h"
#include "apps/desktop/notice.h"
#include "apps/desktop/room.h"
#include "domain/production/decide.h"

class QGridLayout;
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
    void whoChanged() override;

    /// Shows an order; the reason, if there is none.
    domain::Result<domain::Done> show(const domain::OrderNumber& number);
    /// Whether this is the order that is open.
    bool shows(const domain::OrderNumber& number) const;
    /// Its ticket was scanned again while it is open: the stage due starts, or is done.
    void scan();

    models::GateModel& gate() noexcept { return gate_; }

private:
    /// What a control does, who may, and what the workflow says about it.
    struct Offer {
        ActionButton* button;
        domain::Permission permission;
        bool isShown;
        domain::Command asked;  ///< what the workflow is asked
    };

    QWidget* makeLeft();
    QWidget* makeRight();
    QWidget* makeEmpty();
    void connectControls();
    domain::Result<actions::OrderView> viewed(const domain::OrderNumber& number);
    void lookAgain();
    void readAround();
    void showOrder();
    void showPlace();
    void offerWhatMayBeDone();
    std::vector<Offer> offers() const;
    void arrange(const std::vector<Offer>& offered);
    void accentNext();
    void wordControls();
    void toggleRecord();
    void takeFocus();
    std::optional<domain::Error> refusalOf(const domain::Command& command) const;
    bool may(domain::Permission permission) const;
    bool isAtBench() const;  ///< something can be recorded at the stage due
    const domain::StageStep* due() const { return currentStep(view_->order); }
    domain::OrderNumber number() const { return view_->order.number; }
    bool took(const domain::Result<actions::Outcome>& outcome);

    void start();
    bool record();
    void recordThen(const std::function<void()>& next);
    void finish();
    void send();
    void takeBack();
    void again();
    void makeAgain();
    void issueStatement();
    void flag();
    void answer();
    void accept();
    void print(actions::Paper paper);

    std::optional<actions::OrderView> view_;
    domain::Workshop workshop_;
    std::vector<domain::Finding> lacking_;  ///< at the gate of the stage due, for who is signed in
    bool showsRecord_{false};               ///< stages and history in the place of the bench
    models::StepsModel steps_;
    models::HistoryModel history_;
    models::GateModel gate_;
    QStackedWidget* pages_;
    QStackedWidget* below_;  ///< the bench, or stages and history
    ArchView* picture_;
    FindingsPanel* findings_;
    QTableView* gateTable_;
    QLabel* what_;
    QLabel* people_;
    QLabel* emptyWords_;  ///< why no order is shown
    Notice* standing_;    ///< where the order stands, and who waits for whom
    Notice* notice_;      ///< what came of the last action
    BenchPanel* bench_;
    QTableView* stepsTable_;
    QTableView* historyTable_;
    QGridLayout* controls_;
    ActionButton* start_;
    ActionButton* send_;
    ActionButton* record_;
    ActionButton* finish_;
    ActionButton* takeBack_;
    ActionButton* statement_;
    ActionButton* flag_;
    ActionButton* answer_;
    ActionButton* accept_;
    ActionButton* again_;
    ActionButton* makeAgain_;
    ActionButton* printSheet_;
    ActionButton* printQuestions_;
    ActionButton* seeRecord_;
    ActionButton* toFloor_;
};

}  // namespace desktop
