#include "domain/materials/investment.h"

namespace domain {
namespace {

constexpr std::string_view kGypsumTable =
    "open textbook of dental materials, chapter on gypsum, table 8.2";
constexpr std::string_view kTeachingTable = "table of teaching notes; secondary source";
constexpr std::string_view kFromMemory = "from memory";

constexpr Between<MixRatio> ratios(std::int64_t least, std::int64_t most) {
    return {MixRatio::of(least), MixRatio::of(most)};
}

/// Microlitres of liquid a gram of powder; a gram of water is taken for a millilitre.
constexpr MixingRule kMixingRules[] = {
    {.usual = ratios(400, 500),
     .source = kGypsumTable,
     .alsoTaught = ratios(450, 550),
     .alsoSource = kTeachingTable},
    {.usual = ratios(250, 300),
     .source = kGypsumTable,
     .alsoTaught = ratios(300, 350),
     .alsoSource = kTeachingTable},
    {.usual = ratios(190, 240),
     .source = kGypsumTable,
     .alsoTaught = ratios(200, 250),
     .alsoSource = kTeachingTable},
    {.usual = ratios(130, 200), .source = kFromMemory, .alsoTaught = {}, .alsoSource = {}},
};

constexpr HeatingRate rate(std::int64_t degreesAMinute) {
    return HeatingRate::of(degreesAMinute * HeatingRateUnit::kPerWritten);
}

constexpr BurnOutStep kCobaltChromium[] = {
    {.rate = rate(7),
     .target = 250_C,
     .hold = 60_min,
     .rates = {rate(6), rate(8)},
     .targets = {250_C, 300_C},
     .holds = {30_min, 60_min},
     .source = "from memory; the rate up to this hold: common practice, no source"},
    {.rate = rate(7),
     .target = 1000_C,
     .hold = 60_min,
     .rates = {rate(6), rate(8)},
     .targets = {950_C, 1050_C},
     .holds = {45_min, 60_min},
     .source = kFromMemory},
};
constexpr BurnOutStep kGold[] = {
    {.rate = rate(7),
     .target = 200_C,
     .hold = 30_min,
     .rates = {rate(7), rate(7)},
     .targets = {200_C, 200_C},
     .holds = {30_min, 30_min},
     .source = "teaching notes, secondary source; the rate: common practice, no source"},
    {.rate = rate(7),
     .target = 650_C,
     .hold = 30_min,
     .rates = {rate(7), rate(7)},
     .targets = {480_C, 650_C},
     .holds = {30_min, 30_min},
     .source = "teaching notes, secondary source; the rate: common practice, no source"},
};

Microlitres liquidFor(Milligrams powder, MixRatio ratio) {
    return Microlitres::of(nearestQuotient(powder.count() * ratio.count(), 1000));
}

Microlitres shareOf(Microlitres whole, Share share) {
    return Microlitres::of(nearestQuotient(whole.count() * share.count(), 1'000'000));
}

bool isTaught(const MixingRule& rule, MixRatio ratio) {
    return rule.usual.holds(ratio) || (rule.alsoTaught && rule.alsoTaught->holds(ratio));
}

Error untaught(MixedPowder powder, const MixingRule& rule, MixRatio ratio) {
    std::string why = text(ratio) + " for " + wordsOf(powder) + "; expected " + text(rule.usual) +
                      " (" + std::string{rule.source} + ')';
    if (rule.alsoTaught)
        why += " or " + text(*rule.alsoTaught) + " (" + std::string{rule.alsoSource} + ')';
    return {ErrorCode::Refused, why};
}

}  // namespace

const MixingRule& mixingRuleOf(MixedPowder powder) noexcept {
    return kMixingRules[static_cast<std::size_t>(powder)];
}

Result<Mix> mixFor(MixedPowder powder, Milligrams mass, std::optional<MixRatio> ratio) {
    if (mass == Milligrams{})
        return Error{ErrorCode::Refused, "0 g of powder; expected the mass that is mixed"};
    const MixingRule& rule = mixingRuleOf(powder);
    if (ratio && !isTaught(rule, *ratio)) return untaught(powder, rule, *ratio);
    Mix mix{.ratio = rule.usual, .source = rule.source};
    if (ratio) {
        mix.ratio = {*ratio, *ratio};
        if (!rule.usual.holds(*ratio)) mix.source = rule.alsoSource;
    }
    mix.liquid = {liquidFor(mass, mix.ratio.least), liquidFor(mass, mix.ratio.most)};
    if (powder == MixedPowder::PhosphateInvestment) {
        mix.specialLiquid = {shareOf(mix.liquid.least, kSpecialLiquid),
                             shareOf(mix.liquid.most, kSpecialLiquid)};
        mix.water = {mix.liquid.least - mix.specialLiquid->least,
                     mix.liquid.most - mix.specialLiquid->most};
    }
    return mix;
}

std::optional<std::span<const BurnOutStep>> burnOutOf(FrameworkMaterial material) noexcept {
    switch (material) {
        case FrameworkMaterial::CobaltChromium:
            return kCobaltChromium;
        case FrameworkMaterial::GoldTypeIv:
            return kGold;
        case FrameworkMaterial::NickelChromium:
        case FrameworkMaterial::Titanium:
        case FrameworkMaterial::TitaniumAlloy:
        case FrameworkMaterial::Polyetheretherketone:
        case FrameworkMaterial::Acetal:
            return {};
    }
    return {};
}

std::vector<BurnOutClock> clockOf(std::span<const BurnOutStep> steps) {
    std::vector<BurnOutClock> clock;
    Temperature from = kRoom;
    Minutes now{};
    for (const BurnOutStep& step : steps) {
        const std::int64_t rise = (step.target - from).count();
        const Minutes heating = Minutes::of((rise + step.rate.count() - 1) / step.rate.count());
        clock.push_back({now, now + heating, now + heating + step.hold});
        now = clock.back().ends;
        from = step.target;
    }
    return clock;
}

}  // namespace domain
