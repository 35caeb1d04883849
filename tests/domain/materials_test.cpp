#include <gtest/gtest.h>

#include <cmath>

#include "domain/materials/alloy_data.h"
#include "domain/materials/casting.h"
#include "tests/oracles/alloys.h"

namespace {

using namespace domain;

TEST(TheMaterials, HaveASourceForEachValueAndRangesTheRightWayRound) {
    for (const Material& material : materials())
        for (const Property& property : {material.modulus, material.strength, material.density}) {
            EXPECT_FALSE(property.source.empty()) << material.name;
            EXPECT_GT(property.range.least, 0) << material.name;
            EXPECT_LE(property.range.least, property.range.most) << material.name;
        }
}

// Materials 2021;14:408, table 2: the moduli it computes clasps with lie in the ranges.
TEST(TheMaterials, HoldThePublishedModuli) {
    const auto holds = [](const Material& material, double modulus) {
        return material.modulus.range.overlaps(Range::exactly(modulus));
    };
    EXPECT_TRUE(holds(materialOf(ArmMaterial::CastCobaltChromium), 220));
    EXPECT_TRUE(holds(materialOf(ArmMaterial::CastTitanium), 110));
    EXPECT_TRUE(holds(materialOf(ArmMaterial::CastGold), 91));
    EXPECT_TRUE(holds(materialOf(ArmMaterial::Polymer), 3.15));
    EXPECT_TRUE(
        holds(materialOf(FrameworkMaterial::Polyetheretherketone, FrameworkMaking::Milled), 3.74));
}

TEST(TheMaterials, TellAPrintedAlloyFromACastOne) {
    const auto of = [](FrameworkMaking making) {
        return materialOf(FrameworkMaterial::CobaltChromium, making).name;
    };
    EXPECT_NE(of(FrameworkMaking::Printed), of(FrameworkMaking::Cast));
    EXPECT_EQ(of(FrameworkMaking::Milled), of(FrameworkMaking::Cast));
}

TEST(TheMaterials, AreAsManyAsTheFrameworksAndArmsNeed) {
    std::vector<std::string_view> used;
    for (const auto& material : enumCodes<FrameworkMaterial>)
        for (const auto& making : enumCodes<FrameworkMaking>)
            used.push_back(materialOf(material.value, making.value).name);
    for (const auto& arm : enumCodes<ArmMaterial>) used.push_back(materialOf(arm.value).name);
    for (const Material& material : materials())
        EXPECT_GT(std::ranges::count(used, material.name), 0) << material.name;
    EXPECT_EQ(materialOf(ArmMaterial::CastNickelChromium).name, "nickel-chromium");
    EXPECT_EQ(materialOf(FrameworkMaterial::TitaniumAlloy, FrameworkMaking::Cast).name,
              "titanium alloy");
    EXPECT_EQ(materialOf(FrameworkMaterial::GoldTypeIv, FrameworkMaking::Cast).name,
              "gold type IV");
}

// The table of types: 0, 80, 180, 270, 360 and 500 MPa; type 5 asks 150 GPa and 2 % as well.
TEST(AlloyTypes, AskThePublishedStrengths) {
    const int strengths[] = {0, 80, 180, 270, 360, 500};
    std::size_t at = 0;
    for (const auto& type : enumCodes<AlloyType>)
        EXPECT_EQ(limitsOf(type.value).proofStrength.count(), strengths[at++]);
    EXPECT_EQ(limitsOf(AlloyType::Type5).modulus, 150_GPa);
    EXPECT_EQ(limitsOf(AlloyType::Type5).elongation, 20'000_ppm);
    EXPECT_EQ(limitsOf(AlloyType::Type4).modulus, Stiffness{});
    // from memory: 18, 10, 5 and 2 %
    EXPECT_EQ(limitsOf(AlloyType::Type1).elongation, 180'000_ppm);
    EXPECT_EQ(limitsOf(AlloyType::Type2).elongation, 100'000_ppm);
    EXPECT_EQ(limitsOf(AlloyType::Type3).elongation, 50'000_ppm);
    EXPECT_EQ(limitsOf(AlloyType::Type4).elongation, 20'000_ppm);
}

Milligrams grams(double mass) { return Milligrams::of(std::lround(mass * 1000)); }
Density density(double value) { return Density::of(std::lround(value * 1000)); }

TEST(WaxToMetal, AgreesWithThePublishedExamples) {
    for (const oracles::WaxExample& row : oracles::kWaxExamples)
        EXPECT_NEAR(static_cast<double>(alloyCharge(grams(row.pattern), density(row.alloyDensity),
                                                    density(row.patternDensity), grams(row.button))
                                            .count()) /
                        1000,
                    row.charge, 0.01);
}

// 5 g of wax in gold of SG 13.5, a tenth for the button: 74.25 g; published wax-to-metal table.
TEST(AMould, TakesATenthOfItsMetalForTheButtonWhereNoneIsWeighed) {
    const auto charge = chargeFor({.material = FrameworkMaterial::GoldTypeIv,
                                   .framework = 5000_mg,
                                   .alloy = Density::of(13'500),
                                   .pattern = Density::of(1000)});
    ASSERT_TRUE(charge) << charge.error().message;
    EXPECT_EQ(text(charge->metal), "67.5 g");
    EXPECT_EQ(text(charge->button), "6.75 g");
    EXPECT_EQ(text(charge->charge), "74.25 g");
}

// 1.6 g of pattern and a button of 5 g: about 19.5 g of cobalt-chromium and 12.8 g of titanium,
// worked by hand from densities within the ranges.
TEST(AMould, HoldsTheWorkedChargesInItsRanges) {
    const auto of = [](FrameworkMaterial material) {
        return *chargeFor(
            {.material = material, .framework = 1000_mg, .sprues = 600_mg, .button = 5000_mg});
    };
    const AlloyCharge cobalt = of(FrameworkMaterial::CobaltChromium);
    EXPECT_TRUE(cobalt.charge.holds(19'500_mg)) << text(cobalt.charge);
    EXPECT_EQ(cobalt.pattern, 1600_mg);
    EXPECT_EQ(text(cobalt.button), "5 g");
    EXPECT_TRUE(of(FrameworkMaterial::Titanium).charge.holds(12'800_mg));
    // by hand: 1.6 g x 8.4 / 0.97 = 13.856 g, 1.6 g x 8.7 / 0.90 = 15.467 g
    EXPECT_EQ(text(cobalt.metal), "13.856 to 15.467 g");
}

TEST(AMould, IsRefusedWhereItCannotBeCast) {
    const auto refused = [](const Mould& mould) {
        const auto charge = chargeFor(mould);
        return !charge && charge.error().code == ErrorCode::Refused &&
               charge.error().message.find("expected") != std::string::npos;
    };
    const Mould good{.material = FrameworkMaterial::Titanium, .framework = 1000_mg};
    EXPECT_FALSE(refused(good));
    Mould mould = good;
    mould.material = FrameworkMaterial::Acetal;
    EXPECT_TRUE(refused(mould));
    mould.material = FrameworkMaterial::Polyetheretherketone;
    EXPECT_TRUE(refused(mould));
    mould = good;
    mould.framework = 0_mg;
    EXPECT_TRUE(refused(mould));
    for (const std::int64_t density : {0, 499, 2001}) {
        mould = good;
        mould.pattern = Density::of(density);
        EXPECT_TRUE(refused(mould)) << density;
    }
    for (const std::int64_t density : {0, 1999, 25'001}) {
        mould = good;
        mould.alloy = Density::of(density);
        EXPECT_TRUE(refused(mould)) << density;
    }
    mould = good;
    mould.pattern = Density::of(500);
    mould.alloy = Density::of(25'000);
    EXPECT_FALSE(refused(mould));
}

TEST(AMould, OfTheHeaviestPatternStaysAPositiveMass) {
    const auto charge = chargeFor({.material = FrameworkMaterial::GoldTypeIv,
                                   .framework = Milligrams::of(MilligramUnit::kMost),
                                   .sprues = Milligrams::of(MilligramUnit::kMost),
                                   .alloy = kPossibleAlloy.most,
                                   .pattern = kPossiblePattern.least});
    ASSERT_TRUE(charge);
    EXPECT_EQ(text(charge->metal), "10000000 g");
}

}  // namespace
