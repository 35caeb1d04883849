/// Designs that cannot be: findings, never a crash, a figure that is none, or an endless loop.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "domain/design/design.h"
#include "domain/rules/examine.h"
#include "tests/rules/rule_cases.h"

namespace {

using namespace domain;
using namespace support;
using rule_cases::on;
using testing::Contains;

std::vector<std::string> idsOf(const Prescription& prescription) {
    std::vector<std::string> ids;
    for (const Finding& finding : examine(prescription, examinationDay()))
        ids.push_back(finding.rule);
    return ids;
}

void expectFinite(const Prescription& prescription) {
    const auto description = descriptionOf(prescription);
    for (const ClaspMechanics& clasp : description.clasps)
        for (const Range range :
             {clasp.force, clasp.rootStress, clasp.largestStress, clasp.setMargin, clasp.removal})
            EXPECT_TRUE(std::isfinite(range.least) && std::isfinite(range.most));
    for (const SaddleSpan& span : description.saddles)
        EXPECT_TRUE(std::isfinite(span.along) && std::isfinite(span.straight));
    EXPECT_TRUE(!description.connector || std::isfinite(description.connector->across));
    EXPECT_TRUE(!description.mass || std::isfinite(description.mass->most));
    for (const RetainerArm& retainer : description.retainers)
        EXPECT_TRUE(std::isfinite(retainer.across) && std::isfinite(retainer.loadRatio));
}

void chartAll(Prescription& prescription, ToothState state) {
    for (const Arch arch : {Arch::Upper, Arch::Lower})
        for (int position = 0; position < kTeethInArch; ++position)
            prescription.dentition.set(Tooth::at(arch, position), state);
}

TEST(AMouth, WithNoToothMissingOrNoneLeftIsFound) {
    for (const auto make : {upperClassIIIMod1, lowerClassI, upperClassIV}) {
        Prescription whole = make();
        chartAll(whole, ToothState::Present);
        EXPECT_THAT(idsOf(whole), Contains("dentition.replaced-present"));
        expectFinite(whole);
        Prescription toothless = make();
        chartAll(toothless, ToothState::Missing);
        EXPECT_THAT(idsOf(toothless), Contains("dentition.partial"));
        expectFinite(toothless);
    }
}

TEST(AMouth, WithEveryStateEverywhereIsDescribedToTheEnd) {
    for (const auto& state : enumCodes<ToothState>)
        for (const auto make : {upperClassIIMod1, lowerClassIIMod1, interimUpper}) {
            Prescription prescription = make();
            chartAll(prescription, state.value);
            idsOf(prescription);
            expectFinite(prescription);
        }
}

TEST(AnArm, OfNoLengthIsFoundAndNotComputed) {
    Prescription prescription = upperClassIIIMod1();
    on(16_fdi, prescription.clasps).arm = {
        .section = ArmSection::Round, .width = 0_um, .tip = 0_ppm, .length = 0_um};
    EXPECT_THAT(idsOf(prescription), Contains("design.sizes"));
    expectFinite(prescription);
    EXPECT_EQ(descriptionOf(prescription).clasps.size(), 3U);
}

TEST(ATooth, WithTwoOppositeClaspsIsFound) {
    Prescription prescription = upperClassIIIMod1();
    Clasp second = on(16_fdi, prescription.clasps);
    second.retentiveArm = Surface::Lingual;
    second.undercut = Undercut{UndercutPlace::MesioLingual, 250_um};
    prescription.clasps.push_back(second);
    EXPECT_THAT(idsOf(prescription), Contains("clasp.one-retentive-arm"));
    expectFinite(prescription);
}

/// The largest amount a file can carry, wherever a length may be.
TEST(Sizes, BeyondAllMeasureAreFoundAndComputeNoNonsense) {
    constexpr Microns kHuge = Microns::of(MicronUnit::kMost);
    for (const Microns size : {0_um, 1_um, kHuge}) {
        Prescription prescription = lowerClassI();
        prescription.survey.archWidth = size;
        prescription.survey.archDepth = size;
        prescription.survey.lingualDepth = size;
        prescription.survey.sulcusDepth = size;
        prescription.majorConnector->width = size;
        prescription.majorConnector->gingivalClearance = size;
        prescription.majorConnector->opening = size;
        for (Rest& rest : prescription.rests) {
            rest.seatDepth = size;
            rest.clearance = size;
            rest.floorAngle = Millidegrees::of(MillidegreeUnit::kMost);
        }
        for (Clasp& clasp : prescription.clasps) {
            clasp.undercut->depth = size;
            clasp.arm = {.section = ArmSection::HalfRound,
                         .width = size,
                         .tip = 1'000'000_ppm,
                         .length = size};
        }
        for (GuidePlate& plate : prescription.guidePlates) plate.planeHeight = size;
        for (AbutmentSurvey& surveyed : prescription.survey.abutments) {
            surveyed.tissueUndercut = size;
            for (Undercut& undercut : surveyed.undercuts) undercut.depth = size;
        }
        EXPECT_THAT(idsOf(prescription), Contains("design.sizes")) << text(size);
        expectFinite(prescription);
    }
}

// 0 mm is a measurement: a tight bite, a bar on the margin, a cast without undercut.
TEST(Sizes, OfNothingCanBeWhereNothingIsAMeasurement) {
    Prescription prescription = lowerClassI();
    prescription.survey.lingualDepth = 0_um;
    prescription.survey.sulcusDepth = 0_um;
    prescription.majorConnector->gingivalClearance = 0_um;
    prescription.majorConnector->opening = 0_um;
    for (Rest& rest : prescription.rests) {
        rest.seatDepth = 0_um;
        rest.clearance = 0_um;
    }
    for (Clasp& clasp : prescription.clasps) clasp.undercut->depth = 0_um;
    for (AbutmentSurvey& surveyed : prescription.survey.abutments) {
        surveyed.tissueUndercut = 0_um;
        for (Undercut& undercut : surveyed.undercuts) undercut.depth = 0_um;
    }
    EXPECT_THAT(idsOf(prescription), testing::Not(Contains("design.sizes")));
}

TEST(ASurvey, ThatContradictsItselfIsFound) {
    Prescription prescription = upperClassIIIMod1();
    auto& undercuts = on(16_fdi, prescription.survey.abutments).undercuts;
    undercuts.push_back({undercuts.front().place, 100_um});
    prescription.survey.path = InsertionPath{10'000_mdeg, TiltDirection::None};
    EXPECT_EQ(std::ranges::count(idsOf(prescription), "survey.consistent"), 2);
}

TEST(ADay, ThousandsOfYearsAheadIsExaminedAtOnce) {
    Prescription prescription = upperClassIIIMod1();
    prescription.needed = Date::ofDays(10'000'000);
    idsOf(prescription);
    prescription.needed = Date::ofDays(-10'000'000);
    EXPECT_THAT(idsOf(prescription), Contains("admin.date-needed"));
}

TEST(AThousandClasps, AreExaminedToTheEnd) {
    Prescription prescription = upperClassIIIMod1();
    for (int more = 0; more < 1000; ++more)
        prescription.clasps.push_back(prescription.clasps.front());
    EXPECT_FALSE(idsOf(prescription).empty());
    expectFinite(prescription);
}

}  // namespace
