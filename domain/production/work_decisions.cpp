#include <algorithm>

#include "domain/production/bench_words.h"
#include "domain/production/decisions.h"

namespace domain {
namespace {

using Happenings = std::vector<Happening>;
using Objection = std::optional<Error>;

/// What is away can come back while a question stands; nothing else goes on then.
Objection notInWork(const Order& order) {
    if (order.status == OrderStatus::InWork) return {};
    return standstill(order);
}

bool isAtPractice(Stage stage) { return rowOf(stage).kind == StageKind::AtPractice; }

std::string byAndSince(const StageStep& step) {
    return "by " + step.person->text() + " since " + step.since->text();
}

/// A stage somebody names that is not the one due: why not, with by whom and when.
Error notDue(const Order& order, Stage stage, const StageStep& due, std::string_view cannot) {
    const auto named = std::ranges::find(order.steps, stage, &StageStep::stage);
    if (named == order.steps.end())
        return refused(order, wordsOf(stage) + " is not a stage of its route");
    if (named->status == StageStatus::Done)
        return refused(order, wordsOf(stage) + " was done already, by " + named->person->text() +
                                  ", " + named->since->text());
    return refused(order, wordsOf(stage) + ' ' + std::string{cannot} + wordsOf(due.stage));
}

Objection awayElsewhere(const Order& order, const StageStep& due) {
    if (!due.away) return {};
    return refused(
        order, wordsOf(due.stage) + " is at site " + due.madeAt->text() + "; take it back first");
}

/// Who may work a stage: somebody who works here and has learnt it.
Objection unskilled(const Deciding& deciding, Stage stage) {
    const Occasion& occasion = deciding.occasion;
    const Person* person = occasion.workshop.worker(occasion.person);
    if (person == nullptr)
        return refused(deciding.order, occasion.person.text() + " does not work here");
    const Skill skill = planOf(deciding.order, stage).skill;
    if (person->has(skill)) return {};
    return refused(deciding.order, wordsOf(stage) + " asks for the skill " + wordsOf(skill) +
                                       ", and " + occasion.person.text() + " has not got it");
}

Objection gateIsShut(const Deciding& deciding, Stage stage) {
    const Occasion& occasion = deciding.occasion;
    const auto lacking = lackingAt({deciding.order, stage, occasion.workshop, occasion.person,
                                    occasion.at.day(), occasion.legal});
    if (lacking.empty()) return {};
    return refused(deciding.order, wordsOf(stage) + " lacks: " +
                                       listed(lacking, notationOf(deciding.order.prescription())));
}

/// Why a record cannot be kept, by its kind; and what the laboratory knows about it filled in.
struct Admission {
    const Deciding& deciding;
    const StagePlan& plan;

    Objection operator()(const Ticked& record) const {
        if (std::ranges::count(plan.checklist, record.item) > 0) return {};
        return no('"' + record.item + "\" is not on the checklist of " + wordsOf(plan.stage));
    }
    Objection operator()(const UndercutMeasured& record) const {
        if (record.tooth.arch() == deciding.order.prescription().arch) return {};
        return no("tooth " + record.tooth.text() + " is in the other arch");
    }
    Objection operator()(const TripodMarked&) const { return {}; }
    Objection operator()(const LotUsed& record) const {
        const auto& lots = deciding.occasion.workshop.lots;
        const auto lot = lots.find(record.lot);
        if (lot == lots.end()) return no("there is no lot " + record.lot.text());
        if (lot->second.lot.kind != record.kind)
            return no("lot " + record.lot.text() + " is " + wordsOf(lot->second.lot.kind) +
                      ", not " + wordsOf(record.kind));
        const auto why = unsuitable(lot->second, record.amount, deciding.order.prescription(),
                                    deciding.occasion.at.day());
        return why ? no("lot " + record.lot.text() + " is refused: " + *why) : Objection{};
    }
    Objection operator()(const NewMetal& record) const {
        const bool within = 0_ppm <= record.share && record.share <= 1'000'000_ppm;
        return within ? Objection{} : no("a share of new metal from 0 to 100 % was expected");
    }
    Objection operator()(const CastWeighed& record) const {
        return record.mass.count() > 0 ? Objection{} : no("a mass above 0 g was expected");
    }
    Objection operator()(const TeethSet& record) const {
        const bool whole = !record.mould.empty() && !record.guide.empty() && !record.tab.empty();
        if (!whole) return no("mould, shade guide and tab of the teeth were expected");
        const Prescription& asked = deciding.order.prescription();
        const auto isAsked = [&](const std::string& word) {
            return asked.teeth.mould == word ||
                   std::ranges::any_of(asked.shades, [&](const Shade& shade) {
                       return shade.guide == word || shade.tab == word;
                   });
        };
        for (const std::string* word : {&record.mould, &record.guide, &record.tab})
            if (!isAsked(*word))
                if (auto strange = strangeIn(*word)) return strange;
        return {};
    }
    Objection operator()(const CureLogged&) const { return {}; }
    Objection operator()(const Disinfected& record) const {
        const bool whole =
            !record.disinfection.agent.empty() && record.disinfection.contact.count() > 0;
        if (!whole) return no("the disinfectant and its minutes of contact were expected");
        return strangeIn(record.disinfection.agent);
    }
    Objection operator()(const EquipmentUsed& record) const {
        const auto& all = deciding.occasion.workshop.equipment;
        const auto found = all.find(record.equipment);
        if (found == all.end()) return no("there is no equipment " + record.equipment.text());
        if (found->second.kind != record.kind)
            return no(record.equipment.text() + " is a " + wordsOf(found->second.kind) +
                      ", not a " + wordsOf(record.kind));
        if (record.responsibility && !mayTakeResponsibility())
            return no(record.equipment.text() + ": responsibility for it is taken by: " +
                      rolesThatMay(Permission::TakeResponsibility));
        const auto& due = found->second.calibrationDue;
        if (!due || deciding.occasion.at.day() <= *due || record.responsibility) return {};
        return no(record.equipment.text() + ": its calibration was due on " + due->text() +
                  "; have it calibrated, or let a manager take responsibility in writing");
    }
    Objection operator()(const BenchValue& record) const {
        const bool whole = !record.what.empty() && !record.value.empty();
        if (!whole) return no("what was measured, and its value, were expected");
        return strangeIn(record.what + ' ' + record.value);
    }
    Objection operator()(const StatementIssued&) const {
        return plan.stage == Stage::Delivery ? Objection{}
                                             : no("the statement is issued at delivery");
    }

private:
    Objection no(std::string why) const { return refused(deciding.order, std::move(why)); }
    Objection strangeIn(const std::string& text) const {
        const std::string word = strangeWordIn(text);
        return word.empty() ? Objection{} : no(strangeWordSentence(word));
    }
    bool mayTakeResponsibility() const {
        const Person* person = deciding.occasion.workshop.worker(deciding.occasion.person);
        return person != nullptr && may(person->role, Permission::TakeResponsibility);
    }
};

/// Several uses of one lot in one command must fit into what is left of it together.
Objection tooMuchTogether(const Deciding& deciding, const std::vector<StageRecord>& records) {
    std::map<ThingCode, std::int64_t> taken;
    for (const StageRecord& record : records) {
        const auto* use = std::get_if<LotUsed>(&record);
        if (use == nullptr) continue;
        const KeptLot& lot = deciding.occasion.workshop.lots.at(use->lot);
        std::int64_t& together = taken[use->lot];
        together += use->amount;
        if (together > lot.left())
            return refused(deciding.order, "lot " + use->lot.text() + ": only " +
                                               amountText(lot.lot.kind, lot.left()) +
                                               " of it are left");
    }
    return {};
}

}  // namespace

Decision decideOn(const Deciding& deciding, const Start& command) {
    const Order& order = deciding.order;
    if (auto error = standstill(order)) return *std::move(error);
    const StageStep& due = *currentStep(order);
    const Stage stage = command.stage.value_or(due.stage);
    if (stage != due.stage) return notDue(order, stage, due, "cannot start: the stage due is ");
    if (auto error = awayElsewhere(order, due)) return *std::move(error);
    if (due.status == StageStatus::InHand)
        return refused(order, wordsOf(due.stage) + " is in hand already, " + byAndSince(due));
    if (auto error = unskilled(deciding, stage)) return *std::move(error);
    if (isAtPractice(stage))
        if (auto error = gateIsShut(deciding, stage)) return *std::move(error);
    return Happenings{StageStarted{stage}};
}

Decision decideOn(const Deciding& deciding, const Finish& command) {
    const Order& order = deciding.order;
    if (auto error = standstill(order)) return *std::move(error);
    const StageStep& due = *currentStep(order);
    const Stage stage = command.stage.value_or(due.stage);
    if (stage != due.stage) return notDue(order, stage, due, "is not in hand: the stage due is ");
    if (auto error = awayElsewhere(order, due)) return *std::move(error);
    if (due.status != StageStatus::InHand)
        return refused(order, wordsOf(stage) + " is not in hand: start it first");
    if (isAtPractice(stage))
        return refused(order, wordsOf(stage) + " is at the practice: record its return");
    if (auto error = unskilled(deciding, stage)) return *std::move(error);
    if (auto error = gateIsShut(deciding, stage)) return *std::move(error);
    return Happenings{StageDone{stage}};
}

Decision decideOn(const Deciding& deciding, const Record& command) {
    const Order& order = deciding.order;
    if (auto error = standstill(order)) return *std::move(error);
    const StageStep& due = *currentStep(order);
    const Stage stage = command.stage.value_or(due.stage);
    if (stage != due.stage)
        return notDue(order, stage, due, "cannot be recorded now: the stage due is ");
    if (auto error = awayElsewhere(order, due)) return *std::move(error);
    const bool leaving = isAtPractice(stage) && due.status == StageStatus::ToDo;
    const bool inHand = !isAtPractice(stage) && due.status == StageStatus::InHand;
    if (!leaving && !inHand)
        return refused(order, isAtPractice(stage)
                                  ? wordsOf(stage) + " is at the practice: record its return"
                                  : wordsOf(stage) + " is not in hand: start it first");
    if (command.records.empty()) return refused(order, "nothing to record was given");
    const StagePlan plan = planOf(order, stage);
    for (const StageRecord& record : command.records)
        if (auto error = std::visit(Admission{deciding, plan}, record)) return *std::move(error);
    if (auto error = tooMuchTogether(deciding, command.records)) return *std::move(error);
    return Happenings{Recorded{stage, command.records}};
}

Decision decideOn(const Deciding& deciding, const TakeReturn& command) {
    const Order& order = deciding.order;
    if (auto error = notInWork(order)) return *std::move(error);
    const StageStep& due = *currentStep(order);
    if (!isAtPractice(due.stage) || due.status != StageStatus::InHand || order.remakeDue)
        return refused(order, "nothing of it is at the practice");
    if (command.disinfection.agent.empty() || command.disinfection.contact.count() <= 0)
        return refused(
            order, "what comes back is disinfected first: with what, and for how many minutes?");
    if (const std::string word = strangeWordIn(command.disinfection.agent); !word.empty())
        return refused(order, strangeWordSentence(word));
    if ((command.verdict == ReturnVerdict::GoBack) != command.backTo.has_value())
        return refused(order,
                       "a stage to go back to belongs to the verdict \"go-back\" and only "
                       "to that");
    if (command.verdict != ReturnVerdict::GoOn && !command.findings)
        return refused(order, "what the dentist found was expected");
    if (command.backTo &&
        std::ranges::count(planOf(order, due.stage).fallBack, *command.backTo) == 0)
        return refused(order, "from " + wordsOf(due.stage) + " work cannot go back to " +
                                  wordsOf(*command.backTo));
    return Happenings{Returned{due.stage, command.verdict, command.backTo, command.findings,
                               command.disinfection}};
}

Decision decideOn(const Deciding& deciding, const Redo& command) {
    const Order& order = deciding.order;
    if (auto error = standstill(order)) return *std::move(error);
    const StageStep& due = *currentStep(order);
    if (auto error = awayElsewhere(order, due)) return *std::move(error);
    if (isAtPractice(due.stage) && due.status == StageStatus::InHand)
        return refused(order, wordsOf(due.stage) + " is at the practice: record its return");
    const bool itself = command.from == due.stage && due.status == StageStatus::InHand;
    if (!itself && std::ranges::count(planOf(order, due.stage).fallBack, command.from) == 0)
        return refused(order, "from " + wordsOf(due.stage) + " work cannot begin again at " +
                                  wordsOf(command.from));
    const Stage fault = command.fault.value_or(command.from);
    if (std::ranges::count(order.steps, fault, &StageStep::stage) == 0)
        return refused(order, wordsOf(fault) + " is not a stage of its route");
    if (command.reason == RedoReason::Other && !command.note)
        return refused(order, "the reason \"other\" needs a note");
    return Happenings{Redone{command.reason, command.from, fault, command.note}};
}

Decision decideOn(const Deciding& deciding, const SendWork& command) {
    const Order& order = deciding.order;
    if (auto error = standstill(order)) return *std::move(error);
    const StageStep& due = *currentStep(order);
    if (auto error = awayElsewhere(order, due)) return *std::move(error);
    if (!deciding.occasion.workshop.sites.contains(command.site))
        return refused(order, "there is no site " + command.site.text());
    if (isAtPractice(due.stage) || due.stage == Stage::Receipt || due.stage == Stage::Inspection ||
        due.stage == Stage::Delivery)
        return refused(order, wordsOf(due.stage) + " cannot be worked at another site");
    if (!deciding.occasion.legal || !deciding.occasion.legal->empty())
        return refused(order,
                       "a sub-order needs the legal contents of the prescription: " +
                           (deciding.occasion.legal
                                ? listed(*deciding.occasion.legal, notationOf(order.prescription()))
                                : std::string{"nobody looked at them"}));
    return Happenings{WorkSent{due.stage, command.site}};
}

Decision decideOn(const Deciding& deciding, const TakeWorkBack& command) {
    const Order& order = deciding.order;
    if (auto error = notInWork(order)) return *std::move(error);
    const StageStep& due = *currentStep(order);
    if (!due.away) return refused(order, "nothing of it is at another site");
    if (!command.passed && !command.note)
        return refused(order, "what the inspection found was expected");
    return Happenings{WorkBack{due.stage, command.passed, command.note}};
}

}  // namespace domain
