#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "domain/base/colour_difference.h"
#include "domain/materials/shade_guide.h"
#include "tests/oracles/colour_pairs.h"

namespace {

using namespace domain;

// Sharma, Wu, Dalal 2005: all 34 pairs to four decimals, in both directions.
TEST(ColourDifference, AgreesWithAllPublishedPairsToFourDecimals) {
    for (const oracles::ColourPair& pair : oracles::kColourPairs) {
        EXPECT_NEAR(colourDifference(pair.first, pair.second), pair.difference, 5e-5);
        EXPECT_NEAR(colourDifference(pair.second, pair.first), pair.difference, 5e-5);
    }
    EXPECT_EQ(std::size(oracles::kColourPairs), 34U);
}

TEST(ColourDifference, OfAColourWithItselfIsNothing) {
    for (const oracles::ColourPair& pair : oracles::kColourPairs)
        EXPECT_EQ(colourDifference(pair.first, pair.first), 0);
    EXPECT_EQ(colourDifference(LabColour{}, LabColour{}), 0);
}

TEST(LabColour, ReadsWhatItWritesAndNothingElse) {
    for (const char* text : {"76.04 -0.08 16.73", "0 0 0", "100 127 -128", "75 1.36 19.61"}) {
        const auto colour = LabColour::parse(text);
        ASSERT_TRUE(colour) << text;
        EXPECT_EQ(colour->text(), text);
    }
    for (const char* text :
         {"", "76.04", "76.04 -0.08", "76.04 -0.08 16.73 1", "76.041 0 0", "100.01 0 0", "-1 0 0",
          "50 127.01 0", "50 0 -128.5", "50  0 0", "50 0 0 ", " 50 0 0", "50 +1 0", "50 - 0",
          "a b c", "50 1e1 0", "50 99999999999999999999 0"})
        EXPECT_FALSE(LabColour::parse(text)) << text;
}

TEST(LabColour, KeepsItsAxesApart) {
    const auto colour = LabColour::parse("76.04 -0.08 16.73");
    ASSERT_TRUE(colour);
    EXPECT_DOUBLE_EQ(colour->lightness(), 76.04);
    EXPECT_DOUBLE_EQ(colour->a(), -0.08);
    EXPECT_DOUBLE_EQ(colour->b(), 16.73);
}

TEST(TheShippedGuide, HasSixteenTabsAndSaysThatItsColoursAreFromMemory) {
    EXPECT_EQ(shippedGuide().tabs.size(), 16U);
    EXPECT_EQ(shippedGuide().source, "from memory");
    for (const ShadeTab& tab : shippedGuide().tabs) EXPECT_TRUE(tab.colour) << tab.name;
}

double between(const char* one, const char* other) {
    return colourDifference(*tabNamed(shippedGuide(), one)->colour,
                            *tabNamed(shippedGuide(), other)->colour);
}

// Differences between tabs, worked elsewhere from the same remembered colours.
TEST(TheShippedGuide, HasTabsThatDifferAsWorkedElsewhere) {
    EXPECT_NEAR(between("A1", "A2"), 3.90, 0.005);
    EXPECT_NEAR(between("A1", "B1"), 0.70, 0.005);
    EXPECT_NEAR(between("A2", "A3"), 2.30, 0.005);
    EXPECT_NEAR(between("A3", "A3.5"), 2.53, 0.005);
    EXPECT_NEAR(between("A3.5", "A4"), 2.92, 0.005);
    EXPECT_NEAR(between("C1", "C2"), 3.79, 0.005);
    EXPECT_NEAR(between("C2", "C3"), 1.71, 0.005);
    EXPECT_NEAR(between("A2", "D2"), 2.11, 0.005);
    EXPECT_NEAR(between("A2", "B2"), 1.88, 0.005);
}

// Paravina et al. 2015: half see 0.8, half accept 1.8.
TEST(TheThresholds, TellTabsThatLookAlikeFromTabsThatDoNot) {
    EXPECT_LE(between("A1", "B1"), kPerceptible);
    EXPECT_GT(between("C2", "C3"), kPerceptible);
    EXPECT_LE(between("C2", "C3"), kAcceptable);
    EXPECT_GT(between("A2", "B2"), kAcceptable);
}

TEST(AGuide, IsFoundByNameWithoutRegardToCapitals) {
    EXPECT_EQ(guideNamed(shippedGuides(), "a-d SCALE"), &shippedGuide());
    EXPECT_EQ(guideNamed(shippedGuides(), "a-d scal"), nullptr);
    EXPECT_EQ(tabNamed(shippedGuide(), "a3.5")->name, "A3.5");
    EXPECT_EQ(tabNamed(shippedGuide(), "A5"), nullptr);
}

TEST(NearestTabs, ComeWithTheMostAlikeFirstAndWithoutUnmeasuredOnes) {
    ShadeGuide guide = shippedGuide();
    guide.tabs.push_back({"E1", {}});
    const auto tabs = nearestTabs(guide, *tabNamed(guide, "C2")->colour);
    ASSERT_EQ(tabs.size(), 16U);
    EXPECT_EQ(tabs[0].tab->name, "C2");
    EXPECT_EQ(tabs[0].difference, 0);
    EXPECT_TRUE(std::ranges::is_sorted(tabs, {}, &TabDistance::difference));
}

}  // namespace
