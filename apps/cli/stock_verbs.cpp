#include "apps/cli/stock_verbs.h"

#include <nlohmann/json.hpp>

#include "apps/actions/house.h"
#include "apps/actions/workshop.h"
#include "apps/cli/lab_option.h"
#include "apps/cli/output.h"
#include "apps/cli/typed_words.h"
#include "apps/cli/who_option.h"

namespace cli {
namespace {

using domain::Result;

std::string due(const domain::Equipment& equipment) {
    return equipment.calibrationDue ? equipment.calibrationDue->text() : "-";
}

/// A change is told as the list that follows from it.
Result<Exit> listEquipment(const Call& call, const actions::Laboratory& laboratory) {
    const auto workshop = actions::workshop(laboratory);
    if (!workshop) return workshop.error();
    Json list = Json::array();
    std::vector<std::vector<std::string>> rows;
    for (const auto& [code, each] : workshop->equipment) {
        const bool late = each.calibrationDue && *each.calibrationDue < laboratory.today();
        list.push_back(
            {{"equipment", code.text()},
             {"kind", std::string{codeOf(each.kind)}},
             {"serial", each.serial},
             {"calibration-due", each.calibrationDue ? Json(each.calibrationDue->text()) : Json()},
             {"overdue", late}});
        rows.push_back({code.text(), wordsOf(each.kind), each.serial, due(each),
                        late ? "OVERDUE" : "in order"});
    }
    if (call.has("json"))
        print("equipment-1", {{"equipment", std::move(list)}});
    else
        print(rows.empty() ? Page{"no equipment yet"}
                           : table({"code", "kind", "serial", "calibration due", "is"}, rows));
    return Exit::Done;
}

Result<std::optional<domain::Date>> calibrationOf(const Call& call) {
    const auto text = call.option("due");
    if (!text) return std::optional<domain::Date>{};
    const auto day = dayOf(*text, "day calibration is due");
    if (!day) return day.error();
    return std::optional{*day};
}

Json json(const domain::RoutePlan& plan) {
    Json stages = Json::array();
    for (const domain::StagePlan& step : plan.stages) {
        Json demands = Json::array();
        for (const domain::Demand demand : step.demands)
            demands.push_back(std::string{codeOf(demand)});
        Json back = Json::array();
        for (const domain::Stage stage : step.fallBack) back.push_back(std::string{codeOf(stage)});
        stages.push_back({{"stage", std::string{codeOf(step.stage)}},
                          {"kind", std::string{codeOf(rowOf(step.stage).kind)}},
                          {"skill", std::string{codeOf(step.skill)}},
                          {"station", std::string{codeOf(step.station)}},
                          {"usual", text(step.usual)},
                          {"checklist", step.checklist},
                          {"demands", std::move(demands)},
                          {"back-to", std::move(back)}});
    }
    return {{"route", std::string{codeOf(plan.route)}},
            {"arch", std::string{codeOf(plan.arch)}},
            {"version", plan.version},
            {"stages", std::move(stages)}};
}

std::string joined(const std::vector<std::string>& words, std::string_view between) {
    std::string list;
    for (const std::string& word : words) {
        if (!list.empty()) list += between;
        list += word;
    }
    return list;
}

Page shown(const domain::RoutePlan& plan) {
    std::vector<std::vector<std::string>> rows;
    for (const domain::StagePlan& step : plan.stages) {
        std::vector<std::string> demands;
        for (const domain::Demand demand : step.demands) demands.push_back(wordsOf(demand));
        rows.push_back({std::string{codeOf(step.stage)}, wordsOf(rowOf(step.stage).kind),
                        wordsOf(step.skill), wordsOf(step.station), text(step.usual),
                        joined(demands, ", ")});
    }
    Page page{"route " + std::string{codeOf(plan.route)} + ", " + wordsOf(plan.arch) +
              ", version " + std::to_string(plan.version)};
    page.add(table({"stage", "kind", "skill", "station", "usual", "its gate asks for"}, rows))
        .blank();
    for (const domain::StagePlan& step : plan.stages)
        if (!step.checklist.empty())
            page.line(std::string{codeOf(step.stage)} + ": " + joined(step.checklist, "; "));
    return page;
}

/// What the options ask of one stage.
Result<std::optional<actions::StageChange>> changeOf(const Call& call) {
    const auto stage = wordIn<domain::Stage>(call, "stage");
    if (!stage) return stage.error();
    if (!*stage) return std::optional<actions::StageChange>{};
    actions::StageChange change{.stage = **stage,
                                .more = call.options("add"),
                                .fewer = call.options("remove"),
                                .out = call.has("leave-out")};
    const auto usual = amountOption<domain::MinuteUnit>(call, "usual");
    if (!usual) return usual.error();
    change.usual = *usual;
    const auto station = wordIn<domain::StationKind>(call, "place");
    if (!station) return station.error();
    change.station = *station;
    const auto after = wordIn<domain::Stage>(call, "after");
    if (!after) return after.error();
    change.after = *after;
    return std::optional{change};
}

Result<Exit> listRoutes(const Call& call, const domain::Workshop& workshop) {
    Json list = Json::array();
    std::vector<std::vector<std::string>> rows;
    for (const auto& route : domain::enumCodes<domain::Route>)
        for (const auto& arch : domain::enumCodes<domain::Arch>) {
            const auto plan = workshop.planFor(route.value, arch.value);
            list.push_back(json(plan));
            rows.push_back({std::string{route.word}, std::string{arch.word},
                            std::to_string(plan.version), std::to_string(plan.stages.size()),
                            goesAfter(route.value)
                                ? "goes with another, after " + wordsOf(*goesAfter(route.value))
                                : "stands by itself"});
        }
    if (call.has("json"))
        print("routes-1", {{"routes", std::move(list)}});
    else
        print(table({"route", "arch", "version", "stages", "how"}, rows));
    return Exit::Done;
}

}  // namespace

Result<Exit> equipment(const Call& call) {
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    if (call.arguments().empty()) return listEquipment(call, *laboratory);
    const auto code = thingOf(call.arguments()[0], "piece of equipment");
    if (!code) return code.error();
    const auto who = whoOf(call);
    if (!who) return who.error();
    const auto day = calibrationOf(call);
    if (!day) return day.error();
    if (call.arguments().size() == 1) {
        if (!*day) return unusable("expected --due DAY: up to when the calibration holds");
        if (auto kept = actions::calibrate(*laboratory, *code, **day, *who); !kept)
            return kept.error();
        return listEquipment(call, *laboratory);
    }
    const auto kind = wordOf<domain::EquipmentKind>(call.arguments()[1], "kind of equipment");
    if (!kind) return kind.error();
    const domain::Equipment entered{*kind, call.option("serial").value_or(""), *day};
    if (auto kept = actions::enterEquipment(*laboratory, *code, entered, *who); !kept)
        return kept.error();
    return listEquipment(call, *laboratory);
}

Result<Exit> sites(const Call& call) {
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    if (!call.arguments().empty()) {
        const auto code = thingOf(call.arguments()[0], "site");
        if (!code) return code.error();
        const auto who = whoOf(call);
        if (!who) return who.error();
        const domain::Site site{call.option("name").value_or(""),
                                call.option("address").value_or(""),
                                call.option("registration").value_or("")};
        if (auto kept = actions::enterSite(*laboratory, *code, site, *who); !kept)
            return kept.error();
    }
    const auto workshop = actions::workshop(*laboratory);
    if (!workshop) return workshop.error();
    Json list = Json::array();
    std::vector<std::vector<std::string>> rows;
    for (const auto& [code, site] : workshop->sites) {
        list.push_back({{"site", code.text()},
                        {"name", site.name},
                        {"address", site.address},
                        {"registration", site.registration}});
        rows.push_back({code.text(), site.name, site.address, site.registration});
    }
    if (call.has("json"))
        print("sites-1", {{"sites", std::move(list)}});
    else
        print(rows.empty() ? Page{"no sites yet"}
                           : table({"code", "name", "address", "registration"}, rows));
    return Exit::Done;
}

Result<Exit> routes(const Call& call) {
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    const auto workshop = actions::workshop(*laboratory);
    if (!workshop) return workshop.error();
    if (call.arguments().empty()) return listRoutes(call, *workshop);
    if (call.arguments().size() < 2)
        return unusable("expected ROUTE and ARCH, as cast-framework upper");
    const auto route = wordOf<domain::Route>(call.arguments()[0], "route");
    if (!route) return route.error();
    const auto arch = wordOf<domain::Arch>(call.arguments()[1], "arch");
    if (!arch) return arch.error();
    const auto change = changeOf(call);
    if (!change) return change.error();
    if (*change) {
        const auto who = whoOf(call);
        if (!who) return who.error();
        if (auto kept = actions::changeRoute(*laboratory, *route, *arch, **change, *who); !kept)
            return kept.error();
    }
    const auto now = actions::workshop(*laboratory);
    if (!now) return now.error();
    const auto plan = now->planFor(*route, *arch);
    if (call.has("json"))
        print("route-1", json(plan));
    else
        print(shown(plan));
    return Exit::Done;
}

Result<Exit> retention(const Call& call) {
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    if (!call.arguments().empty()) {
        const auto who = whoOf(call);
        if (!who) return who.error();
        if (auto written = actions::writeRetention(*laboratory, call.arguments()[0], *who);
            !written)
            return written.error();
    }
    const auto own = actions::retentionOf(*laboratory);
    if (!own) return own.error();
    Json list = Json::array();
    std::vector<std::vector<std::string>> rows;
    for (const domain::RetentionTerm& term : domain::retentionTerms()) {
        const bool applies = std::ranges::any_of(
            *own, [&](const domain::RetentionTerm& each) { return each.id == term.id; });
        list.push_back({{"term", std::string{term.id}},
                        {"where", std::string{term.where}},
                        {"years", term.years},
                        {"applies", applies},
                        {"source", std::string{term.source}}});
        rows.push_back({std::string{term.id}, std::string{term.where},
                        std::to_string(term.years) + " y", applies ? "applies" : "",
                        std::string{term.source}});
    }
    if (call.has("json"))
        print("retention-1", {{"terms", std::move(list)}});
    else
        print(table({"term", "where", "years", "here", "source"}, rows));
    return Exit::Done;
}

}  // namespace cli
