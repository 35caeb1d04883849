#include "apps/cli/bench_verbs.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "apps/cli/bench_page.h"

namespace cli {
namespace {

using domain::Error;
using domain::ErrorCode;
using domain::FrameworkMaterial;
using domain::Quantity;
using domain::Result;

/// What a calculation found, both ways it can be printed.
struct Computed {
    Page page;
    Json json;
    Exit exit{Exit::Done};
};

Error unusable(std::string why) { return {ErrorCode::Unusable, std::move(why)}; }

/// An amount with its unit; nullopt where the option is not given.
template <typename Unit>
Result<std::optional<Quantity<Unit>>> amountOf(const Call& call, std::string_view option) {
    const auto written = call.option(option);
    if (!written) return std::optional<Quantity<Unit>>{};
    const auto amount = domain::parseQuantity<Unit>(*written);
    if (!amount)
        return unusable("--" + std::string{option} + " \"" + *written +
                        "\": expected a number and its unit, as \"" + std::string{Unit::kExample} +
                        "\", at most " + text(Quantity<Unit>::of(Unit::kMost)));
    return amount;
}

/// An option that a calculation cannot do without.
template <typename Unit>
Result<Quantity<Unit>> needed(const Call& call, std::string_view option) {
    const auto amount = amountOf<Unit>(call, option);
    if (!amount) return amount.error();
    if (!*amount)
        return unusable("expected --" + std::string{option} + " \"" + std::string{Unit::kExample} +
                        '"');
    return **amount;
}

template <domain::CodedEnum E>
Result<E> wordOf(std::string_view what, const std::optional<std::string>& word) {
    const std::string expected = "expected one of " + domain::allWords<E>();
    if (!word) return unusable("which " + std::string{what} + "? " + expected);
    const auto value = domain::parseCode<E>(*word);
    if (!value) return unusable('"' + *word + "\" is no " + std::string{what} + "; " + expected);
    return *value;
}

Computed ofFigures(const std::vector<Figure>& figures) {
    return {page(figures), {{"figures", json(figures)}}};
}

Result<Computed> alloy(const Call& call) {
    const auto material = wordOf<FrameworkMaterial>("material", call.option("material"));
    if (!material) return material.error();
    const auto wax = needed<domain::MilligramUnit>(call, "wax");
    if (!wax) return wax.error();
    const auto sprue = amountOf<domain::MilligramUnit>(call, "sprue");
    if (!sprue) return sprue.error();
    const auto button = amountOf<domain::MilligramUnit>(call, "button");
    if (!button) return button.error();
    const auto density = amountOf<domain::DensityUnit>(call, "alloy-density");
    if (!density) return density.error();
    const auto pattern = amountOf<domain::DensityUnit>(call, "pattern-density");
    if (!pattern) return pattern.error();
    const auto charge = domain::chargeFor({.material = *material,
                                           .framework = *wax,
                                           .sprues = sprue->value_or(domain::Milligrams{}),
                                           .button = *button,
                                           .alloy = *density,
                                           .pattern = *pattern});
    if (!charge) return charge.error();
    return ofFigures(figuresOf(*charge));
}

Result<Computed> investment(const Call& call) {
    const auto mixture = wordOf<domain::MixedPowder>("mixture", call.option("mixture"));
    if (!mixture) return mixture.error();
    const auto powder = needed<domain::MilligramUnit>(call, "powder");
    if (!powder) return powder.error();
    const auto ratio = amountOf<domain::MixRatioUnit>(call, "ratio");
    if (!ratio) return ratio.error();
    const auto mix = domain::mixFor(*mixture, *powder, *ratio);
    if (!mix) return mix.error();
    return ofFigures(figuresOf(*mix, *powder));
}

Result<Computed> burnOut(const Call& call) {
    const auto material = wordOf<FrameworkMaterial>("material", call.arguments()[1]);
    if (!material) return material.error();
    const auto steps = domain::burnOutOf(*material);
    if (!steps)
        return Error{ErrorCode::Refused, "no burn-out for " + wordsOf(*material) +
                                             " is known here; its maker's instructions say it"};
    return Computed{burnOutPage(*steps), burnOutJson(*steps)};
}

Result<Computed> resin(const Call& call) {
    const auto powder = amountOf<domain::MilligramUnit>(call, "powder");
    if (!powder) return powder.error();
    Computed computed{resinPage(), resinJson()};
    if (*powder) {
        const auto figures = figuresOf(domain::resinMixFor(**powder), **powder);
        computed.page = page(figures).blank().add(computed.page);
        computed.json["figures"] = json(figures);
    }
    return computed;
}

Result<Computed> cure(const Call& call) {
    const auto cycle = wordOf<domain::CureCycle>("cycle", call.option("cycle"));
    if (!cycle) return cycle.error();
    const auto thickness = amountOf<domain::MicronUnit>(call, "thickness");
    if (!thickness) return thickness.error();
    const auto judged = actions::judgeCureLog(call.arguments()[1], *cycle, *thickness);
    if (!judged) return judged.error();
    return Computed{page(*judged), json(*judged),
                    judged->report.isAccepted() ? Exit::Done : Exit::Refused};
}

constexpr std::string_view kAlloyOptions[] = {"material", "wax",           "sprue",
                                              "button",   "alloy-density", "pattern-density"};
constexpr std::string_view kInvestmentOptions[] = {"mixture", "powder", "ratio"};
constexpr std::string_view kResinOptions[] = {"powder"};
constexpr std::string_view kCureOptions[] = {"cycle", "thickness"};

/// A word after `bench`: what it takes, what it does, and what to beware of.
struct Calculation {
    std::string_view name;
    std::string_view argument;  ///< empty: it takes none
    std::span<const std::string_view> options;
    Result<Computed> (*run)(const Call&);
    std::string_view caution;
};
constexpr Calculation kCalculations[] = {
    {"alloy", "", kAlloyOptions, &alloy,
     "melt under extraction: fumes and dust of the alloy harm; the maker's instructions and the "
     "safety data sheet go before these figures"},
    {"investment", "", kInvestmentOptions, &investment,
     "powders hold silica: keep from breathing the dust; the maker's instructions and the safety "
     "data sheet go before these figures"},
    {"burn-out",
     "MATERIAL",
     {},
     &burnOut,
     "a burning mould gives off fumes and burns the skin; the schedule of the investment's maker "
     "goes before this one"},
    {"resin", "", kResinOptions, &resin,
     "monomer burns and sensitises the skin; the maker's instructions and the safety data sheet go "
     "before these figures"},
    {"cure", "FILE", kCureOptions, &cure,
     "the log tells of the water around the flask: the resin inside is hotter while it sets; the "
     "maker's cycle goes before the published ones"},
};

std::string allCalculations() {
    std::string words;
    for (const Calculation& calculation : kCalculations)
        words += (words.empty() ? "" : ", ") + std::string{calculation.name};
    return words;
}

/// nullopt: the words fit the calculation.
std::optional<Error> misfitOf(const Call& call, const Calculation& calculation) {
    if ((call.arguments().size() == 2) == calculation.argument.empty())
        return unusable("expected: framewright bench " + std::string{calculation.name} +
                        (calculation.argument.empty() ? "" : " ") +
                        std::string{calculation.argument});
    for (const Calculation& other : kCalculations)
        for (const std::string_view option : other.options)
            if (call.has(option) && std::ranges::count(calculation.options, option) == 0)
                return unusable("--" + std::string{option} + " is not for bench " +
                                std::string{calculation.name} + "; expected it with bench " +
                                std::string{other.name});
    return {};
}

}  // namespace

Result<Exit> bench(const Call& call) {
    const std::string& name = call.arguments().front();
    const auto calculation = std::ranges::find(kCalculations, name, &Calculation::name);
    if (calculation == std::end(kCalculations))
        return unusable('"' + name + "\" is no calculation; expected one of " + allCalculations());
    if (const auto misfit = misfitOf(call, *calculation)) return *misfit;
    const auto computed = calculation->run(call);
    if (!computed) return computed.error();
    if (call.has("json")) {
        Json object = {{"calculation", name}};
        object.update(computed->json);
        object["caution"] = calculation->caution;
        print("bench-1", object);
    } else {
        print(Page{computed->page}.line("caution: " + std::string{calculation->caution}));
    }
    return computed->exit;
}

}  // namespace cli
