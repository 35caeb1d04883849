#include "apps/cli/bench_page.h"

#include <nlohmann/json.hpp>

namespace cli {
namespace {

using actions::JudgedCure;
using domain::Between;
using domain::BurnOutStep;
using domain::CureProgramme;
using domain::HoldReport;
using domain::Quantity;
using Rows = std::vector<std::vector<std::string>>;

/// To hundredths of a written unit: no balance and no cylinder of the bench tells more.
template <typename Unit>
Quantity<Unit> rounded(Quantity<Unit> amount) {
    constexpr std::int64_t kStep = Unit::kPerWritten / 100;
    return Quantity<Unit>::of(domain::nearestQuotient(amount.count(), kStep) * kStep);
}

template <typename Unit>
Figure figure(std::string_view name, std::string says, Between<Quantity<Unit>> amount,
              std::string source) {
    return {name,         std::move(says),  text(amount.least), text(amount.most),
            text(amount), std::move(source)};
}
template <typename Unit>
Figure computed(std::string_view name, std::string says, Between<Quantity<Unit>> amount,
                std::string source) {
    return figure(name, std::move(says),
                  Between<Quantity<Unit>>{rounded(amount.least), rounded(amount.most)},
                  std::move(source));
}

Figure weighed(domain::Milligrams powder) {
    return figure("powder", "powder", Between<domain::Milligrams>{powder, powder}, "as given");
}

std::string orDash(const std::optional<domain::Seconds>& time) {
    return time ? domain::clockText(*time) : "-";
}

Json orNull(const std::optional<domain::Seconds>& time) {
    return time ? Json(domain::clockText(*time)) : Json();
}

}  // namespace

std::vector<Figure> figuresOf(const domain::AlloyCharge& charge) {
    return {
        figure("pattern", "pattern with its sprues",
               Between<domain::Milligrams>{charge.pattern, charge.pattern}, "as given"),
        figure("alloy-density", "density of the alloy", charge.alloyDensity, charge.alloySource),
        figure("pattern-density", "density of the pattern", charge.patternDensity,
               charge.patternSource),
        computed("metal", "metal in the mould", charge.metal,
                 "pattern x density of the alloy / density of the pattern"),
        computed("button", "button", charge.button, charge.buttonSource),
        computed("charge", "alloy to melt", charge.charge, "metal and button")};
}

std::vector<Figure> figuresOf(const domain::Mix& mix, domain::Milligrams powder) {
    const std::string source{mix.source};
    std::vector<Figure> figures{weighed(powder),
                                figure("ratio", "liquid to powder", mix.ratio, source),
                                computed("liquid", "liquid", mix.liquid, "powder x ratio")};
    if (mix.specialLiquid)
        figures.push_back(computed("special-liquid", "of it special liquid", *mix.specialLiquid,
                                   text(domain::kSpecialLiquid) + " of the liquid, from memory"));
    if (mix.water) figures.push_back(computed("water", "of it water", *mix.water, "the rest"));
    return figures;
}

std::vector<Figure> figuresOf(const domain::ResinMix& mix, domain::Milligrams powder) {
    return {weighed(powder),
            computed("liquid", "liquid by volume", mix.byVolume,
                     "21 to 24 g of powder to 10 ml, from memory; the same as three measures of "
                     "powder to one of liquid"),
            computed("liquid-mass", "liquid by mass", mix.byMass,
                     "2.0 to 2.5 g of powder to 1 g, from memory"),
            computed("liquid-mass-volume", "the same, measured", mix.byMassVolume,
                     "density of the monomer " + text(domain::kMonomerDensity) + ", from memory")};
}

Page page(const std::vector<Figure>& figures) {
    Rows rows;
    for (const Figure& figure : figures)
        rows.push_back({figure.says, figure.between, figure.source});
    return table({"what", "amount", "where it comes from"}, rows);
}

Json json(const std::vector<Figure>& figures) {
    Json list = Json::array();
    for (const Figure& figure : figures)
        list.push_back({{"name", figure.name},
                        {"least", figure.least},
                        {"most", figure.most},
                        {"source", figure.source}});
    return list;
}

Page burnOutPage(std::span<const BurnOutStep> steps) {
    Rows rows;
    const auto clock = domain::clockOf(steps);
    for (std::size_t i = 0; i < steps.size(); ++i)
        rows.push_back({text(clock[i].starts), text(steps[i].rate), text(steps[i].target),
                        text(clock[i].reached), text(steps[i].hold), text(clock[i].ends),
                        text(steps[i].targets) + " for " + text(steps[i].holds),
                        std::string{steps[i].source}});
    return table({"from", "heat at", "up to", "reached at", "keep for", "until", "taught",
                  "where it comes from"},
                 rows)
        .line("in all " + text(clock.back().ends) + " from " + text(domain::kRoom));
}

Json burnOutJson(std::span<const BurnOutStep> steps) {
    Json list = Json::array();
    const auto clock = domain::clockOf(steps);
    for (std::size_t i = 0; i < steps.size(); ++i)
        list.push_back({{"starts", text(clock[i].starts)},
                        {"rate", text(steps[i].rate)},
                        {"target", text(steps[i].target)},
                        {"reached", text(clock[i].reached)},
                        {"hold", text(steps[i].hold)},
                        {"ends", text(clock[i].ends)},
                        {"targets", text(steps[i].targets)},
                        {"holds", text(steps[i].holds)},
                        {"source", steps[i].source}});
    return {{"steps", std::move(list)},
            {"from", text(domain::kRoom)},
            {"total", text(clock.back().ends)}};
}

Page resinPage() {
    Rows cycles;
    for (const CureProgramme& programme : domain::cureProgrammes())
        cycles.push_back({std::string{codeOf(programme.cycle)}, text(programme),
                          programme.boilsAtOnce ? "never"
                          : programme.isLong    ? "any section"
                                                : "up to " + text(domain::kThick),
                          std::string{programme.source}});
    Rows types;
    for (const auto& resin : domain::enumCodes<domain::BaseResin>) {
        const domain::ResinLimits& limits = domain::limitsOf(resin.value);
        types.push_back({"type " + std::to_string(limits.type), std::string{resin.word},
                         text(limits.strength), text(limits.modulus), text(limits.residualMonomer),
                         std::string{limits.cures}});
    }
    return table({"cycle", "water bath", "good for", "where it comes from"}, cycles)
        .line("then cool on the bench for " + text(domain::kBenchCool))
        .blank()
        .add(table({"ISO 20795-1", "resin", "strength at least", "modulus at least",
                    "monomer at most", "cures"},
                   types))
        .line("limits from memory, but the " +
              text(domain::limitsOf(domain::BaseResin::HeatCured).residualMonomer) +
              " of monomer: IJERSTE 2016");
}

Json resinJson() {
    Json cycles = Json::array();
    for (const CureProgramme& programme : domain::cureProgrammes()) {
        Json holds = Json::array();
        for (const domain::CureHold& hold : programme.holds)
            holds.push_back(
                {{"temperature", text(hold.temperature)}, {"length", text(hold.length)}});
        cycles.push_back({{"cycle", codeOf(programme.cycle)},
                          {"holds", std::move(holds)},
                          {"long", programme.isLong},
                          {"boils-at-once", programme.boilsAtOnce},
                          {"source", programme.source}});
    }
    Json types = Json::array();
    for (const auto& resin : domain::enumCodes<domain::BaseResin>) {
        const domain::ResinLimits& limits = domain::limitsOf(resin.value);
        types.push_back({{"type", limits.type},
                         {"resin", resin.word},
                         {"strength", text(limits.strength)},
                         {"modulus", text(limits.modulus)},
                         {"residual-monomer", text(limits.residualMonomer)},
                         {"cures", limits.cures}});
    }
    return {{"cycles", std::move(cycles)}, {"resins", std::move(types)}};
}

Page page(const JudgedCure& cure) {
    const domain::CureReport& report = cure.report;
    Page page{std::string{report.isAccepted() ? "accepted" : "refused"} + " by the cycle " +
              std::string{codeOf(report.cycle)} + ": " + text(domain::programmeOf(report.cycle))};
    if (report.peak) {
        Rows rows;
        for (const HoldReport& hold : report.holds) {
            rows.push_back({text(hold.prescribed.temperature), text(hold.prescribed.length)});
            const auto& found = hold.measured;
            rows.back().insert(
                rows.back().end(),
                {found ? domain::clockText(found->length) : "-",
                 found ? domain::clockText(found->start) : "-", found ? text(found->least) : "-",
                 found ? text(found->most) : "-", hold.isKept() ? "kept" : "not kept"});
        }
        page.add(
                table({"hold", "prescribed", "measured", "from", "least", "most", "verdict"}, rows))
            .line("hottest: " + text(report.peak->temperature) + " at " +
                  domain::clockText(report.peak->at))
            .line("cooling to " + text(domain::kCool) + ": " + orDash(report.cooling));
    }
    page.line("thickest section: " + (report.thickest ? text(*report.thickest) : "not recorded"))
        .line("log: " + std::to_string(cure.readings) + " readings, SHA-256 " + cure.digest);
    for (const std::string& advice : report.advice) page.line("advice: " + advice);
    for (const domain::CureComplaint& complaint : report.complaints)
        page.blank()
            .line(std::string{codeOf(complaint.fault)} + "  " + complaint.says)
            .line("    source: " + std::string{complaint.source});
    return page;
}

Json json(const JudgedCure& cure) {
    const domain::CureReport& report = cure.report;
    Json holds = Json::array();
    for (const HoldReport& hold : report.holds) {
        Json found;
        if (hold.measured)
            found = {{"start", domain::clockText(hold.measured->start)},
                     {"length", domain::clockText(hold.measured->length)},
                     {"least", text(hold.measured->least)},
                     {"most", text(hold.measured->most)}};
        holds.push_back({{"temperature", text(hold.prescribed.temperature)},
                         {"length", text(hold.prescribed.length)},
                         {"measured", std::move(found)},
                         {"kept", hold.isKept()}});
    }
    Json complaints = Json::array();
    for (const domain::CureComplaint& complaint : report.complaints)
        complaints.push_back({{"fault", codeOf(complaint.fault)},
                              {"says", complaint.says},
                              {"source", complaint.source}});
    return {{"cycle", codeOf(report.cycle)},
            {"accepted", report.isAccepted()},
            {"holds", std::move(holds)},
            {"hottest", report.peak ? Json(text(report.peak->temperature)) : Json()},
            {"hottest-at", report.peak ? Json(domain::clockText(report.peak->at)) : Json()},
            {"cooling", orNull(report.cooling)},
            {"thickest", report.thickest ? Json(text(*report.thickest)) : Json()},
            {"readings", cure.readings},
            {"digest", cure.digest},
            {"advice", report.advice},
            {"complaints", std::move(complaints)}};
}

}  // namespace cli
