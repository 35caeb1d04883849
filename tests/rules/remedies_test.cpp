/// What is offered clears its finding and brings no refusal that was not there.
#include "domain/rules/remedies.h"

#include <gmock/gmock.h>

#include <iostream>
#include <map>

#include "domain/rules/examine.h"
#include "tests/rules/population.h"
#include "tests/rules/rule_cases.h"

namespace {

using namespace domain;
using namespace support;
using rule_cases::on;
using rule_cases::remove;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

std::vector<Finding> found(const Prescription& prescription) {
    return examine(prescription, examinationDay());
}

std::vector<Remedy> remedies(const Prescription& prescription, const Finding& finding) {
    const Design design = designOf(prescription);
    const HouseLimits limits;
    return remediesFor({prescription, design, examinationDay(), limits, shippedGuides()},
                       found(prescription), finding);
}

/// What is offered for the first finding of a rule.
std::vector<std::string> offered(const Prescription& prescription, std::string_view rule) {
    const auto findings = found(prescription);
    const auto finding = std::ranges::find(findings, rule, &Finding::rule);
    if (finding == findings.end()) return {"(nothing found)"};
    std::vector<std::string> says;
    for (const Remedy& remedy : remedies(prescription, *finding)) says.push_back(remedy.says);
    return says;
}

std::size_t refusals(const Prescription& prescription) {
    return static_cast<std::size_t>(std::ranges::count_if(found(prescription), refuses));
}

TEST(Remedies, NameASeatAcrossTheFulcrumLineForTheIndirectRetainer) {
    Prescription prescription = lowerClassIIMod1();
    prescription.indirectRetainers.clear();
    // The published example puts it on the right first premolar: 28 in Universal numbers.
    EXPECT_THAT(offered(prescription, "indirect.required"), Contains(HasSubstr("28")));
}

TEST(Remedies, RelieveTheTorusOrGoRoundIt) {
    Prescription prescription = upperClassIIIMod1();
    prescription.survey.torus = true;
    prescription.majorConnector->relief = {};
    EXPECT_THAT(offered(prescription, "connector.torus"),
                ElementsAre("relief over the torus", "a horseshoe", "a double palatal strap"));
}

TEST(Remedies, OpposeTheArm) {
    Prescription prescription = upperClassIIIMod1();
    on(16_fdi, prescription.clasps).reciprocation = {};
    EXPECT_THAT(offered(prescription, "clasp.reciprocation"), Contains("a reciprocal arm"));
}

TEST(Remedies, GoLessDeepWhereTheArmBearsNoMore) {
    Prescription prescription = upperClassIIIMod1();
    on(16_fdi, prescription.clasps).undercut->depth = 500_um;
    on(16_fdi, prescription.survey.abutments).undercuts.front().depth = 600_um;
    EXPECT_THAT(offered(prescription, "clasp.undercut-material"),
                Contains("0.25 mm of the undercut"));
}

TEST(Remedies, RestBesideTheSaddle) {
    Prescription prescription = upperClassIIIMod1();
    remove(27_fdi, prescription.rests);
    remove(27_fdi, prescription.clasps);
    EXPECT_EQ(offered(prescription, "rest.bounded-saddle").front(),
              "a mesial occlusal rest on 27, in a seat you prepare");
}

TEST(Remedies, StateTheClassTheChartGives) {
    Prescription prescription = upperClassIIIMod1();
    prescription.statedClass = "IV";
    EXPECT_THAT(offered(prescription, "design.kennedy-stated"),
                ElementsAre("III mod 1, as the chart gives"));
}

TEST(Remedies, AreNoneWhereOnlyThePrescriberKnows) {
    Prescription prescription = upperClassIIIMod1();
    prescription.signature = {};
    EXPECT_THAT(offered(prescription, "admin.signature"), IsEmpty());
}

/// Offers are tried before they are made: over thousands of faults each clears its own finding,
/// and the design has fewer refusals than before, or as many where the finding was a caution.
TEST(Remedies, OfAPopulationOfFaultsClearWhatTheyAreOfferedFor) {
    constexpr int kMouths = 400;
    population::Chance chance{20'261'201};
    std::map<std::string, int> offers;
    for (int mouth = 0; mouth < kMouths; ++mouth) {
        const auto design = population::cleanDesign(chance);
        if (!design) continue;
        for (const population::Fault& fault : population::faults()) {
            Prescription faulty = *design;
            if (!fault.plant(faulty, chance)) continue;
            const std::size_t before = refusals(faulty);
            for (const Finding& finding : found(faulty)) {
                const auto made = remedies(faulty, finding);
                ASSERT_LE(made.size(), kMostRemedies);
                for (const Remedy& remedy : made) {
                    ++offers[finding.rule];
                    for (const Finding& left : found(remedy.changed))
                        EXPECT_FALSE(left.rule == finding.rule && left.tooth == finding.tooth)
                            << remedy.says;
                    EXPECT_LE(refusals(remedy.changed) + (refuses(finding) ? 1 : 0), before)
                        << finding.rule << ": " << remedy.says;
                }
            }
        }
        if (HasFailure()) return;
    }
    int all = 0;
    for (const auto& [rule, count] : offers) all += count;
    EXPECT_GE(offers.size(), 15U);
    std::cout << all << " offers for findings of " << offers.size() << " rules, each tried\n";
}

}  // namespace
