// Every command in every state: allowed or refused as the description of the commands in decide.h
// says, by a table of its own.
#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <iostream>
#include <set>

#include "domain/production/evolve.h"
#include "tests/domain/floor_states.h"

namespace {

using namespace domain;
using namespace support;

/// One way to give a command, and the plain words of when it is allowed.
struct Try {
    std::string name;
    EventKind brings{};  ///< the first event when it is allowed
    std::function<std::optional<Command>(const State&)> command;  ///< nullopt: not here
    std::function<bool(const Facts&)> allowed;
    std::string person{"IN"};
    std::int64_t daysLater{};
    std::optional<std::vector<Finding>> legal{std::vector<Finding>{}};
};

const OrderNumber kOther = *OrderNumber::make(26, 7);

auto always(Command command) {
    return [command](const State&) { return std::optional{command}; };
}
bool never(const Facts&) { return false; }

const Order& orderOf(const State& state) { return *state.bench.order; }
bool isWorked(const State& state) { return state.facts.inWork(); }

/// A stage of the route that lies before or after the due one, if there is any.
std::optional<Stage> stageBeside(const State& state, int steps) {
    const auto stages = stagesWrittenOut(state.facts.route);
    const auto at = std::ranges::find(stages, state.facts.due) - stages.begin() + steps;
    if (!isWorked(state) || at < 0 || at >= std::ssize(stages)) return {};
    return stages[static_cast<std::size_t>(at)];
}

std::vector<Stage> fallBackOf(const State& state) {
    return planOf(orderOf(state), state.facts.due).fallBack;
}

/// The farthest stage work may go back to from the due one.
std::optional<Stage> farthestBack(const State& state) {
    if (!isWorked(state) || fallBackOf(state).empty()) return {};
    return fallBackOf(state).front();
}

/// A stage its route has not.
std::optional<Stage> foreignStage(const State& state) {
    const auto stages = stagesWrittenOut(state.facts.route);
    for (const auto& code : enumCodes<Stage>)
        if (state.facts.exists && std::ranges::count(stages, code.value) == 0) return code.value;
    return {};
}

template <typename Given>
auto onStage(std::optional<Stage> (*which)(const State&), Given given) {
    return [which, given](const State& state) -> std::optional<Command> {
        const auto stage = which(state);
        if (!stage) return {};
        return given(*stage);
    };
}
std::optional<Stage> dueStage(const State& state) { return stageBeside(state, 0); }
std::optional<Stage> stageBefore(const State& state) { return stageBeside(state, -1); }
std::optional<Stage> stageAfter(const State& state) { return stageBeside(state, 1); }

std::vector<Try> benchTries() {
    return {
        {"start", EventKind::StageStarted, always(Start{}), mayStart},
        {"start the due stage by name", EventKind::StageStarted,
         onStage(dueStage, [](Stage stage) { return Start{stage}; }), mayStart},
        {"start the stage before",
         {},
         onStage(stageBefore, [](Stage s) { return Start{s}; }),
         never},
        {"start the stage after", {}, onStage(stageAfter, [](Stage s) { return Start{s}; }), never},
        {"start a stage it has not",
         {},
         onStage(foreignStage, [](Stage s) { return Start{s}; }),
         never},
        {"start without a skill", {}, always(Start{}), never, "VW"},
        {"start by one who left", {}, always(Start{}), never, "GO"},
        {"start by a stranger", {}, always(Start{}), never, "XX"},
        {"finish", EventKind::StageDone, always(Finish{}), mayFinish},
        {"finish the due stage by name", EventKind::StageDone,
         onStage(dueStage, [](Stage stage) { return Finish{stage}; }), mayFinish},
        {"finish the stage before",
         {},
         onStage(stageBefore, [](Stage s) { return Finish{s}; }),
         never},
        {"finish the stage after",
         {},
         onStage(stageAfter, [](Stage s) { return Finish{s}; }),
         never},
        {"finish without a skill", {}, always(Finish{}), never, "VW"},
        {"finish as the maker of it", EventKind::StageDone, always(Finish{}),
         [](const Facts& facts) { return mayFinish(facts) && facts.due != Stage::Inspection; },
         "MK"},
        {"finish when nobody looked at the law", EventKind::StageDone, always(Finish{}),
         [](const Facts& facts) { return mayFinish(facts) && facts.due != Stage::Delivery; }, "IN",
         0, std::nullopt},
        {"record a value", EventKind::Recorded,
         always(Record{{}, {BenchValue{"humidity", "40 %"}}}), mayRecord},
        {"record what the gate asks", EventKind::Recorded,
         [](const State& state) -> std::optional<Command> {
             if (!isWorked(state)) return {};
             const auto records = everythingFor(orderOf(state), state.facts.due);
             return Record{state.facts.due, records};
         },
         mayRecord},
        {"record nothing", {}, always(Record{}), never},
        {"record at the stage after",
         {},
         onStage(stageAfter, [](Stage s) { return Record{s, {BenchValue{"humidity", "40 %"}}}; }),
         never},
        {"tick what is not on the list",
         {},
         always(Record{{}, {Ticked{"the moon is full"}}}),
         never},
    };
}

/// The prescription the order has, changed.
auto answered(void (*change)(Revision&), bool withWords = false) {
    return [change, withWords](const State& state) -> std::optional<Command> {
        if (!state.facts.exists) return {};
        Revision revision = orderOf(state).revision;
        change(revision);
        return Answer{withWords ? std::optional{sealedWords()} : std::nullopt, revision};
    };
}

std::vector<Try> questionTries() {
    return {
        {"flag", EventKind::Flagged, always(Flag{FlagReason::CastDamaged, {}}), isOpen},
        {"answer nothing", {}, always(Answer{}), never},
        {"answer in words", EventKind::Answered, always(Answer{sealedWords(), {}}),
         [](const Facts& facts) { return isOpen(facts) && facts.flagged; }},
        {"answer with the same again", EventKind::Answered,
         answered([](Revision& revision) { revision.findings.clear(); }), mayRevise},
        {"answer with another shade", EventKind::Answered,
         answered(
             [](Revision& r) { r.prescription.shades = {{.guide = "A-D scale", .tab = "B2"}}; },
             true),
         mayRevise},
        {"answer with another design", EventKind::Answered,
         answered([](Revision& r) { r.prescription.rests.clear(); }), mayRevise},
        {"answer about the other arch",
         {},
         answered([](Revision& r) {
             const bool upper = r.prescription.arch == Arch::Upper;
             r.prescription.arch = upper ? Arch::Lower : Arch::Upper;
         }),
         never},
        {"answer with another way of making", EventKind::Answered, answered([](Revision& r) {
             const bool relined = r.prescription.appliance == Appliance::Reline;
             r.prescription.appliance = relined ? Appliance::Repair : Appliance::Reline;
         }),
         [](const Facts& f) { return mayRevise(f) && f.status == OrderStatus::Received; }},
        {"answer with an altered cast more or less", EventKind::Answered, answered([](Revision& r) {
             r.prescription.alteredCast = !r.prescription.alteredCast.value_or(false);
         }),
         [](const Facts& f) { return mayRevise(f) && f.status == OrderStatus::Received; }},
    };
}

Command returned(ReturnVerdict verdict, std::optional<Stage> to, bool withFindings) {
    return TakeReturn{verdict, to, withFindings ? std::optional{sealedWords()} : std::nullopt,
                      properDisinfection()};
}

std::vector<Try> returnTries() {
    using enum ReturnVerdict;
    return {
        {"back, go on", EventKind::Returned, always(returned(GoOn, {}, false)), isBack},
        {"back without disinfection", {}, always(TakeReturn{}), never},
        {"back, to be made again", EventKind::Returned, always(returned(Remake, {}, true)), isBack},
        {"back, to be made again, no findings", {}, always(returned(Remake, {}, false)), never},
        {"back, go back", EventKind::Returned,
         onStage(farthestBack, [](Stage stage) { return returned(GoBack, stage, true); }), isBack},
        {"back, go back, no findings",
         {},
         onStage(farthestBack, [](Stage stage) { return returned(GoBack, stage, false); }),
         never},
        {"back, go back nowhere", {}, always(returned(GoBack, {}, true)), never},
        {"back, go on to a stage",
         {},
         onStage(farthestBack, [](Stage stage) { return returned(GoOn, stage, true); }),
         never},
        {"back, go back forwards",
         {},
         onStage(stageAfter, [](Stage stage) { return returned(GoBack, stage, true); }),
         never},
        {"redo the stage in hand", EventKind::Redone,
         onStage(dueStage, [](Stage s) { return Redo{RedoReason::Porosity, s, {}, {}}; }),
         [](const Facts& f) { return mayGoBack(f) && f.where == Whereabouts::InHand; }},
        {"redo from the farthest stage", EventKind::Redone,
         onStage(farthestBack, [](Stage s) { return Redo{RedoReason::PoorFit, s, {}, {}}; }),
         mayGoBack},
        {"redo from the stage after",
         {},
         onStage(stageAfter, [](Stage s) { return Redo{RedoReason::PoorFit, s, {}, {}}; }),
         never},
        {"redo for another reason, no note",
         {},
         onStage(farthestBack, [](Stage s) { return Redo{RedoReason::Other, s, {}, {}}; }),
         never},
        {"redo for another reason, with a note", EventKind::Redone,
         onStage(farthestBack,
                 [](Stage s) { return Redo{RedoReason::Other, s, s, sealedWords()}; }),
         mayGoBack},
        {"redo for the fault of a stage it has not",
         {},
         [](const State& state) -> std::optional<Command> {
             const auto back = farthestBack(state);
             if (!back) return {};
             return Redo{RedoReason::PoorFit, *back, foreignStage(state), {}};
         },
         never},
    };
}

std::vector<Try> siteTries() {
    return {
        {"send to a site", EventKind::WorkSent, always(SendWork{thing("CAST-SHOP")}), maySend},
        {"send nowhere", {}, always(SendWork{thing("NOWHERE")}), never},
        {"send when nobody looked at the law",
         {},
         always(SendWork{thing("CAST-SHOP")}),
         never,
         "IN",
         0,
         std::nullopt},
        {"send while the law asks for more",
         {},
         always(SendWork{thing("CAST-SHOP")}),
         never,
         "IN",
         0,
         std::vector{Finding{.rule = "legal.issued", .found = "no day"}}},
        {"back from the site, passed", EventKind::WorkBack, always(TakeWorkBack{true, {}}),
         isAtSite},
        {"back from the site, failed", EventKind::WorkBack,
         always(TakeWorkBack{false, sealedWords()}), isAtSite},
        {"back from the site, failed, why?", {}, always(TakeWorkBack{false, {}}), never},
    };
}

std::vector<Try> orderTries() {
    constexpr std::int64_t kLong = 60LL * 366;
    const std::vector<RetentionTerm> terms{retentionTerms().begin(), retentionTerms().end()};
    const Parties same{"P00001", "D00001", {}};
    const auto purgeable = [](const Facts& f) { return f.exists && f.closed() && !f.purged; };
    const auto takesCautions = [](const Facts& f) {
        if (f.missing || f.flagged || !isOpen(f) || !f.routed) return false;
        return f.status == OrderStatus::Received || f.caution;
    };
    return {
        {"receive", EventKind::Received, always(Receive{*OrderNumber::make(26, 1), {}, {}}),
         [](const Facts& facts) { return !facts.exists; }},
        {"accept", EventKind::Accepted, always(Accept{}),
         [takesCautions](const Facts& f) { return takesCautions(f) && !f.caution; }},
        {"accept with a reason", EventKind::Accepted, always(Accept{sealedWords()}), takesCautions},
        {"order a remake", EventKind::RemakeOrdered,
         always(OrderRemake{kOther, RemakeReason::Fractured, {}, {}}), mayRemake},
        {"order a remake for the fault of a stage it has not",
         {},
         onStage(foreignStage,
                 [](Stage s) { return OrderRemake{kOther, RemakeReason::Lost, s, {}}; }),
         never},
        {"join a case", EventKind::CaseJoined, always(JoinCase{kOther, same}), isOpen},
        {"join the case of another patient",
         {},
         always(JoinCase{kOther, {"P00002", "D00001", {}}}),
         never},
        {"join its own case", {}, always(JoinCase{*OrderNumber::make(26, 1), same}), never},
        {"withdraw", EventKind::Withdrawn, always(Withdraw{sealedWords()}), isOpen},
        {"withdraw for no reason", {}, always(Withdraw{}), never},
        {"purge at once", {}, always(Purge{terms}), never},
        {"purge long after", EventKind::Purged, always(Purge{terms}), purgeable, "IN", kLong},
        {"purge by no term", {}, always(Purge{}), never, "IN", kLong},
    };
}

std::vector<Try> everyTry() {
    std::vector<Try> all;
    for (const auto& some :
         {benchTries(), questionTries(), returnTries(), siteTries(), orderTries()})
        all.insert(all.end(), some.begin(), some.end());
    return all;
}

/// Stages are done in order, one at most is in hand, and the order can say how it stands.
void expectSound(const Order& order) {
    bool done = true;
    int inHand = 0;
    for (const StageStep& step : order.steps) {
        EXPECT_TRUE(done || step.status != StageStatus::Done) << codeOf(step.stage);
        done = done && step.status == StageStatus::Done;
        if (step.status == StageStatus::InHand) ++inHand;
        EXPECT_TRUE(!step.away || step.status == StageStatus::InHand);
    }
    EXPECT_LE(inHand, 1);
    EXPECT_FALSE(holdUp(order).empty());
    EXPECT_EQ(isClosed(order), waitsFor(order) == WaitsFor::Nobody);
}

void expectTaken(const State& state, const Try& how, const std::vector<Event>& events) {
    ASSERT_FALSE(events.empty());
    EXPECT_EQ(kindOf(events.front()), how.brings);
    std::optional<Order> order = state.bench.order;
    std::int64_t version = order ? order->version : 0;
    for (const Event& event : events) {
        EXPECT_EQ(event.version, ++version);
        order = evolve(std::move(order), event);
    }
    EXPECT_EQ(order->version, version);
    expectSound(*order);
}

void expectRefused(const State& state, const Error& error) {
    if (!state.bench.order) {
        EXPECT_EQ(error.code, ErrorCode::Unusable);
        EXPECT_EQ(error.message, "no such order");
        return;
    }
    EXPECT_EQ(error.code, ErrorCode::Refused);
    const std::string start = "order " + orderOf(state).number.text() + ": ";
    EXPECT_EQ(error.message.substr(0, start.size()), start);
    EXPECT_GT(error.message.size(), start.size() + 10) << error.message;
    EXPECT_EQ(error.message.find('\n'), std::string::npos);
}

/// Whether it was allowed; nullopt where the state has no such command.
std::optional<bool> walk(const State& state, const Try& how) {
    const auto command = how.command(state);
    if (!command) return {};
    const auto at = floorMinute(state.bench.minutes + 1 + how.daysLater * 24 * 60);
    const auto events = decide(state.bench.order, *command,
                               {.at = at,
                                .person = *PersonCode::parse(how.person),
                                .key = "walk",
                                .workshop = state.bench.workshop,
                                .station = {},
                                .legal = how.legal});
    const bool expected = how.allowed(state.facts);
    EXPECT_EQ(bool{events}, expected) << (events ? "it was allowed" : events.error().message);
    if (events)
        expectTaken(state, how, *events);
    else
        expectRefused(state, events.error());
    return bool{events};
}

TEST(FloorWalk, EveryCommandInEveryStateIsAllowedOrRefusedAsDescribed) {
    const auto states = everyState();
    const auto tries = everyTry();
    ASSERT_FALSE(HasFatalFailure());
    int allowed = 0;
    int refused = 0;
    std::set<std::size_t> kinds;
    for (const State& state : states) {
        const auto before = state.bench.order;
        for (const Try& how : tries) {
            SCOPED_TRACE(state.name + " | " + how.name);
            const auto taken = walk(state, how);
            if (!taken) continue;
            ++(*taken ? allowed : refused);
            kinds.insert(how.command(state)->index());
            ASSERT_FALSE(HasFailure());
        }
        ASSERT_EQ(state.bench.order, before) << state.name;
    }
    EXPECT_EQ(kinds.size(), std::variant_size_v<Command>);
    std::cout << states.size() << " states, " << tries.size()
              << " ways to give a command: " << allowed << " pairs allowed, " << refused
              << " refused\n";
    RecordProperty("states", static_cast<int>(states.size()));
    RecordProperty("allowed", allowed);
    RecordProperty("refused", refused);
    EXPECT_GT(allowed, 10'000);
    EXPECT_GT(refused, 50'000);
}

}  // namespace
