#include "apps/cli/work_verbs.h"

#include <nlohmann/json.hpp>

#include "apps/actions/order_view.h"
#include "apps/actions/orders.h"
#include "apps/actions/statements.h"
#include "apps/actions/work.h"
#include "apps/cli/given_records.h"
#include "apps/cli/lab_option.h"
#include "apps/cli/order_call.h"
#include "apps/cli/output.h"
#include "apps/cli/typed_words.h"
#include "apps/cli/who_option.h"

namespace cli {
namespace {

using actions::Laboratory;
using actions::Target;
using actions::Who;
using domain::OrderNumber;
using domain::Result;

/// The second argument, where a verb may name a stage.
Result<std::optional<domain::Stage>> stageOf(const Call& call) {
    if (call.arguments().size() < 2) return std::optional<domain::Stage>{};
    const auto named = wordOf<domain::Stage>(call.arguments()[1], "stage");
    if (!named) return named.error();
    return std::optional{*named};
}

using StageAction = Result<actions::Outcome> (*)(const Laboratory&, const Target&,
                                                 std::optional<domain::Stage>, const Who&);

Result<Exit> actOnStage(const Call& call, StageAction act) {
    const auto stage = stageOf(call);
    if (!stage) return stage.error();
    return actOnOrder(call,
                      [&](const Laboratory& laboratory, const OrderNumber& number, const Who& who) {
                          return act(laboratory, {number, call.has("case")}, *stage, who);
                      });
}

Page shown(const std::vector<domain::Finding>& lacking, domain::Notation notation) {
    std::vector<std::vector<std::string>> rows;
    rows.reserve(lacking.size());
    for (const domain::Finding& finding : lacking)
        rows.push_back({finding.rule, finding.tooth ? nameOf(*finding.tooth, notation) : "",
                        finding.found, finding.question});
    return table({"gate", "tooth", "lacking", "to do"}, rows);
}

/// The stage whose records are given: the one named, or the one due.
std::optional<domain::Stage> recordedStage(const domain::Order& order,
                                           std::optional<domain::Stage> named) {
    if (named) return named;
    const domain::StageStep* step = currentStep(order);
    return step != nullptr ? std::optional{step->stage} : std::nullopt;
}

}  // namespace

Result<Exit> scan(const Call& call) { return actOnOrder(call, &actions::scan); }

Result<Exit> start(const Call& call) { return actOnStage(call, &actions::start); }

Result<Exit> done(const Call& call) { return actOnStage(call, &actions::finish); }

Result<Exit> record(const Call& call) {
    const auto stage = stageOf(call);
    if (!stage) return stage.error();
    return actOnOrder(
        call,
        [&](const Laboratory& laboratory, const OrderNumber& number,
            const Who& who) -> Result<actions::Outcome> {
            const auto view = actions::order(laboratory, number);
            if (!view) return view.error();
            const auto at = recordedStage(view->order, *stage);
            const auto checklist = at && view->order.route ? planOf(view->order, *at).checklist
                                                           : std::vector<std::string>{};
            const auto records = recordsIn(call, checklist, notationOf(view->order.prescription()));
            if (!records) return records.error();
            return actions::record(laboratory, number, *stage, *records, who);
        });
}

Result<Exit> gate(const Call& call) {
    const auto number = numberOf(call.arguments().front());
    if (!number) return number.error();
    const auto who = whoOf(call);
    if (!who) return who.error();
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    const auto view = actions::order(*laboratory, *number);
    if (!view) return view.error();
    const auto lacking = actions::gate(*laboratory, *number, who->person);
    if (!lacking) return lacking.error();
    if (call.has("json"))
        print("gate-1", {{"order", number->text()}, {"lacking", json(*lacking)}});
    else
        print(lacking->empty() ? Page{"the gate is open"}
                               : shown(*lacking, notationOf(view->order.prescription())));
    return lacking->empty() ? Exit::Done : Exit::Refused;
}

Result<Exit> takeReturn(const Call& call) {
    const auto verdict = wordOf<domain::ReturnVerdict>(call.arguments()[1], "verdict");
    if (!verdict) return verdict.error();
    const auto backTo = wordIn<domain::Stage>(call, "back-to");
    if (!backTo) return backTo.error();
    const auto disinfection = disinfectionIn(call.option("disinfected").value_or(""));
    if (!disinfection) return disinfection.error();
    return actOnOrder(
        call, [&](const Laboratory& laboratory, const OrderNumber& number, const Who& who) {
            return actions::takeReturn(laboratory, {number, call.has("case")},
                                       {*verdict, *backTo, call.option("findings"), *disinfection},
                                       who);
        });
}

Result<Exit> redo(const Call& call) {
    const auto from = wordOf<domain::Stage>(call.arguments()[1], "stage");
    if (!from) return from.error();
    const auto reason = wordOf<domain::RedoReason>(call.arguments()[2], "reason");
    if (!reason) return reason.error();
    const auto fault = wordIn<domain::Stage>(call, "fault");
    if (!fault) return fault.error();
    return actOnOrder(call, [&](const Laboratory& laboratory, const OrderNumber& number,
                                const Who& who) {
        return actions::redo(laboratory, number, *reason, *from, *fault, call.option("note"), who);
    });
}

Result<Exit> sendOut(const Call& call) {
    const auto site = thingOf(call.arguments()[1], "site");
    if (!site) return site.error();
    return actOnOrder(call,
                      [&](const Laboratory& laboratory, const OrderNumber& number, const Who& who) {
                          return actions::sendWork(laboratory, number, *site, who);
                      });
}

Result<Exit> takeBack(const Call& call) {
    const std::string& result = call.arguments()[1];
    if (result != "passed" && result != "failed")
        return unusable("\"" + result + "\": expected passed or failed");
    return actOnOrder(call,
                      [&](const Laboratory& laboratory, const OrderNumber& number, const Who& who) {
                          return actions::takeWorkBack(laboratory, number, result == "passed",
                                                       call.option("note"), who);
                      });
}

Result<Exit> statement(const Call& call) {
    return actOnOrder(
        call,
        [&](const Laboratory& laboratory, const OrderNumber& number, const Who& who) {
            return actions::issueStatement(laboratory, number,
                                           {.representative = call.option("representative"),
                                            .institution = call.option("institution"),
                                            .substances = call.option("substances"),
                                            .conforms = call.has("conforms"),
                                            .exception = call.option("exception"),
                                            .grounds = call.option("grounds")},
                                           who);
        },
        &provenWhoOf);
}

}  // namespace cli
