#include "domain/design/fulcrum.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/support/designs.h"

namespace {

using namespace domain;

Rest occlusal(Tooth tooth, Surface side) {
    return {.tooth = tooth, .kind = RestKind::Occlusal, .side = side};
}

/// Lower Class II mod 1: 36 and 37 missing behind 35, 46 missing in front of 47.
Prescription publishedExample() {
    Prescription prescription;
    prescription.arch = Arch::Lower;
    prescription.saddles = {{.teeth = {36_fdi, 37_fdi}}, {.teeth = {46_fdi}}};
    for (const Tooth tooth : {36_fdi, 37_fdi, 46_fdi})
        prescription.dentition.set(tooth, ToothState::Missing);
    prescription.rests = {occlusal(47_fdi, Surface::Distal), occlusal(35_fdi, Surface::Distal)};
    return prescription;
}

const ArchForm& lower() { return ArchForm::mean(Arch::Lower); }

// Class II mod 1, fulcrum through the distal rest of the left second premolar and that of the right
// second molar: the best indirect retainer is a mesial rest on the right first premolar (published
// worked example of a teaching set; secondary source).
TEST(FulcrumLine, OfThePublishedExampleAsksForTheRightFirstPremolar) {
    const Prescription prescription = publishedExample();
    const auto fulcrum = fulcrumOf(prescription);
    ASSERT_TRUE(fulcrum);
    EXPECT_EQ(fulcrum->right.tooth, 47_fdi);
    EXPECT_EQ(fulcrum->left.tooth, 35_fdi);
    const auto best = bestSeat(prescription, lower(), *fulcrum);
    ASSERT_TRUE(best);
    EXPECT_EQ(best->tooth, 44_fdi);
    EXPECT_EQ(best->side, Surface::Mesial);
    EXPECT_EQ(best->kind, RestKind::Occlusal);
    EXPECT_NEAR(best->distance,
                fulcrum->across(placeOf(lower(), occlusal(44_fdi, Surface::Mesial))), 1e-12);
}

TEST(FulcrumLine, OfThePublishedExampleInTheUpperArchAsksForTheSameTooth) {
    Prescription prescription;
    prescription.arch = Arch::Upper;
    prescription.saddles = {{.teeth = {26_fdi, 27_fdi}}, {.teeth = {16_fdi}}};
    for (const Tooth tooth : {26_fdi, 27_fdi, 16_fdi})
        prescription.dentition.set(tooth, ToothState::Missing);
    prescription.rests = {occlusal(17_fdi, Surface::Distal), occlusal(25_fdi, Surface::Distal)};
    const auto fulcrum = fulcrumOf(prescription);
    ASSERT_TRUE(fulcrum);
    EXPECT_EQ(bestSeat(prescription, ArchForm::mean(Arch::Upper), *fulcrum)->tooth, 14_fdi);
}

TEST(FulcrumLine, HasTheBaseOnOneSideAndTheRetainerOnTheOther) {
    const auto fulcrum = fulcrumOf(publishedExample());
    ASSERT_TRUE(fulcrum);
    EXPECT_TRUE(fulcrum->isAcross(placeOf(lower(), occlusal(44_fdi, Surface::Mesial))));
    EXPECT_FALSE(fulcrum->isAcross(placeOf(lower(), occlusal(47_fdi, Surface::Distal))));
    EXPECT_FALSE(fulcrum->isAcross(placeOf(lower(), occlusal(36_fdi, Surface::Mesial))));
    EXPECT_LT(fulcrum->across(fulcrum->base), 0);
    EXPECT_GT(fulcrum->loadArm(), -fulcrum->across(fulcrum->base));
}

// The formula itself, on a line whose distances can be read off: |(B - A) x (R - A)| / |B - A|.
TEST(FulcrumLine, MeasuresDistancesAtRightAngles) {
    Fulcrum fulcrum;
    fulcrum.from = {0, 0};
    fulcrum.to = {6, 8};
    fulcrum.base = {10, 0};
    fulcrum.farEnd = {16, -12};
    EXPECT_NEAR(fulcrum.across({-4, 3}), 5, 1e-12);
    EXPECT_NEAR(fulcrum.across({4, -3}), -5, 1e-12);
    EXPECT_NEAR(fulcrum.loadArm(), 20, 1e-12);
    EXPECT_FALSE(fulcrum.isAcross({3, 4}));
    EXPECT_FALSE(fulcrum.isAcross({-0.08, 0.06}));  // 0.1 mm
    EXPECT_TRUE(fulcrum.isAcross({-0.088, 0.066}));
    fulcrum.base = {-10, 0};
    EXPECT_NEAR(fulcrum.across({-4, 3}), -5, 1e-12);
}

// University of Oklahoma, review question 1: always in Class I and II, never in Class III.
TEST(FulcrumLine, ExistsInClassIAndIIAndNeverInClassIII) {
    EXPECT_TRUE(fulcrumOf(support::lowerClassI()));
    EXPECT_TRUE(fulcrumOf(support::upperClassIIMod1()));
    EXPECT_TRUE(fulcrumOf(support::lowerClassIIMod1()));
    EXPECT_FALSE(fulcrumOf(support::upperClassIIIMod1()));
    EXPECT_FALSE(fulcrumOf(support::lowerClassIIIMod1()));
    EXPECT_FALSE(fulcrumOf(Prescription{}));
}

// Class IV: through the two most mesial rests; the retainer lies behind them (after McCracken).
TEST(FulcrumLine, OfClassIVRunsInFrontAndAsksForASeatBehind) {
    const Prescription prescription = support::upperClassIV();
    const auto fulcrum = fulcrumOf(prescription);
    ASSERT_TRUE(fulcrum);
    EXPECT_EQ(fulcrum->right.tooth, 13_fdi);
    EXPECT_EQ(fulcrum->left.tooth, 23_fdi);
    const auto best = bestSeat(prescription, ArchForm::mean(Arch::Upper), *fulcrum);
    ASSERT_TRUE(best);
    EXPECT_EQ(best->tooth.place(), 7);
    EXPECT_EQ(best->side, Surface::Distal);
}

TEST(FulcrumLine, OfClassIVNeedsARestOnEachSideOfTheSpace) {
    Prescription prescription = support::upperClassIV();
    std::erase_if(prescription.rests, [](const Rest& rest) { return rest.tooth.quadrant() == 2; });
    EXPECT_FALSE(fulcrumOf(prescription));
    prescription = support::upperClassIV();
    std::erase_if(prescription.rests, [](const Rest& rest) { return rest.tooth.quadrant() == 1; });
    EXPECT_FALSE(fulcrumOf(prescription));
}

TEST(FulcrumLine, NeedsTwoRestsInItsArchThatLieApart) {
    Prescription prescription = publishedExample();
    prescription.rests.pop_back();
    EXPECT_FALSE(fulcrumOf(prescription));
    prescription.rests.push_back(prescription.rests.front());
    EXPECT_FALSE(fulcrumOf(prescription));
    prescription.rests.back().tooth = 25_fdi;
    EXPECT_FALSE(fulcrumOf(prescription));
}

TEST(TheBestSeat, IsACanineWhereItLiesMuchFartherAway) {
    Prescription prescription = support::lowerClassI();
    const auto fulcrum = fulcrumOf(prescription);
    ASSERT_TRUE(fulcrum);
    const auto best = bestSeat(prescription, lower(), *fulcrum);
    ASSERT_TRUE(best);
    EXPECT_EQ(best->tooth.place(), 3);
    EXPECT_EQ(best->kind, RestKind::Cingulum);
}

TEST(TheBestSeat, IsNoneWhereNoToothThatCanCarryOneStandsAcross) {
    Prescription prescription = support::lowerClassI();
    const auto fulcrum = fulcrumOf(prescription);
    ASSERT_TRUE(fulcrum);
    prescription.dentition.set(43_fdi, ToothState::NotReplaced);
    prescription.dentition.set(33_fdi, ToothState::NotReplaced);
    EXPECT_FALSE(bestSeat(prescription, lower(), *fulcrum));
    for (int position = 0; position < kTeethInArch; ++position)
        prescription.dentition.set(Tooth::at(Arch::Lower, position), ToothState::NotReplaced);
    EXPECT_FALSE(bestSeat(prescription, lower(), *fulcrum));
}

TEST(ThePlacesOfRests, LieWhereTheSeatsAre) {
    const ToothPlace tooth = lower().place(44_fdi);
    const auto offset = [&](const Rest& rest) {
        const Point away = placeOf(lower(), rest) - tooth.centre;
        return Point{away.x * tooth.mesial.x + away.y * tooth.mesial.y,
                     away.x * tooth.outward.x + away.y * tooth.outward.y};
    };
    EXPECT_NEAR(offset(occlusal(44_fdi, Surface::Mesial)).x, 0.7 * 3.5, 1e-9);
    EXPECT_NEAR(offset(occlusal(44_fdi, Surface::Distal)).x, -0.7 * 3.5, 1e-9);
    EXPECT_NEAR(offset({.tooth = 44_fdi, .kind = RestKind::Occlusal}).x, 0, 1e-9);
    EXPECT_NEAR(offset({.tooth = 44_fdi, .kind = RestKind::Cingulum}).y, -0.5 * 3.75, 1e-9);
    EXPECT_NEAR(offset({.tooth = 44_fdi, .kind = RestKind::Incisal, .side = Surface::Distal}).x,
                -0.7 * 3.5, 1e-9);
}

TEST(AMeasuredArch, ScalesTheDistances) {
    Prescription prescription = publishedExample();
    const double usual = fulcrumOf(prescription)->loadArm();
    prescription.survey.archWidth = 66'000_um;  // a fifth wider and deeper than the mean
    prescription.survey.archDepth = 50'400_um;
    EXPECT_NEAR(fulcrumOf(prescription)->loadArm(), usual * 1.2, 0.01);
}

TEST(AMeasuredArch, ThatCannotBeIsNotUsed) {
    Prescription prescription = publishedExample();
    const double usual = fulcrumOf(prescription)->loadArm();
    for (const auto& [width, depth] :
         {std::pair{0_um, 0_um}, {34'999_um, 19'999_um}, {90'001_um, 70'001_um}}) {
        prescription.survey.archWidth = width;
        prescription.survey.archDepth = depth;
        EXPECT_EQ(fulcrumOf(prescription)->loadArm(), usual);
    }
    for (const auto& [width, depth] : {std::pair{35'000_um, 20'000_um}, {90'000_um, 70'000_um}}) {
        prescription.survey.archWidth = width;
        prescription.survey.archDepth = depth;
        EXPECT_NE(fulcrumOf(prescription)->loadArm(), usual);
    }
}

}  // namespace
