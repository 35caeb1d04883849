#include <algorithm>
#include <functional>

#include "tests/model/order_model.h"

namespace model {

using namespace domain;
using namespace support;

namespace {

constexpr const char* kPeople[] = {"MK", "MK", "MK", "TE", "IN", "VW"};
const OrderNumber kOther = *OrderNumber::make(26, 7);

struct Choice {
    const Move& move;
    const Model& model;
    const Bench& bench;

    const Facts& facts() const { return model.facts; }
    bool inWork() const { return facts().inWork(); }
    int pick(int count) const { return move.variant % count; }
    std::string person() const { return kPeople[move.who % 6]; }
    bool skilled() const { return person() != "VW"; }
    std::vector<Stage> fallBack() const {
        return inWork() ? planOf(*bench.order, facts().due).fallBack : std::vector<Stage>{};
    }
    Revision revision() const { return bench.order ? bench.order->revision : Revision{}; }
    std::optional<SealedText> words(bool some) const {
        return some ? std::optional{sealedWords()} : std::nullopt;
    }
};

Attempt receive(const Choice& choice) {
    const auto happens = [](Model& model, const Attempt& attempt) {
        model.facts = {.route = static_cast<Route>(attempt.number)};
        if (const auto& got = std::get<Receive>(attempt.command); got.replaces) ++model.version;
    };
    const Route route = enumCodes<Route>[static_cast<std::size_t>(choice.pick(9))].value;
    const Arch arch = choice.move.who % 2 == 0 ? Arch::Upper : Arch::Lower;
    Prescription made;
    made.arch = arch;
    const Prescription full = prescriptionOn(route, arch);
    made.appliance = full.appliance;
    made.framework = full.framework;
    made.alteredCast = full.alteredCast;
    made.remake = full.remake;
    made.base = full.base;
    made.shades = full.shades;
    made.clasps = {full.clasps.front()};
    const bool again = made.remake.has_value();
    return {"receive",
            Receive{*OrderNumber::make(26, 1),
                    {made, {"P00001", "D00001", sealedWords()}, {}},
                    again ? std::optional{kOther} : std::nullopt},
            !choice.facts().exists,
            happens,
            "MK",
            0,
            again ? 2 : 1,
            static_cast<int>(route)};
}

Attempt accept(const Choice& choice) {
    const Facts& facts = choice.facts();
    const bool reason = choice.pick(2) == 0;
    const bool first = facts.exists && facts.status == OrderStatus::Received;
    const bool due = first || (facts.inWork() && facts.caution);
    const bool allowed = due && !facts.missing && !facts.flagged && (reason || !facts.caution);
    const auto happens = [](Model& model, const Attempt&) {
        model.taken.insert(model.cautions.begin(), model.cautions.end());
        if (model.facts.status != OrderStatus::Received) return;
        model.facts.status = OrderStatus::InWork;
        for (const Stage stage : stagesWrittenOut(model.facts.route))
            model.stages.push_back({.stage = stage});
    };
    return {reason ? "accept with a reason" : "accept",
            Accept{choice.words(reason)},
            allowed,
            happens,
            "MK",
            0,
            first ? 2 : 1};
}

/// The due stage by name, the next by name, or none named.
std::pair<std::optional<Stage>, bool> named(const Choice& choice) {
    const int which = choice.pick(8);
    if (!choice.inWork() || which > 1) return {std::nullopt, true};
    if (which == 0) return {choice.facts().due, true};
    const std::size_t next = choice.model.at + 1;
    if (next >= choice.model.stages.size()) return {std::nullopt, true};
    return {choice.model.stages[next].stage, false};
}

Attempt start(const Choice& choice) {
    const auto [stage, right] = named(choice);
    const auto happens = [](Model& model, const Attempt& attempt) {
        model.due().progress = Progress::InHand;
        model.due().hands.insert(attempt.person);
        model.facts.where =
            isAtPractice(model.facts.due) ? Whereabouts::AtPractice : Whereabouts::InHand;
    };
    return {right ? "start" : "start another stage", Start{stage},
            right && choice.skilled() && mayStart(choice.facts()), happens, choice.person()};
}

Attempt finish(const Choice& choice) {
    const auto [stage, right] = named(choice);
    const Facts& facts = choice.facts();
    const bool inspects = facts.due == Stage::Inspection && choice.inWork();
    const bool own = inspects && choice.model.isMaker(choice.person());
    const auto happens = [](Model& model, const Attempt& attempt) {
        model.due().progress = Progress::Done;
        model.due().hands.insert(attempt.person);
        if (model.facts.due == Stage::Inspection) model.inspectedBy = attempt.person;
        if (model.facts.due == Stage::Delivery) model.facts.status = OrderStatus::Delivered;
    };
    std::string name = right ? "finish" : "finish another stage";
    if (right && inspects) name = own ? "inspect one's own work" : "inspect";
    return {name, Finish{stage}, right && !own && choice.skilled() && mayFinish(facts), happens,
            choice.person()};
}

/// How much of each lot the records take.
std::map<LotKind, std::int64_t> lotsIn(const std::vector<StageRecord>& records) {
    std::map<LotKind, std::int64_t> lots;
    for (const StageRecord& record : records)
        if (const auto* use = std::get_if<LotUsed>(&record)) lots[use->kind] += use->amount;
    return lots;
}

void isRecorded(Model& model, const Attempt& attempt) {
    const auto& records = std::get<Record>(attempt.command).records;
    for (const auto& [kind, amount] : lotsIn(records)) model.left[kind] -= amount;
    model.records += static_cast<int>(records.size());
    model.due().hands.insert(attempt.person);
    if (attempt.number == 1) model.due().complete = true;
}

Attempt record(const Choice& choice) {
    const int which = choice.pick(4);
    std::vector<StageRecord> records{BenchValue{"humidity", "40 %"}};
    std::string name = "record a value";
    if (which == 1) {
        records = {LotUsed{lotOn(LotKind::Wire), LotKind::Wire, choice.move.minutes + 700}};
        name = "record a lot";
    } else if (which > 1 && choice.inWork()) {
        records = everythingFor(*choice.bench.order, choice.facts().due);
        name = "record everything";
    }
    const auto lots = lotsIn(records);
    const bool enough = std::ranges::all_of(lots, [&](const auto& lot) {
        return lot.second > 0 && lot.second <= choice.model.left.at(lot.first);
    });
    const bool everything = name == "record everything";
    return {name,        Record{{}, records}, enough && mayRecord(choice.facts()),
            &isRecorded, choice.person(),     0,
            1,           everything ? 1 : 0};
}

Attempt flag(const Choice& choice) {
    const auto happens = [](Model& model, const Attempt&) { ++model.questions; };
    return {"flag", Flag{FlagReason::CastDamaged, choice.words(choice.pick(2) == 0)},
            isOpen(choice.facts()), happens, choice.person()};
}

/// A change of the prescription an answer brings, and what it undoes.
struct AnswerKind {
    const char* name;
    void (*change)(Revision&, int);
    bool sameMaking{true};
    bool sameArch{true};
    std::optional<Stage> undoes{};
};

const AnswerKind kAnswers[] = {
    {"answer with the same", [](Revision& r, int) { r.findings.clear(); }},
    {"answer and leave something missing",
     [](Revision& r, int) {
         r.findings = {{.rule = "survey.present", .severity = Severity::Missing}};
     }},
    {"answer and bring a caution",
     [](Revision& r, int number) {
         r.findings = {
             {.rule = "caution." + std::to_string(number % 5), .severity = Severity::Caution}};
     }},
    {"answer with another shade",
     [](Revision& r, int number) {
         r.findings.clear();
         r.prescription.shades = {{.guide = "A-D scale", .tab = "S" + std::to_string(number)}};
     },
     true, true, Stage::ToothSetUp},
    {"answer with another design",
     [](Revision& r, int number) {
         r.findings.clear();
         r.prescription.survey.lingualDepth = Microns::of(7000 + number);
     },
     true, true, Stage::Survey},
    {"answer about the other arch",
     [](Revision& r, int) {
         r.prescription.arch = r.prescription.arch == Arch::Upper ? Arch::Lower : Arch::Upper;
     },
     true, false},
    {"answer with another way of making",
     [](Revision& r, int) {
         const bool relined = r.prescription.appliance == Appliance::Reline;
         r.prescription.appliance = relined ? Appliance::Repair : Appliance::Reline;
     },
     false},
};

void isRevised(Model& model, const Attempt& attempt) {
    const Revision& revision = *std::get<Answer>(attempt.command).revision;
    model.questions = 0;
    model.facts.missing = false;
    model.cautions.clear();
    for (const Finding& finding : revision.findings) {
        if (finding.severity == Severity::Missing) model.facts.missing = true;
        if (finding.severity == Severity::Caution) model.cautions.insert(finding.rule);
    }
    model.facts.found = !revision.findings.empty();
    const auto& undoes = kAnswers[attempt.number].undoes;
    if (undoes && !model.stages.empty()) model.undoFrom(*undoes);
}

Attempt answerWords(const Choice& choice) {
    const bool words = choice.pick(2) == 0;
    const auto happens = [](Model& model, const Attempt&) { model.questions = 0; };
    return {words ? "answer in words" : "answer nothing", Answer{choice.words(words), {}},
            words && isOpen(choice.facts()) && choice.facts().flagged, happens};
}

Attempt answer(const Choice& choice) {
    const int which = choice.pick(9);
    if (which > 6 || !choice.facts().exists) return answerWords(choice);
    const AnswerKind& kind = kAnswers[which];
    Revision revision = choice.revision();
    kind.change(revision, choice.model.version);
    // A way of making that is not accepted yet may change; the model keeps to the one it has.
    const bool allowed = mayRevise(choice.facts()) && kind.sameArch && kind.sameMaking;
    if (!kind.sameMaking && choice.facts().status == OrderStatus::Received)
        return answerWords(choice);
    return {kind.name, Answer{{}, std::move(revision)}, allowed, &isRevised, "MK", 0, 1, which};
}

Attempt takeReturn(const Choice& choice) {
    const int which = choice.pick(6);
    const auto back = choice.fallBack();
    const bool goesBack = which == 1 && !back.empty();
    const bool remake = which == 2;
    const auto verdict = goesBack ? ReturnVerdict::GoBack
                         : remake ? ReturnVerdict::Remake
                                  : ReturnVerdict::GoOn;
    const bool clean = which != 3;
    const auto stage = goesBack ? std::optional{back.front()} : std::nullopt;
    const auto happens = [](Model& model, const Attempt& attempt) {
        const auto& taken = std::get<TakeReturn>(attempt.command);
        model.facts.where = Whereabouts::InHand;
        model.facts.remakeDue = taken.verdict == ReturnVerdict::Remake;
        if (model.facts.remakeDue) return;
        model.due().progress = Progress::Done;
        if (taken.backTo) model.undoFrom(*taken.backTo);
    };
    std::string name = "back, " + spoken(codeOf(verdict));
    if (!clean) name = "back without disinfection";
    return {name,
            TakeReturn{verdict, stage, choice.words(verdict != ReturnVerdict::GoOn),
                       clean ? properDisinfection() : Disinfection{}},
            clean && isBack(choice.facts()), happens};
}

Attempt redo(const Choice& choice) {
    const auto back = choice.fallBack();
    const bool itself = choice.pick(2) == 0 || back.empty();
    const Facts& facts = choice.facts();
    const Stage from =
        itself ? facts.due : back[static_cast<std::size_t>(choice.move.who) % back.size()];
    const bool inHand = facts.where == Whereabouts::InHand;
    const auto happens = [](Model& model, const Attempt& attempt) {
        model.undoFrom(std::get<Redo>(attempt.command).from);
    };
    return {itself ? "redo this stage" : "redo from an earlier stage",
            Redo{RedoReason::Porosity, from, {}, {}}, mayGoBack(facts) && (!itself || inHand),
            happens, choice.person()};
}

Attempt remake(const Choice& choice) {
    const auto happens = [](Model& model, const Attempt&) {
        if (model.facts.status != OrderStatus::Delivered) model.facts.status = OrderStatus::Remade;
        model.facts.replaced = true;
        model.facts.remakeDue = false;
    };
    return {"order a remake", OrderRemake{kOther, RemakeReason::Fractured, {}, {}},
            mayRemake(choice.facts()), happens};
}

Attempt joinCase(const Choice& choice) {
    const bool same = choice.pick(3) != 0;
    const auto happens = [](Model& model, const Attempt&) { model.joined = true; };
    return {same ? "join a case" : "join the case of another patient",
            JoinCase{kOther, {same ? "P00001" : "P00002", "D00001", {}}},
            same && isOpen(choice.facts()) && !choice.model.joined, happens};
}

Attempt sendWork(const Choice& choice) {
    const auto happens = [](Model& model, const Attempt&) {
        model.due().progress = Progress::InHand;
        model.facts.where = Whereabouts::AtSite;
    };
    return {"send to a site", SendWork{thing("CAST-SHOP")}, maySend(choice.facts()), happens};
}

Attempt takeWorkBack(const Choice& choice) {
    const bool passed = choice.pick(2) == 0;
    const auto happens = [](Model& model, const Attempt& attempt) {
        model.facts.where = Whereabouts::InHand;
        if (!std::get<TakeWorkBack>(attempt.command).passed) {
            ModelStage& due = model.due();
            due = {.stage = due.stage, .attempt = due.attempt + 1};
        }
    };
    return {passed ? "back from the site, passed" : "back from the site, failed",
            TakeWorkBack{passed, choice.words(!passed)}, isAtSite(choice.facts()), happens};
}

Attempt withdraw(const Choice& choice) {
    const bool reason = choice.pick(4) == 0;
    const auto happens = [](Model& model, const Attempt&) {
        model.facts.status = OrderStatus::Withdrawn;
    };
    return {reason ? "withdraw" : "withdraw for no reason", Withdraw{choice.words(reason)},
            reason && isOpen(choice.facts()), happens};
}

Attempt purge(const Choice& choice) {
    constexpr std::int64_t kLong = 60LL * 366;
    const bool late = choice.pick(2) == 0;
    const Facts& facts = choice.facts();
    const auto happens = [](Model& model, const Attempt&) { model.facts.purged = true; };
    return {late ? "purge long after" : "purge at once",
            Purge{{retentionTerms().begin(), retentionTerms().end()}},
            late && facts.exists && facts.closed() && !facts.purged,
            happens,
            "MK",
            late ? kLong : 0};
}

/// What brings the order on, if anything does.
Attempt goOn(const Choice& choice) {
    const Facts& facts = choice.facts();
    const auto by = [&](Attempt (*make)(const Choice&), int variant, int who) {
        const Move move{.variant = variant, .who = who, .minutes = choice.move.minutes};
        return make(Choice{move, choice.model, choice.bench});
    };
    if (!facts.exists) return receive(choice);
    if (facts.flagged) return by(answerWords, 0, 0);
    if (facts.missing) return by(answer, 0, 0);
    if (facts.caution || !facts.inWork()) return by(accept, 0, 0);
    if (facts.remakeDue) return by(remake, 0, 0);
    if (facts.where == Whereabouts::AtSite) return by(takeWorkBack, 0, 0);
    if (facts.where == Whereabouts::AtPractice) return by(takeReturn, 0, 0);
    if (isAtPractice(facts.due) && !facts.complete) return by(record, 2, 0);
    // Somebody inspects who did not make it: IN, or TE, if there is such a one.
    const int who = facts.due != Stage::Inspection ? choice.move.who % 4
                    : choice.model.isMaker("IN")   ? 3
                                                   : 4;
    if (facts.where == Whereabouts::ToDo) return by(start, 2, who);
    return facts.complete ? by(finish, 2, who) : by(record, 2, who);
}

using Make = Attempt (*)(const Choice&);
constexpr Make kMoves[] = {
    goOn,       goOn, goOn,     goOn,         goOn,   goOn,     goOn,    goOn,     goOn,   goOn,
    goOn,       goOn, goOn,     goOn,         start,  finish,   record,  flag,     answer, answer,
    takeReturn, redo, sendWork, takeWorkBack, accept, joinCase, receive, withdraw, purge,  remake};

}  // namespace

Attempt attemptOf(const Move& move, const Model& model, const Bench& bench) {
    const std::size_t kind = static_cast<std::size_t>(move.kind) % std::size(kMoves);
    return kMoves[kind](Choice{move, model, bench});
}

Edges everyEdge() {
    Edges edges;
    edges.allowed = {"receive",
                     "accept",
                     "accept with a reason",
                     "start",
                     "finish",
                     "inspect",
                     "record a value",
                     "record a lot",
                     "record everything",
                     "flag",
                     "answer in words",
                     "answer with the same",
                     "answer and leave something missing",
                     "answer and bring a caution",
                     "answer with another shade",
                     "answer with another design",
                     "back, go on",
                     "back, go back",
                     "back, remake",
                     "redo this stage",
                     "redo from an earlier stage",
                     "order a remake",
                     "join a case",
                     "send to a site",
                     "back from the site, passed",
                     "back from the site, failed",
                     "withdraw",
                     "purge long after"};
    edges.refused = edges.allowed;
    edges.refused.insert({"start another stage", "finish another stage", "inspect one's own work",
                          "answer nothing", "answer about the other arch",
                          "answer with another way of making", "back without disinfection",
                          "join the case of another patient", "withdraw for no reason",
                          "purge at once"});
    return edges;
}

}  // namespace model
