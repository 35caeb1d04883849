#include "domain/materials/investment.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "tests/oracles/bench.h"

namespace {

using namespace domain;
using testing::AllOf;
using testing::HasSubstr;

Milligrams grams(double mass) { return Milligrams::of(std::lround(mass * 1000)); }
Microlitres millilitres(double volume) { return Microlitres::of(std::lround(volume * 1000)); }
MixRatio ratio(double value) { return MixRatio::of(std::lround(value * 1000)); }

TEST(AMix, AgreesWithTheWorkedExamples) {
    for (const oracles::MixExample& row : oracles::kMixExamples) {
        const auto mix =
            mixFor(*parseCode<MixedPowder>(row.powder), grams(row.mass), ratio(row.ratio));
        ASSERT_TRUE(mix) << mix.error().message;
        const Microlitres liquid = millilitres(row.liquid);
        EXPECT_EQ(mix->liquid, (Between<Microlitres>{liquid, liquid})) << row.powder;
        EXPECT_FALSE(mix->specialLiquid || mix->water) << row.powder;
    }
}

TEST(AMix, OfAHundredGramsTakesThePublishedRange) {
    for (const oracles::MixRange& row : oracles::kMixRanges) {
        const auto mix = mixFor(*parseCode<MixedPowder>(row.powder), grams(100));
        ASSERT_TRUE(mix) << mix.error().message;
        EXPECT_EQ(mix->liquid,
                  (Between<Microlitres>{millilitres(row.least), millilitres(row.most)}))
            << row.powder;
        EXPECT_FALSE(mix->source.empty());
    }
}

// Half special liquid, half water: from memory. 300 g of investment take 39 to 60 ml.
TEST(AMix, OfInvestmentSharesItsLiquidBetweenSpecialLiquidAndWater) {
    const auto mix = mixFor(MixedPowder::PhosphateInvestment, grams(300));
    ASSERT_TRUE(mix);
    EXPECT_EQ(text(mix->liquid), "39 to 60 ml");
    EXPECT_EQ(text(*mix->specialLiquid), "19.5 to 30 ml");
    EXPECT_EQ(text(*mix->water), "19.5 to 30 ml");
    EXPECT_THAT(std::string{mix->source}, HasSubstr("from memory"));
    const auto odd = mixFor(MixedPowder::PhosphateInvestment, 7_mg, ratio(0.143));
    ASSERT_TRUE(odd);  // 1 microlitre: the halves still make the whole
    EXPECT_EQ(odd->specialLiquid->least + odd->water->least, odd->liquid.least);
}

TEST(AMix, IsRefusedOutsideWhatIsTaughtAndTheRangesAreNamed) {
    const auto low = mixFor(MixedPowder::Stone, grams(100), ratio(0.249));
    ASSERT_FALSE(low);
    EXPECT_EQ(low.error().code, ErrorCode::Refused);
    EXPECT_THAT(low.error().message, AllOf(HasSubstr("0.249 ml/g"), HasSubstr("0.25 to 0.3 ml/g"),
                                           HasSubstr("0.3 to 0.35 ml/g")));
    EXPECT_TRUE(mixFor(MixedPowder::Stone, grams(100), ratio(0.25)));
    EXPECT_TRUE(mixFor(MixedPowder::Stone, grams(100), ratio(0.35)));
    EXPECT_FALSE(mixFor(MixedPowder::Stone, grams(100), ratio(0.351)));
    EXPECT_FALSE(mixFor(MixedPowder::PhosphateInvestment, grams(100), ratio(0.129)));
    EXPECT_TRUE(mixFor(MixedPowder::PhosphateInvestment, grams(100), ratio(0.13)));
    EXPECT_TRUE(mixFor(MixedPowder::PhosphateInvestment, grams(100), ratio(0.20)));
    EXPECT_FALSE(mixFor(MixedPowder::PhosphateInvestment, grams(100), ratio(0.201)));
    EXPECT_FALSE(mixFor(MixedPowder::Plaster, grams(0)));
}

// The two tables disagree: what only the second teaches is taken, under its own name.
TEST(AMix, NamesTheSchoolThatTeachesItsRatio) {
    const auto source = [](double value) {
        return std::string{mixFor(MixedPowder::Plaster, grams(100), ratio(value))->source};
    };
    EXPECT_THAT(source(0.45), HasSubstr("table 8.2"));
    EXPECT_THAT(source(0.55), HasSubstr("secondary"));
}

TEST(ABurnOut, OfCobaltChromiumRisesInTheTimeOfAnotherSource) {
    const auto steps = burnOutOf(FrameworkMaterial::CobaltChromium);
    ASSERT_TRUE(steps);
    const auto clock = clockOf(*steps);
    ASSERT_EQ(clock.size(), 2U);
    // by hand: 230 C at 7 C/min are 33 min, 750 C are 108 min
    EXPECT_EQ(clock[0].starts, 0_min);
    EXPECT_EQ(clock[0].reached, 33_min);
    EXPECT_EQ(clock[0].ends, 93_min);
    EXPECT_EQ(clock[1].starts, 93_min);
    EXPECT_EQ(clock[1].reached, 201_min);
    EXPECT_EQ(clock[1].ends, 261_min);
    EXPECT_GE(clock[1].reached.count(), oracles::kCobaltChromiumRise[0]);
    EXPECT_LE(clock[1].reached.count(), oracles::kCobaltChromiumRise[1]);
}

// Teaching notes, secondary source: 200 C for 30 min, 480 to 650 C for 30 min.
TEST(ABurnOut, OfGoldHoldsTheTaughtTemperatures) {
    const auto steps = burnOutOf(FrameworkMaterial::GoldTypeIv);
    ASSERT_TRUE(steps);
    ASSERT_EQ(steps->size(), 2U);
    EXPECT_EQ((*steps)[0].target, 200_C);
    EXPECT_EQ((*steps)[0].hold, 30_min);
    EXPECT_EQ(text((*steps)[1].targets), "480 to 650 C");
    EXPECT_EQ((*steps)[1].hold, 30_min);
}

TEST(ABurnOut, RunsWithinWhatIsTaughtAndNamesItsSource) {
    for (const auto& material : enumCodes<FrameworkMaterial>) {
        const auto steps = burnOutOf(material.value);
        EXPECT_EQ(steps.has_value(), material.value == FrameworkMaterial::CobaltChromium ||
                                         material.value == FrameworkMaterial::GoldTypeIv);
        if (!steps) continue;
        for (const BurnOutStep& step : *steps) {
            EXPECT_TRUE(step.rates.holds(step.rate));
            EXPECT_TRUE(step.targets.holds(step.target));
            EXPECT_TRUE(step.holds.holds(step.hold));
            EXPECT_FALSE(step.source.empty());
        }
    }
}

TEST(ABurnOut, WithoutStepsTakesNoTime) { EXPECT_TRUE(clockOf({}).empty()); }

}  // namespace
