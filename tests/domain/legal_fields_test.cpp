// Against the statutes that name what a prescription must say; each row of the table names its own.
#include "domain/production/legal_fields.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "tests/support/designs.h"

namespace {

using namespace domain;
using testing::Contains;
using testing::IsEmpty;
using testing::SizeIs;

LegalFacts facts(const Prescription& prescription) {
    LegalFacts made =
        legalFactsOf(prescription, "Foundry Walk Dental Workshop", "7 Foundry Walk, Westhaven");
    made.laboratoryMustRegister = true;
    made.laboratoryRegistration = "L-212";
    return made;
}

struct Removal {
    std::string rule;
    void (*remove)(LegalFacts&);
};
void PrintTo(const Removal& removal, std::ostream* stream) { *stream << removal.rule; }

const Removal kRemovals[] = {
    {"legal.laboratory-name", [](LegalFacts& made) { made.laboratoryName.clear(); }},
    {"legal.laboratory-address", [](LegalFacts& made) { made.laboratoryAddress = " "; }},
    {"legal.laboratory-registration",
     [](LegalFacts& made) { made.laboratoryRegistration.reset(); }},
    {"legal.prescriber-name", [](LegalFacts& made) { made.prescriberName.reset(); }},
    {"legal.prescriber-address", [](LegalFacts& made) { made.prescriberAddress.reset(); }},
    {"legal.prescriber-registration", [](LegalFacts& made) { made.prescriberRegistration = ""; }},
    {"legal.prescriber-contact", [](LegalFacts& made) { made.prescriberContact.reset(); }},
    {"legal.patient", [](LegalFacts& made) { made.patient.reset(); }},
    {"legal.issued", [](LegalFacts& made) { made.issued.reset(); }},
    {"legal.pieces", [](LegalFacts& made) { made.pieces.clear(); }},
    {"legal.pieces", [](LegalFacts& made) { made.pieces[0].clear(); }},
    {"legal.materials", [](LegalFacts& made) { made.materials.clear(); }},
    {"legal.materials", [](LegalFacts& made) { made.materials[0].type.reset(); }},
    {"legal.materials", [](LegalFacts& made) { made.materials[0].quality.reset(); }},
    {"legal.clasps", [](LegalFacts& made) { made.clasps.reset(); }},
    {"legal.clasps", [](LegalFacts& made) { made.clasps = std::vector<std::string>{""}; }},
    {"legal.occlusion", [](LegalFacts& made) { made.occlusion.reset(); }},
    {"legal.occlusion", [](LegalFacts& made) { made.occlusion = std::string{}; }},
    {"legal.signature", [](LegalFacts& made) { made.signature.reset(); }},
    {"legal.signature",
     [](LegalFacts& made) { made.signature = Signature{SignatureKind::OnPaper, {}, {}}; }},
};

class LegalFieldsOf : public testing::TestWithParam<Removal> {};

TEST_P(LegalFieldsOf, APrescriptionWithoutThisAreRefusedForItAlone) {
    LegalFacts made = facts(support::upperClassIIIMod1());
    GetParam().remove(made);
    const auto lacking = lackingIn(made);
    ASSERT_THAT(lacking, SizeIs(1));
    EXPECT_EQ(lacking[0].rule, GetParam().rule);
    EXPECT_EQ(lacking[0].severity, Severity::Missing);
    EXPECT_FALSE(lacking[0].source.empty());
    EXPECT_FALSE(lacking[0].question.empty());
}

INSTANTIATE_TEST_SUITE_P(TheUnion, LegalFieldsOf, testing::ValuesIn(kRemovals));

TEST(LegalFields, OfEveryCleanDesignLackNothing) {
    for (const Prescription& design :
         {support::upperClassIIIMod1(), support::lowerClassI(), support::upperClassIIMod1(),
          support::lowerClassIIMod1(), support::upperClassIV(), support::lowerClassIIIMod1(),
          support::interimUpper()})
        for (const Finding& finding : lackingIn(facts(design)))
            ADD_FAILURE() << design.statedClass.value_or("") << ' ' << finding.rule << ": "
                          << finding.found;
}

TEST(LegalFields, OfNothingLackEveryRow) {
    LegalFacts nothing;
    nothing.laboratoryMustRegister = true;
    std::set<std::string> told;
    for (const Finding& finding : lackingIn(nothing)) told.insert(finding.rule);
    std::set<std::string> asked;
    for (const Removal& removal : kRemovals) asked.insert(removal.rule);
    EXPECT_EQ(told, asked);
}

TEST(LegalFields, AskForARegistrationOnlyWhereLaboratoriesAreRegistered) {
    LegalFacts made = facts(support::upperClassIIIMod1());
    made.laboratoryRegistration.reset();
    made.laboratoryMustRegister = false;
    EXPECT_THAT(lackingIn(made), IsEmpty());
}

TEST(LegalFields, LetAnInterimDentureDoWithoutClaspsButNoFramework) {
    Prescription interim = support::interimUpper();
    interim.clasps.clear();
    EXPECT_THAT(lackingIn(facts(interim)), IsEmpty());
    Prescription framework = support::upperClassIIIMod1();
    framework.clasps.clear();
    const auto lacking = lackingIn(facts(framework));
    ASSERT_THAT(lacking, SizeIs(1));
    EXPECT_EQ(lacking[0].rule, "legal.clasps");
}

TEST(LegalFields, LetARelineDoWithoutClaspsAndContacts) {
    Prescription reline;
    reline.identity = support::interimUpper().identity;
    reline.issued = support::interimUpper().issued;
    reline.signature = support::interimUpper().signature;
    reline.appliance = Appliance::Reline;
    reline.base.resin = BaseResin::SelfCured;
    EXPECT_THAT(lackingIn(facts(reline)), IsEmpty());
    reline.base.resin.reset();
    EXPECT_THAT(lackingIn(facts(reline)),
                Contains(testing::Field(&Finding::rule, "legal.materials")));
}

TEST(LegalFields, DescribeARepairPieceByPiece) {
    Prescription repair = support::interimUpper();
    repair.appliance = Appliance::Repair;
    repair.saddles.clear();
    EXPECT_THAT(facts(repair).pieces, SizeIs(repair.clasps.size()));
    repair.clasps.clear();
    repair.identity.remarks.reset();
    EXPECT_THAT(facts(repair).pieces, IsEmpty());
    repair.identity.remarks = "The base is cracked behind the incisors.";
    EXPECT_THAT(facts(repair).pieces, SizeIs(1));
}

TEST(LegalFields, TakeTheCodeOfThePatientBeforeTheName) {
    Prescription design = support::lowerClassI();
    EXPECT_EQ(facts(design).patient, design.identity.patientReference);
    design.identity.patientReference = " ";
    EXPECT_EQ(facts(design).patient, design.identity.patientName);
}

}  // namespace
