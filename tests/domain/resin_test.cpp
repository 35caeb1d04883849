#include "domain/materials/resin_data.h"

#include <gtest/gtest.h>

#include "tests/oracles/bench.h"

namespace {

using namespace domain;

// 21 to 24 g to 10 ml, and 2.0 to 2.5 g to 1 g: from memory and common practice.
TEST(AResinMix, TakesTheTaughtLiquid) {
    const ResinMix mix = resinMixFor(24'000_mg);
    EXPECT_EQ(mix.byVolume.least, 10'000_ul);
    EXPECT_EQ(mix.byVolume.most, 11'429_ul);  // 24 x 10 / 21
    EXPECT_EQ(text(mix.byMass), "9.6 to 12 g");
    EXPECT_EQ(mix.byMassVolume.least, 10'159_ul);  // 9.6 / 0.945
    EXPECT_EQ(mix.byMassVolume.most, 12'698_ul);   // 12 / 0.945
    EXPECT_EQ(resinMixFor(21'000_mg).byVolume.most, 10'000_ul);
}

// 22 to 30 g of powder and 10 to 13 ml of liquid for a full denture: common practice, no source.
TEST(AResinMix, GivesAFullDentureWhatTheBenchIsUsedTo) {
    EXPECT_LE(resinMixFor(22'000_mg).byVolume.least, 10'000_ul);
    EXPECT_GE(resinMixFor(30'000_mg).byVolume.most, 13'000_ul);
}

TEST(TheCureCycles, AreThePublishedOnes) {
    ASSERT_EQ(cureProgrammes().size(), std::size(oracles::kCureCycles) + 1);
    std::size_t at = 0;
    for (const auto& code : enumCodes<CureCycle>) {
        const CureProgramme& programme = programmeOf(code.value);
        EXPECT_EQ(programme.cycle, code.value);
        EXPECT_FALSE(programme.source.empty());
        const auto& row = at < std::size(oracles::kCureCycles) ? oracles::kCureCycles[at++]
                                                               : oracles::kDirectBoil;
        EXPECT_EQ(code.word, row.word);
        ASSERT_EQ(programme.holds.size(), row.secondLength > 0 ? 2U : 1U) << row.word;
        EXPECT_EQ(programme.holds[0].temperature.count(), row.first * 1000) << row.word;
        EXPECT_EQ(programme.holds[0].length.count(), row.firstLength) << row.word;
        if (row.secondLength == 0) continue;
        EXPECT_EQ(programme.holds[1].temperature.count(), row.second * 1000) << row.word;
        EXPECT_EQ(programme.holds[1].length.count(), row.secondLength) << row.word;
    }
}

TEST(TheCureCycles, AreLongOrShortAndOneBoilsAtOnce) {
    for (const CureProgramme& programme : cureProgrammes()) {
        const std::string_view word = codeOf(programme.cycle);
        EXPECT_EQ(programme.isLong, word.starts_with("long")) << word;
        EXPECT_EQ(programme.boilsAtOnce, word == oracles::kDirectBoil.word) << word;
    }
    EXPECT_EQ(text(programmeOf(CureCycle::Long74Boil)), "74 C for 480 min, then 100 C for 60 min");
}

TEST(TheResins, KeepTheStandardAsMeasuredInHotWaterAndCold) {
    const auto percent = [](BaseResin resin) {
        return static_cast<double>(limitsOf(resin).residualMonomer.count()) / 10'000;
    };
    // 2.2 %: published (IJERSTE 2016); 4.5 %: from memory
    EXPECT_DOUBLE_EQ(percent(BaseResin::HeatCured), 2.2);
    EXPECT_DOUBLE_EQ(percent(BaseResin::SelfCured), 4.5);
    EXPECT_LT(oracles::kHotWaterMonomer, percent(BaseResin::HeatCured));
    EXPECT_LT(oracles::kColdCureMonomer, percent(BaseResin::SelfCured));
    EXPECT_GT(oracles::kColdCureMonomer, percent(BaseResin::HeatCured));
}

// ISO 20795-1, from memory: types 1 to 5; 65 MPa and 2 GPa, of type 2 60 MPa and 1.5 GPa.
TEST(TheResins, AreTheFiveTypesOfTheStandard) {
    int type = 0;
    for (const auto& code : enumCodes<BaseResin>) {
        const ResinLimits& limits = limitsOf(code.value);
        EXPECT_EQ(limits.type, ++type);
        EXPECT_EQ(limits.strength, type == 2 ? 60_MPa : 65_MPa);
        EXPECT_EQ(text(limits.modulus), type == 2 ? "1.5 GPa" : "2 GPa");
        EXPECT_FALSE(limits.cures.empty());
    }
}

}  // namespace
