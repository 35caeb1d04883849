/// What the room of an order offers: which controls, to whom, and which of them is next.
#include <QGridLayout>
#include <algorithm>

#include "apps/desktop/models/words.h"
#include "apps/desktop/order_room.h"

namespace desktop {
namespace {

using domain::OrderStatus;
using domain::Permission;
using models::Mark;

constexpr int kControlColumns = 3;

/// Something that may always be recorded where anything may.
domain::Command anyRecord() {
    return domain::Record{.stage = {}, .records = {domain::BenchValue{"value", "1"}}};
}

/// A stage that work may begin again at, to ask whether it may at all.
domain::Stage fallBackOf(const domain::Order& order) {
    const domain::StageStep* step = currentStep(order);
    if (step == nullptr) return {};
    const auto stages = planOf(order, step->stage).fallBack;
    return stages.empty() ? step->stage : stages.front();
}

}  // namespace

std::vector<OrderRoom::Offer> OrderRoom::offers() const {
    const domain::Order& order = view_->order;
    const domain::StageStep* step = due();
    const domain::SealedText some{};
    const bool inWork = order.status == OrderStatus::InWork && step != nullptr;
    const bool practice =
        inWork && domain::rowOf(step->stage).kind == domain::StageKind::AtPractice;
    const bool inHand = inWork && step->status == domain::StageStatus::InHand;
    const bool delivering = inHand && step->stage == domain::Stage::Delivery;
    const bool asked = !order.flags.empty() || blocks(order.revision.findings);
    const bool open = !isClosed(order);
    const domain::Command recording = anyRecord();
    // A gate that is still shut is shown, and refuses when it is passed; it hides no control.
    const domain::Command starting = lacking_.empty() || !practice ? domain::Start{} : recording;
    const domain::Command finishing = lacking_.empty() ? domain::Finish{} : recording;
    return {
        {accept_, Permission::AcceptOrders, order.status == OrderStatus::Received,
         domain::Accept{.reason = some}},
        {start_, Permission::WorkStages, inWork && !practice && !inHand, starting},
        {send_, Permission::WorkStages, practice && !inHand, starting},
        {record_, Permission::WorkStages, isAtBench(), recording},
        {finish_, Permission::WorkStages, inHand && !practice, finishing},
        {takeBack_, Permission::TakeReturns, practice && inHand,
         domain::TakeReturn{.disinfection = {"agent", domain::Minutes::of(1)}}},
        {statement_, Permission::IssueStatements,
         delivering && !newest<domain::StatementIssued>(order, step->stage), recording},
        {flag_, Permission::AskQuestions, open, domain::Flag{}},
        {answer_, Permission::RecordAnswers, open && asked,
         domain::Answer{.words = some, .revision = order.revision}},
        {again_, Permission::RedoStages, inWork && !(practice && inHand),
         domain::Redo{.from = inHand ? step->stage : fallBackOf(order)}},
        {makeAgain_, Permission::OrderRemakes,
         may(Permission::OrderRemakes) &&
             (order.remakeDue || order.status == OrderStatus::Delivered),
         domain::OrderRemake{.replacement = domain::blankOrderNumber()}},
    };
}

void OrderRoom::offerWhatMayBeDone() {
    if (!view_ || !desk().who) return;
    const domain::Order& order = view_->order;
    const auto offered = offers();
    QString why;
    for (const Offer& offer : offered) {
        const auto refusal = refusalOf(offer.asked);
        const bool allowed = may(offer.permission);
        offer.button->setEnabled(allowed && !refusal);
        const QString words = !allowed
                                  ? tr("for: %1").arg(models::text(rolesThatMay(offer.permission)))
                              : refusal ? models::text(refusal->message)
                                        : QString{};
        offer.button->setToolTip(words);
        const bool isTheWayOn =
            offer.button == start_ || offer.button == finish_ || offer.button == send_;
        if (offer.isShown && isTheWayOn && order.flags.empty()) why = words;
    }
    printSheet_->setEnabled(may(Permission::PrintPapers));
    printQuestions_->setEnabled(may(Permission::PrintPapers));
    bench_->setEnabled(record_->isEnabled());
    arrange(offered);
    wordControls();
    accentNext();
    const models::Marked standing = models::markOf(order);
    QStringList words{standing.word,
                      models::waitingWords(order, standing.mark, desk().laboratory.now())};
    if (!why.isEmpty()) words += why;
    words.removeAll(QString{});
    standing_->say(standing.mark, words.join(QStringLiteral(" · ")));
}

/// Only what belongs to the state of the order is there to be pressed.
void OrderRoom::arrange(const std::vector<Offer>& offered) {
    const domain::Order& order = view_->order;
    std::vector<std::pair<ActionButton*, bool>> all;
    constexpr std::size_t kOthers = 3;
    all.reserve(offered.size() + kOthers);
    for (const Offer& offer : offered) all.emplace_back(offer.button, offer.isShown);
    const bool asked = !order.flags.empty() || blocks(order.revision.findings);
    all.emplace_back(printSheet_, true);
    all.emplace_back(printQuestions_, asked);
    all.emplace_back(seeRecord_, isAtBench());
    int place = 0;
    for (const auto& [button, isShown] : all) {
        controls_->removeWidget(button);
        if (isShown) {
            controls_->addWidget(button, place / kControlColumns, place % kControlColumns);
            ++place;
        }
        button->setVisible(isShown);
    }
}

void OrderRoom::wordControls() {
    const domain::StageStep* step = due();
    const QString stage = step == nullptr ? QString{} : models::spoken(step->stage);
    start_->say(start_->isEnabled() ? tr("Start %1").arg(stage) : tr("Start"));
    finish_->say(tr("Done"));
    send_->say(tr("Send"));
    seeRecord_->say(showsRecord_ ? tr("Bench") : tr("History"));
}

/// One control at most is next: what was ticked is recorded first, and a shut gate is no way on.
void OrderRoom::accentNext() {
    if (!view_) return;
    const bool record = bench_->isPending() || !lacking_.empty();
    const bool onlyStatement = lacking_.size() == 1 && lacking_.front().rule == "gate.statement";
    const std::pair<ActionButton*, bool> inTurn[] = {
        {accept_, true},
        {answer_, waitsFor(view_->order) == domain::WaitsFor::Dentist},
        {start_, true},
        {takeBack_, true},
        {statement_, onlyStatement && !bench_->isPending()},
        {record_, record},
        {send_, true},
        {finish_, true},
        {makeAgain_, view_->order.remakeDue}};
    ActionButton* next = nullptr;
    for (const auto& [button, isDue] : inTurn) {
        button->setNext(false);
        if (next == nullptr && isDue && !button->isHidden() && button->isEnabled()) next = button;
    }
    if (next != nullptr) next->setNext(true);
}

}  // namespace desktop
