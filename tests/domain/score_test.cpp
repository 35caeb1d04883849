#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "domain/design/design_score.h"
#include "tests/support/designs.h"

namespace {

using namespace domain;
using testing::Contains;
using testing::IsEmpty;
using testing::Not;

// Nassani and Alotaibi 2020: connector, type of the retainers, their position, position of the
// rests; a point each.
TEST(TheScore, OfATextbookDesignIsFourAndOfNothingNone) {
    EXPECT_EQ(scoreOf(support::upperClassIIIMod1()).points(), 4);
    EXPECT_EQ(scoreOf(Prescription{}).points(), 0);
}

TEST(TheScore, LosesAPointForEachVariable) {
    Prescription prescription = support::upperClassIIIMod1();
    prescription.majorConnector = {};
    EXPECT_FALSE(scoreOf(prescription).connector);
    EXPECT_EQ(scoreOf(prescription).points(), 3);
    prescription.rests.front().side = {};
    EXPECT_FALSE(scoreOf(prescription).restPosition);
    EXPECT_EQ(scoreOf(prescription).points(), 2);
    prescription.clasps.front().retentiveArm = {};
    EXPECT_EQ(scoreOf(prescription).points(), 2) << "the undercut still says the face";
    prescription.clasps.front().undercut = {};
    EXPECT_FALSE(scoreOf(prescription).retainerPosition);
    EXPECT_EQ(scoreOf(prescription).points(), 1);
    prescription.clasps.clear();
    EXPECT_EQ(scoreOf(prescription).points(), 0);
}

TEST(TheScore, AsksNoSideOfACingulumRest) {
    Prescription prescription = support::upperClassIIIMod1();
    std::erase_if(prescription.rests,
                  [](const Rest& rest) { return rest.kind == RestKind::Occlusal; });
    EXPECT_TRUE(scoreOf(prescription).restPosition);
}

TEST(Completeness, OfTextbookDesignsIsWhole) {
    for (const auto make :
         {support::upperClassIIIMod1, support::lowerClassI, support::upperClassIIMod1,
          support::lowerClassIIMod1, support::upperClassIV, support::lowerClassIIIMod1}) {
        const auto completeness = completenessOf(make());
        EXPECT_THAT(completeness.open, IsEmpty());
        EXPECT_EQ(completeness.asked, 29);
        EXPECT_EQ(completeness.percent(), 100);
    }
    EXPECT_THAT(completenessOf(support::interimUpper()).open, IsEmpty());
    EXPECT_LT(completenessOf(support::interimUpper()).asked, 29);
}

TEST(Completeness, OfAnEmptySheetIsNothing) {
    const auto completeness = completenessOf(Prescription{});
    EXPECT_EQ(completeness.given, 0);
    EXPECT_EQ(completeness.percent(), 0);
    EXPECT_EQ(Completeness{}.percent(), 0);
    EXPECT_EQ((Completeness{.asked = 3, .given = 2}).percent(), 67);
    EXPECT_EQ((Completeness{.asked = 8, .given = 1}).percent(), 13);
    EXPECT_EQ((Completeness{.asked = 3, .given = 1}).percent(), 33);
}

struct Removal {
    const char* item;
    void (*take)(Prescription&);
};
constexpr Removal kRemovals[] = {
    {"address of the prescriber", [](Prescription& p) { p.identity.prescriberAddress = {}; }},
    {"notation of the teeth", [](Prescription& p) { p.notation = {}; }},
    {"list of what is enclosed", [](Prescription& p) { p.enclosures.clear(); }},
    {"minor connectors", [](Prescription& p) { p.minorConnectors.clear(); }},
    {"jaw relation", [](Prescription& p) { p.occlusion.jawRelation = {}; }},
    {"prescriber", [](Prescription& p) { p.identity.prescriberName = {}; }},
    {"registration of the prescriber",
     [](Prescription& p) { p.identity.prescriberRegistration = " "; }},
    {"patient",
     [](Prescription& p) {
         p.identity.patientName = {};
         p.identity.patientReference = {};
     }},
    {"date of issue", [](Prescription& p) { p.issued = {}; }},
    {"day it is needed", [](Prescription& p) { p.needed = {}; }},
    {"signature", [](Prescription& p) { p.signature = {}; }},
    {"kind of work", [](Prescription& p) { p.appliance = {}; }},
    {"sensitivities", [](Prescription& p) { p.sensitivities = {}; }},
    {"disinfection", [](Prescription& p) { p.enclosures.front().disinfection = {}; }},
    {"major connector", [](Prescription& p) { p.majorConnector = {}; }},
    {"clasps: kind and tooth", [](Prescription& p) { p.clasps.clear(); }},
    {"clasps: face of the arm",
     [](Prescription& p) {
         p.clasps.front().retentiveArm = {};
         p.clasps.front().undercut = {};
     }},
    {"clasps: undercut", [](Prescription& p) { p.clasps.front().undercut->depth = {}; }},
    {"clasps: undercut", [](Prescription& p) { p.clasps.front().undercut = {}; }},
    {"clasps: what opposes the arm", [](Prescription& p) { p.clasps.front().reciprocation = {}; }},
    {"rests: tooth and side", [](Prescription& p) { p.rests.clear(); }},
    {"rests: seats prepared or not", [](Prescription& p) { p.rests.front().seatPrepared = {}; }},
    {"survey and path of insertion", [](Prescription& p) { p.survey.path = {}; }},
    {"survey and path of insertion", [](Prescription& p) { p.survey.abutments.clear(); }},
    {"material of the framework", [](Prescription& p) { p.framework.making = {}; }},
    {"material of the framework", [](Prescription& p) { p.framework.material = {}; }},
    {"base resin", [](Prescription& p) { p.base.resin = {}; }},
    {"shade", [](Prescription& p) { p.shades.clear(); }},
    {"mould", [](Prescription& p) { p.teeth.mould = {}; }},
    {"colour of the base", [](Prescription& p) { p.base.colour = {}; }},
    {"occlusal scheme", [](Prescription& p) { p.occlusion.scheme = {}; }},
    {"teeth to be replaced", [](Prescription& p) { p.saddles.clear(); }},
};

TEST(Completeness, NamesWhatIsOpen) {
    std::set<std::string_view> covered;
    for (const Removal& removal : kRemovals) {
        Prescription prescription = support::upperClassIIIMod1();
        removal.take(prescription);
        EXPECT_THAT(completenessOf(prescription).open, Contains(removal.item));
        EXPECT_LT(completenessOf(prescription).percent(), 100);
        covered.insert(removal.item);
    }
    for (const Item& item : items())
        EXPECT_EQ(covered.contains(item.name), item.asked(support::upperClassIIIMod1()))
            << item.name;
}

TEST(Completeness, AsksADisinfectionOnlyOfWhatWasInTheMouth) {
    Prescription prescription = support::upperClassIV();
    EXPECT_THAT(completenessOf(prescription).open, Not(Contains("disinfection")));
    prescription.enclosures.clear();
    EXPECT_THAT(completenessOf(prescription).open, Not(Contains("disinfection")));
}

TEST(Completeness, TakesOneKnownSensitivityForAnAnswer) {
    Prescription prescription = support::upperClassIV();
    prescription.sensitivities = {.noneKnown = {}, .known = {Sensitivity::Latex}};
    EXPECT_THAT(completenessOf(prescription).open, Not(Contains("sensitivities")));
}

TEST(Items, MayBeGivenWithoutBeingAsked) {
    const auto given = [](std::string_view name, const Prescription& prescription) {
        return std::ranges::find(items(), name, &Item::name)->given(prescription);
    };
    for (const char* name : {"Kennedy class", "support", "guide plates", "indirect retainers",
                             "material of the teeth"}) {
        EXPECT_TRUE(given(name, support::lowerClassI())) << name;
        EXPECT_FALSE(given(name, Prescription{})) << name;
        EXPECT_FALSE(std::ranges::find(items(), name, &Item::name)->asked(support::lowerClassI()));
    }
    EXPECT_FALSE(given("disinfection", Prescription{}));
}

TEST(Completeness, TakesACodeOfThePatientOrAName) {
    Prescription prescription = support::upperClassIIIMod1();
    prescription.identity.patientReference = {};
    EXPECT_THAT(completenessOf(prescription).open, Not(Contains("patient")));
}

TEST(Completeness, AsksNoShadeOfARepair) {
    Prescription prescription = support::interimUpper();
    prescription.appliance = Appliance::Repair;
    prescription.shades.clear();
    EXPECT_THAT(completenessOf(prescription).open, Not(Contains("shade")));
}

TEST(Items, HaveASourceEach) {
    for (const Item& item : items()) EXPECT_FALSE(item.source.empty()) << item.name;
}

}  // namespace
