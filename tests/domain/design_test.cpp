#include "domain/design/design.h"

#include <gtest/gtest.h>

#include "domain/design/design_view.h"
#include "domain/design/mass_estimate.h"
#include "tests/support/designs.h"

namespace {

using namespace domain;

constexpr Prescription (*kFrameworks[])() = {
    support::upperClassIIIMod1, support::lowerClassI,  support::upperClassIIMod1,
    support::lowerClassIIMod1,  support::upperClassIV, support::lowerClassIIIMod1};

// Crowns of Wheeler's table (from memory): 14 and 15 are 7 mm wide each; 24, 25 and 26 are 7, 7 and
// 10 mm.
TEST(SaddleSpans, AreAsLongAsTheCrownsTheyReplace) {
    const auto description = descriptionOf(support::upperClassIIIMod1());
    ASSERT_EQ(description.saddles.size(), 2U);
    EXPECT_EQ(description.saddles[0].teeth, 2);
    EXPECT_NEAR(description.saddles[0].along, 14, 1e-9);
    EXPECT_EQ(description.saddles[1].teeth, 3);
    EXPECT_NEAR(description.saddles[1].along, 24, 1e-9);
    for (const SaddleSpan& span : description.saddles) {
        EXPECT_LT(span.straight, span.along);
        EXPECT_GT(span.straight, 0.85 * span.along);
        EXPECT_TRUE(span.isSurrounded());
    }
    EXPECT_EQ(description.saddles[0].right.clasped, 16_fdi);
    EXPECT_EQ(description.saddles[0].left.abutment, 13_fdi);
}

TEST(SaddleSpans, LeaveOutSpacesClosedByDriftAndKeepThoseLeftOpen) {
    Prescription prescription = support::upperClassIIIMod1();
    prescription.saddles[1].teeth = {24_fdi, 26_fdi};
    prescription.dentition.set(25_fdi, ToothState::Closed);
    EXPECT_NEAR(descriptionOf(prescription).saddles[1].along, 17, 1e-9);
    EXPECT_EQ(descriptionOf(prescription).saddles[1].teeth, 2);
    prescription.dentition.set(25_fdi, ToothState::NotReplaced);
    EXPECT_NEAR(descriptionOf(prescription).saddles[1].along, 24, 1e-9);
}

TEST(SaddleSpans, AreNeverSurroundedAtAFreeEnd) {
    const auto description = descriptionOf(support::lowerClassI());
    ASSERT_EQ(description.saddles.size(), 2U);
    EXPECT_FALSE(description.saddles[0].isSurrounded());
    EXPECT_FALSE(description.saddles[0].right.abutment);
    EXPECT_EQ(description.saddles[0].left.clasped, 44_fdi);
    EXPECT_FALSE(description.saddles[1].isSurrounded());
    EXPECT_EQ(description.saddles[1].right.clasped, 34_fdi);
}

TEST(SaddleSpans, AreHeldByAClaspOnTheToothBeyondTheAbutmentToo) {
    Prescription prescription = support::upperClassIIIMod1();
    for (Clasp& clasp : prescription.clasps)
        if (clasp.tooth == 16_fdi) clasp.tooth = 17_fdi;
    EXPECT_EQ(descriptionOf(prescription).saddles[0].right.clasped, 17_fdi);
    prescription.clasps.clear();
    EXPECT_FALSE(descriptionOf(prescription).saddles[0].right.clasped);
}

TEST(SaddleSpans, AtTheVeryEndOfTheArchHaveNoToothBeyond) {
    Prescription prescription;
    prescription.arch = Arch::Upper;
    prescription.dentition.set(18_fdi, ToothState::Present);
    prescription.dentition.set(17_fdi, ToothState::Missing);
    prescription.dentition.set(27_fdi, ToothState::Missing);
    prescription.dentition.set(28_fdi, ToothState::Present);
    prescription.saddles = {{.teeth = {17_fdi}}, {.teeth = {27_fdi}}};
    prescription.rests = {{.tooth = 18_fdi}, {.tooth = 28_fdi}};
    const auto description = descriptionOf(prescription);
    ASSERT_EQ(description.saddles.size(), 2U);
    EXPECT_EQ(description.saddles[0].right.abutment, 18_fdi);
    EXPECT_FALSE(description.saddles[0].right.clasped);
    EXPECT_EQ(description.saddles[1].left.abutment, 28_fdi);
}

TEST(TheConnector, SpansFromTheOutermostPartOnOneSideToThatOnTheOther) {
    const auto description = descriptionOf(support::upperClassIIIMod1());
    ASSERT_TRUE(description.connector);
    // From the middle of 16 to the middle of 27: crowns 7 + 7 + 7.5 + 6.5 + 8.5 + 5 and the same
    // with 10 + 4.5 instead of the half molar.
    EXPECT_NEAR(description.connector->along, 41.5 + 51.0, 1e-9);
    EXPECT_LT(description.connector->across, ArchForm::mean(Arch::Upper).extent().width);
    EXPECT_GT(description.connector->across, 45);
    EXPECT_FALSE(descriptionOf(Prescription{}).connector);
    Prescription other;
    other.rests = {{.tooth = 36_fdi}};  // of the other arch
    EXPECT_FALSE(descriptionOf(other).connector);
}

TEST(IndirectRetainers, AreDescribedByTheirDistanceAndTheirShareOfTheLoad) {
    const auto description = descriptionOf(support::lowerClassIIMod1());
    ASSERT_TRUE(description.design.fulcrum);
    ASSERT_EQ(description.retainers.size(), 1U);
    EXPECT_EQ(description.retainers[0].tooth, 44_fdi);
    EXPECT_GT(description.retainers[0].across, 10);
    EXPECT_NEAR(description.retainers[0].loadRatio,
                description.design.fulcrum->loadArm() / description.retainers[0].across, 1e-9);
    EXPECT_TRUE(descriptionOf(support::upperClassIIIMod1()).retainers.empty());
}

TEST(IndirectRetainers, OnTheWrongSideHaveNoShare) {
    Prescription prescription = support::lowerClassIIMod1();
    prescription.indirectRetainers = {{47_fdi}};
    const auto description = descriptionOf(prescription);
    ASSERT_EQ(description.retainers.size(), 1U);
    EXPECT_EQ(description.retainers[0].loadRatio, 0);
}

// Mori et al., Journal of Oral Rehabilitation 1997: titanium frameworks weigh 1.3 to 3.9 g less
// than those of cobalt-chromium, which makes 0.33 to 1.00 cm^3 and 2.8 to 8.4 g of the latter.
TEST(TheMassEstimate, OfEveryTextbookFrameworkMeetsTheMeasuredRange) {
    constexpr Range kVolumes{0.33, 1.00};
    constexpr Range kMasses{2.8, 8.4};
    for (const auto make : kFrameworks) {
        const Prescription prescription = make();
        const auto description = descriptionOf(prescription);
        ASSERT_TRUE(description.volume);
        ASSERT_TRUE(description.mass);
        EXPECT_TRUE(kVolumes.overlaps(Range::exactly(description.volume->middle())))
            << *prescription.statedClass << ": " << description.volume->middle();
        EXPECT_TRUE(description.mass->overlaps(kMasses));
        Prescription titanium = prescription;
        titanium.framework.material = FrameworkMaterial::Titanium;
        const double lighter = description.mass->middle() - descriptionOf(titanium).mass->middle();
        EXPECT_TRUE((Range{1.3, 3.9}.overlaps(Range::exactly(lighter))))
            << *prescription.statedClass << ": " << lighter;
    }
}

TEST(TheMassEstimate, IsNoneWithoutConnectorOrMaterial) {
    Prescription prescription = support::lowerClassI();
    prescription.framework.material = {};
    EXPECT_TRUE(descriptionOf(prescription).volume);
    EXPECT_FALSE(descriptionOf(prescription).mass);
    prescription.majorConnector = {};
    EXPECT_FALSE(descriptionOf(prescription).volume);
    EXPECT_FALSE(frameworkVolume(support::lowerClassI(), {}, {}));
}

TEST(TheMassEstimate, IsNoneForADentureWithoutFramework) {
    EXPECT_FALSE(descriptionOf(support::interimUpper()).volume);
}

TEST(TheMassEstimate, KnowsEveryConnectorAndAMetalBaseIsHeavier) {
    for (const auto& kind : enumCodes<ConnectorKind>) {
        Prescription prescription = archOf(kind.value) == Arch::Upper ? support::upperClassIIIMod1()
                                                                      : support::lowerClassI();
        const double usual = [&] {
            prescription.majorConnector = MajorConnector{.kind = kind.value};
            return descriptionOf(prescription).volume->middle();
        }();
        EXPECT_GT(usual, 0.2) << kind.word;
        EXPECT_LT(usual, 1.6) << kind.word;
        for (Saddle& saddle : prescription.saddles) saddle.base = BaseKind::Metal;
        EXPECT_GT(descriptionOf(prescription).volume->middle(), usual) << kind.word;
    }
}

TEST(TheMassEstimate, TellsTheSaddleOnMetalFromTheOther) {
    Prescription prescription = support::upperClassIIIMod1();
    const double usual = descriptionOf(prescription).volume->middle();
    prescription.saddles[0].base = BaseKind::Metal;
    const double shorter = descriptionOf(prescription).volume->middle();
    prescription.saddles[0].base = BaseKind::Resin;
    prescription.saddles[1].base = BaseKind::Metal;
    const double longer = descriptionOf(prescription).volume->middle();
    EXPECT_GT(shorter, usual);
    EXPECT_NEAR((longer - usual) / (shorter - usual), 24.0 / 14, 1e-9);
}

TEST(TheMassEstimate, OfAWiderStrapIsMore) {
    Prescription prescription = support::upperClassIIIMod1();
    const double usual = descriptionOf(prescription).volume->middle();
    prescription.majorConnector->width = 20'000_um;
    EXPECT_GT(descriptionOf(prescription).volume->middle(), usual + 0.2);
}

TEST(ADescription, OfNothingIsNothing) {
    const auto description = descriptionOf(Prescription{});
    EXPECT_FALSE(description.design.kennedy);
    EXPECT_TRUE(description.saddles.empty());
    EXPECT_TRUE(description.clasps.empty());
    EXPECT_FALSE(description.bestSeat);
    EXPECT_FALSE(description.design.kennedyClass());
}

TEST(ADescription, HasTheMechanicsOfEachClaspThatSaysEnough) {
    Prescription prescription = support::lowerClassIIIMod1();
    EXPECT_EQ(descriptionOf(prescription).clasps.size(), 4U);
    prescription.clasps[0].undercut = {};
    EXPECT_EQ(descriptionOf(prescription).clasps.size(), 3U);
}

}  // namespace
