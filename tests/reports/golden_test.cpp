#include <gtest/gtest.h>

#include "domain/rules/examine.h"
#include "domain/rules/remedies.h"
#include "reports/prescription_sheet.h"
#include "reports/question_sheet.h"
#include "tests/reports/printed.h"
#include "tests/support/designs.h"

namespace {

using namespace domain;
using printed::expectGolden;

std::vector<Finding> found(const Prescription& prescription) {
    return examine(prescription, support::examinationDay());
}

/// What would clear a finding of the design, in words.
reports::OffersFor offersFor(const Prescription& prescription) {
    return [&prescription](const Finding& finding) {
        const Design design = designOf(prescription);
        const HouseLimits limits;
        const Examination examination{prescription, design, support::examinationDay(), limits,
                                      shippedGuides()};
        std::vector<std::string> offers;
        for (const Remedy& remedy : remediesFor(examination, found(prescription), finding))
            offers.push_back(remedy.says);
        return offers;
    };
}

/// What the design lacks so that every kind of finding is on the papers.
Prescription lacking(Prescription made) {
    made.survey.path.reset();
    made.shades.clear();
    made.sensitivities = {};
    made.clasps[0].reciprocation.reset();
    made.clasps.pop_back();
    return made;
}

std::vector<reports::FlagOnPaper> flags() {
    return {{.reason = FlagReason::CastDamaged,
             .note = "The 47 broke off the working cast in the parcel.",
             .person = "tech-2",
             .since = Instant::ofMicroseconds(1'795'509'240'000'000)}};
}

TEST(TheGoldenTexts, OfACleanPrescription) {
    const Prescription design = support::upperClassIIIMod1();
    expectGolden("prescription_upper_iii_mod_1.txt",
                 reports::prescriptionSheet(printed::head(), design, found(design), {}, {}, {}));
}

TEST(TheGoldenTexts, OfAPrescriptionWithFindings) {
    const Prescription design = lacking(support::lowerClassIIMod1());
    expectGolden(
        "prescription_lower_ii_mod_1_lacking.txt",
        reports::prescriptionSheet(printed::head(), design, found(design), flags(),
                                   {{.rules = {"clasp.count"},
                                     .person = "MK",
                                     .reason = "The practice means two clasps.",
                                     .at = Instant::ofMicroseconds(1'795'595'640'000'000)}},
                                   {}));
}

TEST(TheGoldenTexts, OfAnInterimDenture) {
    const Prescription design = support::interimUpper();
    expectGolden("prescription_interim_upper.txt",
                 reports::prescriptionSheet(printed::head(), design, found(design), {}, {}, {}));
}

TEST(TheGoldenTexts, OfTheQuestionSheet) {
    const Prescription design = lacking(support::lowerClassIIMod1());
    expectGolden(
        "questions_lower_ii_mod_1_lacking.txt",
        reports::questionSheet(printed::head(), design, found(design), flags(), offersFor(design)));
}

}  // namespace
