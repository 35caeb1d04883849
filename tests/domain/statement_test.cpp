// Against Regulation (EU) 2017/745, Annex XIII, section 1: a statement lacks nothing, or each of
// the eight items that lacks is told, and nothing else.
#include "domain/production/statement.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "tests/support/statement.h"

namespace {

using namespace domain;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

struct Removal {
    int item;  ///< of the section
    std::string rule;
    std::string found;
    void (*remove)(Statement&);
};
void PrintTo(const Removal& removal, std::ostream* stream) { *stream << removal.found; }

const Removal kRemovals[] = {
    {1, "statement.manufacturer", "no name of the manufacturer",
     [](Statement& made) { made.manufacturer.name.clear(); }},
    {1, "statement.manufacturer", "no address of the manufacturer",
     [](Statement& made) { made.manufacturer.address = "  "; }},
    {1, "statement.sites", "no manufacturing site", [](Statement& made) { made.sites.clear(); }},
    {1, "statement.sites", "no name of manufacturing site 2",
     [](Statement& made) { made.sites[1].party.name.clear(); }},
    {1, "statement.sites", "no address of manufacturing site 2",
     [](Statement& made) { made.sites[1].party.address.clear(); }},
    {1, "statement.sites", "not said what was done at manufacturing site 1",
     [](Statement& made) { made.sites[0].work.clear(); }},
    {2, "statement.representative", "neither an authorised representative nor \"not applicable\"",
     [](Statement& made) { made.representative.reset(); }},
    {2, "statement.representative", "no name of the authorised representative",
     [](Statement& made) { made.representative = Party{"", "1 Exchange Place"}; }},
    {2, "statement.representative", "no address of the authorised representative",
     [](Statement& made) { made.representative = Party{"Exchange Agents", ""}; }},
    {3, "statement.device", "no order number", [](Statement& made) { made.device.reset(); }},
    {3, "statement.device", "no description of the device",
     [](Statement& made) { made.description.clear(); }},
    {4, "statement.patient", "no name, acronym or code of the patient",
     [](Statement& made) { made.patientReference.clear(); }},
    {4, "statement.patient", "not stated that it is for that patient alone",
     [](Statement& made) { made.exclusiveUse = false; }},
    {5, "statement.prescriber", "no name of the prescriber",
     [](Statement& made) { made.prescriber.name.clear(); }},
    {5, "statement.prescriber", "no qualification or registration of the prescriber",
     [](Statement& made) { made.prescriber.qualification.clear(); }},
    {5, "statement.institution", "neither a health institution nor \"not applicable\"",
     [](Statement& made) { made.prescriber.institution.reset(); }},
    {5, "statement.institution", "no name of the health institution",
     [](Statement& made) { made.prescriber.institution = std::string{" "}; }},
    {6, "statement.characteristics", "no characteristics of the prescription",
     [](Statement& made) { made.characteristics.lines = {"", " "}; }},
    {6, "statement.characteristics", "no revision of the prescription",
     [](Statement& made) { made.characteristics.revision = 0; }},
    {6, "statement.characteristics", "no digest of the prescription",
     [](Statement& made) { made.characteristics.digest.pop_back(); }},
    {6, "statement.characteristics", "no digest of the prescription",
     [](Statement& made) { made.characteristics.digest[5] = 'G'; }},
    {7, "statement.conformity", "no declaration of conformity to Annex I",
     [](Statement& made) { made.conformity.reset(); }},
    {7, "statement.conformity", "exception 1 gives no grounds",
     [](Statement& made) { made.conformity->exceptions[0].grounds.clear(); }},
    {7, "statement.conformity", "exception 1 does not say which requirement is not met",
     [](Statement& made) { made.conformity->exceptions[0].requirement.clear(); }},
    {8, "statement.substances", "neither substances nor \"not applicable\"",
     [](Statement& made) { made.substances.reset(); }},
    {8, "statement.substances", "answered yes, without saying which",
     [](Statement& made) { made.substances = std::string{}; }},
};

class AStatement : public testing::TestWithParam<Removal> {};

TEST_P(AStatement, ThatLacksThisIsRefusedForItAlone) {
    Statement made = support::completeStatement();
    GetParam().remove(made);
    const auto lacking = lackingIn(made);
    ASSERT_THAT(lacking, SizeIs(1));
    EXPECT_EQ(lacking[0].rule, GetParam().rule);
    EXPECT_EQ(lacking[0].found, GetParam().found);
    EXPECT_EQ(lacking[0].severity, Severity::Missing);
    EXPECT_EQ(lacking[0].source, "Regulation (EU) 2017/745, Annex XIII, 1");
    EXPECT_FALSE(lacking[0].requirement.empty());
    EXPECT_FALSE(lacking[0].question.empty());
    EXPECT_TRUE(blocks(lacking));
}

INSTANTIATE_TEST_SUITE_P(OfAnnexXiii, AStatement, testing::ValuesIn(kRemovals));

TEST(Statements, ThatAreCompleteLackNothing) {
    EXPECT_THAT(lackingIn(support::completeStatement()), IsEmpty());
}

TEST(Statements, WithEachAnswerGivenInsteadOfNotApplicableLackNothing) {
    Statement made = support::completeStatement();
    made.representative = Party{"Exchange Agents", "1 Exchange Place, Midport"};
    made.prescriber.institution = NotApplicable{};
    made.substances = std::string{"none but collagen of bovine origin in the lining"};
    made.conformity = ConformityDeclaration{};
    EXPECT_THAT(lackingIn(made), IsEmpty());
}

TEST(Statements, OfNothingAreRefusedForEachOfTheEightItems) {
    std::set<std::string> told;
    for (const Finding& finding : lackingIn(Statement{})) told.insert(finding.rule);
    std::set<std::string> asked;
    std::set<int> items;
    for (const Removal& removal : kRemovals) {
        asked.insert(removal.rule);
        items.insert(removal.item);
    }
    EXPECT_EQ(told, asked);
    EXPECT_THAT(items, ElementsAre(1, 2, 3, 4, 5, 6, 7, 8));
}

TEST(Statements, AreRefusedWithoutRepeatingWhatWasTyped) {
    Statement made = support::completeStatement();
    made.prescriber.qualification.clear();
    made.conformity->exceptions[0].grounds.clear();
    for (const Finding& finding : lackingIn(made)) {
        EXPECT_EQ(finding.found.find("Quinta"), std::string::npos);
        EXPECT_EQ(finding.found.find("cancer"), std::string::npos);
    }
}

}  // namespace
