/// The questions put to a design, one by one: what the rules and the pictures build on.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "domain/design/design_view.h"
#include "domain/design/fulcrum.h"
#include "domain/design/support.h"
#include "tests/rules/rule_cases.h"

namespace {

using namespace domain;
using namespace support;
using rule_cases::on;
using rule_cases::remove;
using testing::ElementsAre;

TEST(ApplianceThatIsNotSaid, IsAFrameworkAsSoonAsAnyPartOfOneIsNamed) {
    EXPECT_EQ(applianceOf(Prescription{}), std::nullopt);
    const Prescription full = upperClassIIIMod1();
    Prescription saddles;
    saddles.saddles = full.saddles;
    EXPECT_EQ(applianceOf(saddles), Appliance::MetalFramework);
    Prescription rests;
    rests.rests = full.rests;
    EXPECT_EQ(applianceOf(rests), Appliance::MetalFramework);
    Prescription connector;
    connector.majorConnector = full.majorConnector;
    EXPECT_EQ(applianceOf(connector), Appliance::MetalFramework);
    Prescription material;
    material.framework.material = FrameworkMaterial::Titanium;
    EXPECT_EQ(applianceOf(material), Appliance::MetalFramework);
    Prescription clasps;
    clasps.clasps = full.clasps;
    EXPECT_EQ(applianceOf(clasps), std::nullopt);
}

TEST(NewDenture, IsAFrameworkOrAnInterimDentureAndNothingElse) {
    Prescription prescription;
    for (const auto& code : enumCodes<Appliance>) {
        prescription.appliance = code.value;
        EXPECT_EQ(isMetal(prescription), code.value == Appliance::MetalFramework) << code.word;
        EXPECT_EQ(isInterim(prescription), code.value == Appliance::InterimResin) << code.word;
        EXPECT_EQ(isNewDenture(prescription),
                  code.value == Appliance::MetalFramework || code.value == Appliance::InterimResin)
            << code.word;
    }
}

TEST(NamedTeeth, SayWhichPartsLean) {
    Prescription prescription = lowerClassI();
    prescription.shades.front().teeth = {36_fdi};
    int saddles = 0;
    int surveys = 0;
    int shades = 0;
    for (const NamedTooth& named : namedTeeth(prescription)) {
        saddles += named.what == "saddle" ? 1 : 0;
        surveys += named.what == "survey" ? 1 : 0;
        shades += named.what == "shade" ? 1 : 0;
        const bool leans =
            named.what != "saddle" && named.what != "survey" && named.what != "shade";
        EXPECT_EQ(named.leans, leans) << named.what;
    }
    EXPECT_EQ(saddles, 6);
    EXPECT_EQ(surveys, 4);
    EXPECT_EQ(shades, 1);
}

TEST(RestOnASide, IsThereWithoutASideOnlyIfItIsNoOcclusalOne) {
    Prescription prescription = upperClassIIIMod1();
    for (const Surface side : {Surface::Mesial, Surface::Distal}) {
        EXPECT_TRUE(hasRest(prescription, 13_fdi, side));
        EXPECT_EQ(hasRest(prescription, 16_fdi, side), side == Surface::Mesial);
        EXPECT_FALSE(hasRest(prescription, 12_fdi, side));
    }
    on(13_fdi, prescription.rests).side = Surface::Distal;
    EXPECT_FALSE(hasRest(prescription, 13_fdi, Surface::Mesial));
    on(16_fdi, prescription.rests).side = {};
    EXPECT_FALSE(hasRest(prescription, 16_fdi, Surface::Mesial));
    EXPECT_TRUE(hasRest(prescription, 16_fdi));
    EXPECT_FALSE(hasRest(prescription, 12_fdi));
}

TEST(MinorConnector, ServesItsToothAndTheOneAcrossItsEmbrasure) {
    Prescription prescription = upperClassIIIMod1();
    prescription.minorConnectors.resize(1);
    MinorConnector& connector = prescription.minorConnectors.front();
    connector.tooth = 15_fdi;
    connector.side = Surface::Distal;
    EXPECT_TRUE(hasMinorConnector(prescription, 15_fdi));
    EXPECT_TRUE(hasMinorConnector(prescription, 16_fdi));
    EXPECT_FALSE(hasMinorConnector(prescription, 14_fdi));
    connector.side = Surface::Mesial;
    EXPECT_TRUE(hasMinorConnector(prescription, 14_fdi));
    EXPECT_FALSE(hasMinorConnector(prescription, 16_fdi));
    connector.side = {};
    EXPECT_FALSE(hasMinorConnector(prescription, 14_fdi));
    EXPECT_FALSE(hasMinorConnector(prescription, 16_fdi));
}

TEST(Neighbour, IsTheNextToothAcrossTheMidlineTooAndNoneBehindAThirdMolar) {
    EXPECT_EQ(neighbour(16_fdi, Surface::Mesial), 15_fdi);
    EXPECT_EQ(neighbour(16_fdi, Surface::Distal), 17_fdi);
    EXPECT_EQ(neighbour(26_fdi, Surface::Mesial), 25_fdi);
    EXPECT_EQ(neighbour(26_fdi, Surface::Distal), 27_fdi);
    EXPECT_EQ(neighbour(11_fdi, Surface::Mesial), 21_fdi);
    EXPECT_EQ(neighbour(31_fdi, Surface::Mesial), 41_fdi);
    EXPECT_EQ(neighbour(17_fdi, Surface::Distal), 18_fdi);
    EXPECT_EQ(neighbour(27_fdi, Surface::Distal), 28_fdi);
    for (const Tooth last : {18_fdi, 28_fdi, 38_fdi, 48_fdi})
        EXPECT_EQ(neighbour(last, Surface::Distal), std::nullopt) << last.text();
    EXPECT_EQ(neighbour(16_fdi, Surface::Buccal), std::nullopt);
    EXPECT_EQ(neighbour(16_fdi, Surface::Lingual), std::nullopt);
}

TEST(FacingSide, IsTheOppositeOneButMesialAcrossTheMidline) {
    EXPECT_EQ(facing(11_fdi, Surface::Mesial), Surface::Mesial);
    EXPECT_EQ(facing(11_fdi, Surface::Distal), Surface::Mesial);
    EXPECT_EQ(facing(12_fdi, Surface::Mesial), Surface::Distal);
    EXPECT_EQ(facing(12_fdi, Surface::Distal), Surface::Mesial);
}

TEST(FreeEnd, IsThatOfASaddleWithAnyToothInIt) {
    const Prescription prescription = lowerClassIIMod1();
    Saddle saddle = prescription.saddles.front();
    for (const Tooth tooth : {35_fdi, 36_fdi, 37_fdi}) {
        saddle.teeth = {tooth};
        EXPECT_TRUE(isFreeEnd(designOf(prescription), saddle)) << tooth.text();
    }
    for (const Tooth tooth : {34_fdi, 46_fdi, 25_fdi, 26_fdi, 27_fdi, 15_fdi}) {
        saddle.teeth = {tooth};
        EXPECT_FALSE(isFreeEnd(designOf(prescription), saddle)) << tooth.text();
    }
    EXPECT_TRUE(isBesideFreeEnd(designOf(prescription), 34_fdi));
    for (const Tooth tooth : {33_fdi, 45_fdi, 47_fdi})
        EXPECT_FALSE(isBesideFreeEnd(designOf(prescription), tooth)) << tooth.text();
}

TEST(ArmMaterial, IsSaidOrThatOfTheKindOrThatOfTheFramework) {
    Prescription prescription = upperClassIIIMod1();
    Clasp clasp = on(16_fdi, prescription.clasps);
    clasp.material = ArmMaterial::CastGold;
    EXPECT_EQ(armMaterial(prescription, clasp), ArmMaterial::CastGold);
    clasp.material = {};
    struct Pair {
        FrameworkMaterial framework;
        ArmMaterial arm;
    };
    for (const auto& [framework, arm] :
         {Pair{FrameworkMaterial::CobaltChromium, ArmMaterial::CastCobaltChromium},
          Pair{FrameworkMaterial::NickelChromium, ArmMaterial::CastNickelChromium},
          Pair{FrameworkMaterial::GoldTypeIv, ArmMaterial::CastGold},
          Pair{FrameworkMaterial::Titanium, ArmMaterial::CastTitanium},
          Pair{FrameworkMaterial::TitaniumAlloy, ArmMaterial::CastTitanium},
          Pair{FrameworkMaterial::Polyetheretherketone, ArmMaterial::Polymer},
          Pair{FrameworkMaterial::Acetal, ArmMaterial::Polymer}}) {
        prescription.framework.material = framework;
        EXPECT_EQ(armMaterial(prescription, clasp), arm) << codeOf(framework);
    }
    prescription.framework.material = {};
    EXPECT_EQ(armMaterial(prescription, clasp), std::nullopt);
    clasp.kind = ClaspKind::Combination;
    EXPECT_EQ(armMaterial(prescription, clasp), ArmMaterial::WroughtWire);
}

TEST(RetentiveFace, IsSaidOrThatOfTheUndercut) {
    Clasp clasp = upperClassIIIMod1().clasps.front();
    clasp.retentiveArm = Surface::Lingual;
    EXPECT_EQ(retentiveFace(clasp), Surface::Lingual);
    clasp.retentiveArm = {};
    EXPECT_EQ(retentiveFace(clasp), Surface::Buccal);
    clasp.undercut->place = UndercutPlace::MidLingual;
    EXPECT_EQ(retentiveFace(clasp), Surface::Lingual);
    clasp.undercut = {};
    EXPECT_EQ(retentiveFace(clasp), std::nullopt);
}

TEST(ToldThirdMolar, CountsOnlyAsAnAbutmentOrAsReplaced) {
    ToldArch told{.arch = Arch::Lower};
    told.missing.add(47_fdi);
    EXPECT_EQ(classify(placesOf(told))->text(), "II");
    told.abutments.add(48_fdi);
    EXPECT_EQ(classify(placesOf(told))->text(), "III");
    told.abutments = {};
    told.replaced.add(48_fdi);
    const ArchPlaces places = placesOf(told);
    EXPECT_EQ(places.front(), Place::Restored);
    EXPECT_EQ(places.back(), Place::Ignored);
    EXPECT_EQ(classify(places)->text(), "II");
}

// Quarter teeth from the patient's right third molar.
TEST(ArcPlace, RunsFromRightToLeftAndMesialIsTowardsTheMiddle) {
    EXPECT_EQ(arcPlace(18_fdi, {}), 0);
    EXPECT_EQ(arcPlace(18_fdi, Surface::Mesial), 1);
    EXPECT_EQ(arcPlace(17_fdi, Surface::Distal), 3);
    EXPECT_EQ(arcPlace(11_fdi, Surface::Mesial), 29);
    EXPECT_EQ(arcPlace(21_fdi, Surface::Mesial), 31);
    EXPECT_EQ(arcPlace(21_fdi, Surface::Distal), 33);
    EXPECT_EQ(arcPlace(28_fdi, {}), 60);
    EXPECT_EQ(arcPlace(28_fdi, Surface::Buccal), 60);
}

TEST(FulcrumLine, RunsThroughTheLastRestOfEachSideOrRoundTheFront) {
    Prescription classI = lowerClassI();
    const auto free = fulcrumOf(classI);
    ASSERT_TRUE(free);
    EXPECT_EQ(free->right, on(44_fdi, classI.rests));
    EXPECT_EQ(free->left.tooth, 34_fdi);
    EXPECT_FALSE(free->isAcross(free->from));
    EXPECT_FALSE(free->isAcross(free->to));
    EXPECT_TRUE(free->isAcross({0, 42}));
    EXPECT_FALSE(free->isAcross({0, 0}));

    const auto front = fulcrumOf(upperClassIV());
    ASSERT_TRUE(front);
    EXPECT_EQ(front->right.tooth, 13_fdi);
    EXPECT_EQ(front->left.tooth, 23_fdi);
    EXPECT_FALSE(front->isAcross({0, 44}));
    EXPECT_TRUE(front->isAcross({0, 0}));
}

// The lateral incisors carry the line where they carry rests.
TEST(FulcrumLine, RunsThroughTheRestsNextToAFrontSpace) {
    Prescription prescription = upperClassIV();
    for (const Tooth tooth : {12_fdi, 22_fdi}) {
        prescription.dentition.set(tooth, ToothState::Present);
        prescription.rests.push_back(on(13_fdi, prescription.rests));
        prescription.rests.back().tooth = tooth;
        prescription.rests.back().side = Surface::Mesial;
    }
    prescription.saddles.front().teeth = {11_fdi, 21_fdi};
    const auto fulcrum = fulcrumOf(prescription);
    ASSERT_TRUE(fulcrum);
    EXPECT_EQ(fulcrum->right.tooth, 12_fdi);
    EXPECT_EQ(fulcrum->left.tooth, 22_fdi);
}

TEST(FulcrumLine, NeedsARestOnEachSideOfAFrontSpaceAndTwoAnywhere) {
    Prescription right = upperClassIV();
    for (const Tooth tooth : {23_fdi, 26_fdi, 27_fdi}) remove(tooth, right.rests);
    EXPECT_FALSE(fulcrumOf(right));
    Prescription left = upperClassIV();
    for (const Tooth tooth : {13_fdi, 16_fdi, 17_fdi}) remove(tooth, left.rests);
    EXPECT_FALSE(fulcrumOf(left));
    Prescription one = lowerClassI();
    one.rests.resize(1);
    EXPECT_FALSE(fulcrumOf(one));
    Prescription two = lowerClassI();
    two.rests.resize(2);
    EXPECT_TRUE(fulcrumOf(two));
    EXPECT_FALSE(fulcrumOf(Prescription{}));
}

TEST(Areas, KnowTheirEndsAndTheTeethBesideThem) {
    const Design design = designOf(lowerClassIIMod1());
    const auto& areas = design.areas;
    ASSERT_EQ(areas.size(), 2U);
    EXPECT_EQ(areas[0].first, (46_fdi).position());
    EXPECT_EQ(areas[0].last, (46_fdi).position());
    EXPECT_FALSE(areas[0].isFreeEnd());
    EXPECT_THAT(abutmentsOf(design, areas[0]).teeth(), ElementsAre(47_fdi, 45_fdi));
    EXPECT_TRUE(areas[1].isFreeEnd());
    EXPECT_FALSE(areas[1].crossesMidline());
    EXPECT_THAT(abutmentsOf(design, areas[1]).teeth(), ElementsAre(34_fdi));
}

// One space beside the midline, and one across it.
TEST(ClassIV, CrossesTheMidlineAndDoesNotOnlyReachIt) {
    Prescription prescription = upperClassIV();
    for (const Tooth tooth : {11_fdi, 12_fdi, 21_fdi, 22_fdi})
        prescription.dentition.set(tooth, ToothState::Present);
    prescription.dentition.set(11_fdi, ToothState::Missing);
    EXPECT_EQ(designOf(prescription).kennedyClass(), KennedyClass::III);
    prescription.dentition.set(21_fdi, ToothState::Missing);
    EXPECT_EQ(designOf(prescription).kennedyClass(), KennedyClass::IV);
    prescription.dentition.set(11_fdi, ToothState::Present);
    EXPECT_EQ(designOf(prescription).kennedyClass(), KennedyClass::III);
}

TEST(KennedyClass, IsReadWithEveryDigitOfAModification) {
    for (const char* written : {"III mod 1", "III mod 5", "III mod 9"})
        EXPECT_EQ(Kennedy::parse(written)->text(), written);
    EXPECT_EQ(Kennedy::parse("III mod 0")->text(), "III");
    for (const char* written : {"III mod /", "III mod :", "III mod 10"})
        EXPECT_FALSE(Kennedy::parse(written)) << written;
}

TEST(Support, OfAThreeToothSpaceIsByTeethAndOfAFourToothOneByTissueToo) {
    Prescription prescription = upperClassIIIMod1();
    EXPECT_EQ(supportOf(prescription), Support::Tooth);
    prescription.dentition.set(13_fdi, ToothState::Missing);
    EXPECT_EQ(supportOf(prescription), Support::Tooth);
    prescription.dentition.set(12_fdi, ToothState::Missing);
    EXPECT_EQ(supportOf(prescription), Support::ToothAndTissue);
}

}  // namespace
