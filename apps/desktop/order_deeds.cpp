/// What a person does in the room of an order: each asks what it must, acts, and shows what came.
#include <algorithm>

#include "apps/actions/examination.h"
#include "apps/actions/statements.h"
#include "apps/desktop/models/words.h"
#include "apps/desktop/order_room.h"
#include "domain/rules/rule.h"

namespace desktop {

using models::Mark;

bool OrderRoom::took(const domain::Result<actions::Outcome>& outcome) {
    if (!outcome) {
        notice_->refuse(outcome.error());
        lookAgain();
        takeFocus();
        return false;
    }
    notice_->beQuiet();
    lookAgain();
    takeFocus();
    notice_->say(Mark::Done, models::text(view_->history.back().says) + QLatin1Char{'.'});
    return true;
}

void OrderRoom::start() {
    showsRecord_ = false;
    if (took(actions::start(desk().laboratory, {number()}, {}, who()))) bench_->focusFirst();
}

bool OrderRoom::record() {
    const models::BenchAnswer answer = bench_->answer();
    if (!answer.trouble.isEmpty()) {
        notice_->say(Mark::Refused, answer.trouble);
        bench_->focusLine(*answer.line);
        return false;
    }
    if (answer.records.empty()) {
        notice_->say(Mark::Asked, tr("Tick or fill in what was done, then record it."));
        bench_->focusFirst();
        return false;
    }
    const auto kept = actions::record(desk().laboratory, number(), {}, answer.records, who());
    if (kept) bench_->forget();
    if (!took(kept)) return false;
    bench_->focusFirst();
    return true;
}

/// What was ticked or typed is never left behind by going on.
void OrderRoom::recordThen(const std::function<void()>& next) {
    if (bench_->isPending() && !record()) return;
    next();
}

void OrderRoom::finish() {
    recordThen([this] { took(actions::finish(desk().laboratory, {number()}, {}, who())); });
}

void OrderRoom::send() {
    recordThen([this] { took(actions::start(desk().laboratory, {number()}, {}, who())); });
}

void OrderRoom::scan() {
    const auto scanned = actions::scan(desk().laboratory, number(), who());
    showsRecord_ = false;
    if (!took(scanned)) return;
    if (scanned->repeated) notice_->say(Mark::Done, tr("Scanned already; nothing happened twice."));
    if (isAtBench()) bench_->focusFirst();
}

void OrderRoom::takeBack() {
    const auto returned = desk().dialogs.takeBack(planOf(view_->order, due()->stage).fallBack);
    if (returned) took(actions::takeReturn(desk().laboratory, {number()}, *returned, who()));
}

void OrderRoom::again() {
    std::vector<domain::Stage> from = planOf(view_->order, due()->stage).fallBack;
    if (due()->status == domain::StageStatus::InHand) from.push_back(due()->stage);
    if (const auto given = desk().dialogs.again(from))
        took(actions::redo(desk().laboratory, number(), given->reason, given->from, {}, given->note,
                           who()));
}

void OrderRoom::makeAgain() {
    const auto given = desk().dialogs.makeAgain();
    if (!given) return;
    const auto made =
        actions::remake(desk().laboratory, number(), given->reason, {}, given->note, who());
    if (!made) return notice_->refuse(made.error());
    emit orderWanted(made->order.number);
}

void OrderRoom::issueStatement() {
    const auto declared = desk().dialogs.statement();
    if (!declared) return;
    if (const auto password = desk().dialogs.password(tr("Issue the statement").toStdString()))
        took(actions::issueStatement(desk().laboratory, number(), *declared,
                                     actions::proving(who(), *password)));
}

void OrderRoom::flag() {
    if (const auto given = desk().dialogs.flag())
        took(actions::flag(desk().laboratory, number(), given->reason, given->note, who()));
}

void OrderRoom::answer() {
    std::vector<domain::Finding> refusals;
    for (const domain::Finding& finding : view_->order.revision.findings)
        if (refuses(finding) && mayBeKept(finding)) refusals.push_back(finding);
    const auto given = desk().dialogs.answer(refusals, notationOf(view_->prescription));
    if (!given) return;
    std::optional<domain::Prescription> prescription;
    if (given->file) {
        auto read = actions::readPrescription(*given->file);
        if (!read) return notice_->refuse(read.error());
        prescription = *std::move(read);
    }
    took(actions::answer(desk().laboratory, number(),
                         {.words = given->words,
                          .prescription = std::move(prescription),
                          .takes = {},
                          .keeps = given->keeps},
                         who()));
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
    took(actions::accept(desk().laboratory, number(), reason, who()));
}

void OrderRoom::print(actions::Paper paper) {
    const auto printed = actions::print(desk().laboratory, number(), paper, {}, who());
    if (!printed) return notice_->refuse(printed.error());
    notice_->say(Mark::Done, tr("Printed to %1.").arg(models::text(printed->string())));
    desk().dialogs.show(*printed);
}

}  // namespace desktop
