#include <gtest/gtest.h>

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

TEST(WaxToMetal, AgreesWithThePublishedExamples) {
    for (const oracles::WaxExample& row : oracles::kWaxExamples)
        EXPECT_NEAR(alloyCharge(row.pattern, row.alloyDensity, row.patternDensity, row.button),
                    row.charge, 0.01);
}

}  // namespace
