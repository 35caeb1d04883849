#include "apps/cli/trade_verbs.h"

#include <nlohmann/json.hpp>

#include "apps/actions/examination.h"
#include "apps/cli/description.h"
#include "apps/cli/lab_option.h"
#include "apps/cli/output.h"
#include "apps/cli/who_option.h"
#include "domain/base/colour_difference.h"

namespace cli {
namespace {

using actions::House;
using domain::Error;
using domain::ErrorCode;
using domain::LabColour;
using domain::Result;
using domain::Rule;
using domain::ShadeGuide;
using Rows = std::vector<std::vector<std::string>>;

Error unusable(std::string why) { return {ErrorCode::Unusable, std::move(why)}; }

Page paragraph(const Rule& rule) {
    return Page{std::string{codeOf(rule.severity)} + "  " + std::string{rule.id}}
        .line("    must hold: " + std::string{rule.requirement})
        .line("    to ask:    " + std::string{rule.question})
        .line("    source:    " + std::string{rule.source})
        .line("    rests on:  " + wordsOf(rule.ground));
}

Json json(const Rule& rule) {
    return {{"rule", rule.id},
            {"severity", codeOf(rule.severity)},
            {"requirement", rule.requirement},
            {"question", rule.question},
            {"source", rule.source},
            {"ground", codeOf(rule.ground)}};
}

/// A cell of a Markdown table: its bars would end the cell.
std::string cell(std::string_view text) {
    std::string escaped;
    for (const char letter : text)
        escaped += letter == '|' ? std::string{"\\|"} : std::string{letter};
    return escaped;
}

Page markdown(std::span<const Rule* const> rules) {
    Page page{"| rule | severity | rests on | requirement | source |"};
    page.line("|---|---|---|---|---|");
    for (const Rule* rule : rules)
        page.line("| " + cell(rule->id) + " | " + cell(codeOf(rule->severity)) + " | " +
                  cell(codeOf(rule->ground)) + " | " + cell(rule->requirement) + " | " +
                  cell(rule->source) + " |");
    return page;
}

Json json(const ShadeGuide& guide) {
    Json tabs = Json::array();
    for (const domain::ShadeTab& tab : guide.tabs)
        tabs.push_back(
            {{"tab", tab.name}, {"colour", tab.colour ? Json(tab.colour->text()) : Json()}});
    return {{"guide", guide.name}, {"source", guide.source}, {"tabs", std::move(tabs)}};
}

Page page(const ShadeGuide& guide) {
    Rows rows;
    for (const domain::ShadeTab& tab : guide.tabs)
        rows.push_back({tab.name, tab.colour ? tab.colour->text() : "not measured"});
    return Page{guide.name + " (colours: " + guide.source + ')'}.add(
        table({"tab", "L* a* b*"}, rows));
}

/// What people make of a difference, by the published thresholds.
std::string_view seen(double difference) {
    if (difference <= domain::kPerceptible) return "not seen by half";
    return difference <= domain::kAcceptable ? "seen, accepted by half" : "not accepted by half";
}

Exit printNearest(const Call& call, const ShadeGuide& guide, LabColour measured) {
    const auto nearest = nearestTabs(guide, measured);
    Json list = Json::array();
    Rows rows;
    for (const auto& [tab, difference] : nearest) {
        list.push_back(
            {{"tab", tab->name}, {"difference", fixed(difference, 2)}, {"seen", seen(difference)}});
        rows.push_back({tab->name, fixed(difference, 2), std::string{seen(difference)}});
    }
    if (call.has("json"))
        print("nearest-tabs-1", {{"guide", guide.name},
                                 {"source", guide.source},
                                 {"measured", measured.text()},
                                 {"tabs", std::move(list)}});
    else
        print(Page{"tabs of " + guide.name + " (colours: " + guide.source + ") nearest to " +
                   measured.text() + ", by CIEDE2000"}
                  .add(table({"tab", "differs by", "by half of the observers"}, rows))
                  .line("thresholds 0.8 (seen) and 1.8 (accepted): Paravina et al. 2015"));
    return Exit::Done;
}

Result<Exit> printGuides(const Call& call, const House& house) {
    const auto& arguments = call.arguments();
    std::vector<const ShadeGuide*> shown;
    for (const ShadeGuide& guide : house.guides)
        if (arguments.empty() || domain::guideNamed({&guide, 1}, arguments.front()) != nullptr)
            shown.push_back(&guide);
    if (shown.empty())
        return unusable('"' + arguments.front() +
                        "\" is no guide of this laboratory; framewright shades lists them");
    if (const auto measured = call.option("measured")) {
        const auto colour = LabColour::parse(*measured);
        if (!colour)
            return unusable("\"" + *measured + "\": expected L*, a* and b* as \"" +
                            std::string{domain::kLabExample} + '"');
        return printNearest(call, *shown.front(), *colour);
    }
    Json list = Json::array();
    Page guides;
    for (const ShadeGuide* guide : shown) {
        list.push_back(json(*guide));
        if (guide != shown.front()) guides.blank();
        guides.add(page(*guide));
    }
    if (call.has("json"))
        print("shade-guides-1", {{"guides", std::move(list)}});
    else
        print(guides);
    return Exit::Done;
}

}  // namespace

Result<Exit> check(const Call& call) {
    const auto house = houseOf(call);
    if (!house) return house.error();
    const auto examined =
        actions::check(call.arguments().front(), machineClock().now().day(), *house);
    if (!examined) return examined.error();
    const actions::Trial trial{examined->prescription, machineClock().now().day(), *house};
    const bool answers = call.has("answers");
    if (call.has("json")) {
        Json object = json(*examined);
        for (std::size_t at = 0; answers && at < examined->findings.size(); ++at) {
            Json offers = Json::array();
            for (const domain::Remedy& remedy : trial.remedies(examined->findings[at]))
                offers.push_back(remedy.says);
            object["findings"][at]["offers"] = std::move(offers);
        }
        print("examination-1", object);
    } else {
        print(report(*examined, answers ? &trial : nullptr));
    }
    return examined->findings.empty() ? Exit::Done : Exit::Refused;
}

Result<Exit> describeDesign(const Call& call) {
    const auto described = actions::describe(call.arguments().front());
    if (!described) return described.error();
    if (call.has("json"))
        print("description-1", json(*described));
    else
        print(page(*described));
    return Exit::Done;
}

Result<Exit> rules(const Call& call) {
    if (!call.arguments().empty()) {
        const std::string& id = call.arguments().front();
        const Rule* rule = domain::ruleOf(id);
        if (rule == nullptr)
            return unusable('"' + id + "\" is no rule; framewright rules lists them");
        if (call.has("json"))
            print("rule-1", json(*rule));
        else
            print(paragraph(*rule));
        return Exit::Done;
    }
    const auto all = domain::allRules();
    if (call.has("json")) {
        Json list = Json::array();
        for (const Rule* rule : all) list.push_back(json(*rule));
        print("rules-1", {{"rules", std::move(list)}});
    } else if (call.has("markdown")) {
        print(markdown(all));
    } else {
        Rows rows;
        for (const Rule* rule : all)
            rows.push_back({std::string{rule->id}, std::string{codeOf(rule->severity)},
                            std::string{rule->requirement}});
        print(table({"rule", "severity", "must hold"}, rows)
                  .line(std::to_string(all.size()) + " rules"));
    }
    return Exit::Done;
}

Result<Exit> limits(const Call& call) {
    const auto& arguments = call.arguments();
    if (arguments.size() == 2) {
        const auto laboratory = laboratoryOf(call);
        if (!laboratory) return laboratory.error();
        const auto who = whoOf(call);
        if (!who) return who.error();
        if (const auto written = actions::writeLimit(*laboratory, arguments[0], arguments[1], *who);
            !written)
            return written.error();
    }
    const auto house = houseOf(call);
    if (!house) return house.error();
    Json list = Json::array();
    Rows rows;
    for (const actions::LimitLine& line : actions::limitLines(house->limits)) {
        if (!arguments.empty() && line.word != arguments[0]) continue;
        list.push_back({{"limit", line.word},
                        {"value", line.value},
                        {"default", line.usual},
                        {"says", line.says},
                        {"schools", line.schools}});
        rows.push_back({line.word, line.value, line.usual, line.says});
        if (!arguments.empty()) rows.back().push_back(line.schools);
    }
    if (rows.empty())
        return unusable('"' + arguments[0] + "\" is no limit; framewright limits lists them");
    std::vector<std::string> heading{"limit", "here", "default", "what it is"};
    if (!arguments.empty()) heading.emplace_back("what the schools say");
    if (call.has("json"))
        print("limits-1", {{"limits", std::move(list)}});
    else
        print(table(heading, rows));
    return Exit::Done;
}

Result<Exit> shades(const Call& call) {
    if (const auto file = call.option("file")) {
        if (call.arguments().empty())
            return unusable("which guide? framewright shades GUIDE --file FILE");
        const auto laboratory = laboratoryOf(call);
        if (!laboratory) return laboratory.error();
        const auto who = whoOf(call);
        if (!who) return who.error();
        const auto entered =
            actions::enterGuide(*laboratory, call.arguments().front(), *file, *who);
        if (!entered) return entered.error();
    }
    const auto house = houseOf(call);
    if (!house) return house.error();
    return printGuides(call, *house);
}

}  // namespace cli
