#include "tests/rules/population.h"

#include <gtest/gtest.h>

#include <iostream>
#include <map>

#include "domain/design/design.h"
#include "domain/rules/examine.h"
#include "tests/support/designs.h"

namespace {

using namespace domain;

constexpr int kMouths = 2400;
constexpr std::uint64_t kSeed = 20'261'125;

std::vector<Finding> found(const Prescription& prescription) {
    return examine(prescription, support::examinationDay());
}

TEST(APopulation, OfDesignsByTheBookHasNoFindingAndEveryPlantedFaultIsFound) {
    population::Chance chance{kSeed};
    std::map<std::string, int> classes;
    std::map<std::string_view, int> planted;
    int clean = 0;
    for (int mouth = 0; mouth < kMouths; ++mouth) {
        const auto design = population::cleanDesign(chance);
        if (!design) continue;
        ++clean;
        ++classes[*design->statedClass];
        for (const Finding& finding : found(*design))
            ADD_FAILURE() << "mouth " << mouth << ", Class " << *design->statedClass << ": "
                          << finding.rule << ": " << finding.found;
        for (const population::Fault& fault : population::faults()) {
            Prescription faulty = *design;
            if (!fault.plant(faulty, chance)) continue;
            ++planted[fault.rule];
            EXPECT_GT(std::ranges::count(found(faulty), fault.rule, &Finding::rule), 0)
                << "mouth " << mouth << ", Class " << *design->statedClass << ": " << fault.rule;
        }
        if (testing::Test::HasFailure()) return;
    }
    int faults = 0;
    for (const population::Fault& fault : population::faults()) {
        EXPECT_GT(planted[fault.rule], 0) << fault.rule;
        faults += planted[fault.rule];
    }
    EXPECT_GT(clean, kMouths / 20);
    EXPECT_GE(classes.size(), 7U);
    std::cout << clean << " clean designs of " << kMouths << " mouths in " << classes.size()
              << " classes and modifications, no finding; " << faults << " faults of "
              << population::faults().size() << " kinds planted, all found\n";
}

/// Designs that chance made worse in many ways at once: no crash, no figure that is none.
TEST(APopulation, OfDesignsWithManyFaultsIsExaminedAndDescribedToTheEnd) {
    population::Chance chance{kSeed + 1};
    for (int mouth = 0; mouth < kMouths / 4; ++mouth) {
        auto design = population::cleanDesign(chance);
        if (!design) continue;
        for (const population::Fault& fault : population::faults())
            if (chance() % 2 == 0) fault.plant(*design, chance);
        EXPECT_FALSE(found(*design).empty());
        const auto description = descriptionOf(*design);
        for (const ClaspMechanics& clasp : description.clasps) {
            EXPECT_TRUE(std::isfinite(clasp.force.most) && clasp.force.least > 0);
            EXPECT_TRUE(std::isfinite(clasp.largestStress.most));
        }
        for (const RetainerArm& retainer : description.retainers)
            EXPECT_TRUE(std::isfinite(retainer.across) && std::isfinite(retainer.loadRatio));
    }
}

}  // namespace
