#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "domain/design/support.h"
#include "domain/rules/examine.h"
#include "tests/support/designs.h"

namespace {

using namespace domain;

struct Design {
    const char* name;
    Prescription (*make)();
    const char* kennedy;
    Support support;
};

// Classes: upper III mod 1 is published (University of Western Australia, DENT1158, project 4); the
// others follow from Kennedy's definitions and Applegate's rules. Support: Ankara University open
// textbook for the free ends, no rests and so tissue alone for the interim denture.
constexpr Design kDesigns[] = {
    {"UpperClassIIIMod1", support::upperClassIIIMod1, "III mod 1", Support::Tooth},
    {"LowerClassI", support::lowerClassI, "I", Support::ToothAndTissue},
    {"UpperClassIIMod1", support::upperClassIIMod1, "II mod 1", Support::ToothAndTissue},
    {"LowerClassIIMod1", support::lowerClassIIMod1, "II mod 1", Support::ToothAndTissue},
    {"UpperClassIV", support::upperClassIV, "IV", Support::ToothAndTissue},
    {"LowerClassIIIMod1", support::lowerClassIIIMod1, "III mod 1", Support::Tooth},
    {"InterimUpper", support::interimUpper, "III mod 2", Support::Tissue},
};

class TextbookDesign : public testing::TestWithParam<Design> {};

TEST_P(TextbookDesign, HasTheClassAndTheSupportOfItsName) {
    const Prescription prescription = GetParam().make();
    ASSERT_TRUE(classify(prescription));
    EXPECT_EQ(classify(prescription)->text(), GetParam().kennedy);
    EXPECT_EQ(supportOf(prescription), GetParam().support);
}

TEST_P(TextbookDesign, PassesWithoutAFinding) {
    for (const Finding& finding : examine(GetParam().make(), support::examinationDay()))
        ADD_FAILURE() << finding.rule << ": " << finding.found;
}

// Both schools must be able to take a textbook design: 7 or 8 mm, 3 or 4 mm, 5 or 7 mm, 1.0 or 1.5
// mm.
TEST_P(TextbookDesign, PassesByTheStricterSchoolToo) {
    const HouseLimits strict{.lingualBarSpace = 8000_um,
                             .upperClearance = 6000_um,
                             .lowerClearance = 4000_um,
                             .barClaspSulcus = 7000_um,
                             .restThickness = 1500_um};
    for (const Finding& finding : examine(GetParam().make(), support::examinationDay(), strict))
        ADD_FAILURE() << finding.rule << ": " << finding.found;
}

INSTANTIATE_TEST_SUITE_P(Designs, TextbookDesign, testing::ValuesIn(kDesigns),
                         [](const auto& design) { return std::string{design.param.name}; });

}  // namespace
