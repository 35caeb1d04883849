#include "domain/drawing/arch_picture.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "domain/rules/examine.h"
#include "tests/support/designs.h"

namespace {

using namespace domain;
using testing::Contains;
using testing::IsSupersetOf;
using testing::Not;

std::vector<Prescription> designs() {
    return {support::upperClassIIIMod1(), support::lowerClassI(),  support::upperClassIIMod1(),
            support::lowerClassIIMod1(),  support::upperClassIV(), support::lowerClassIIIMod1(),
            support::interimUpper()};
}

Picture pictureOf(const Prescription& prescription, const std::vector<Finding>& findings = {},
                  bool legend = false) {
    return archPicture(prescription, findings,
                       {.notation = notationOf(prescription), .legend = legend, .firstNumber = 1});
}

std::set<Depicted> depictedOn(const Picture& picture) {
    std::set<Depicted> depicted;
    for (const Mark& mark : picture.marks)
        depicted.insert(std::visit([](const auto& any) { return any.depicts; }, mark));
    return depicted;
}

std::vector<Words> wordsOn(const Picture& picture) {
    std::vector<Words> words;
    for (const Mark& mark : picture.marks)
        if (const auto* one = std::get_if<Words>(&mark)) words.push_back(*one);
    return words;
}

std::vector<std::string> textsOn(const Picture& picture) {
    std::vector<std::string> texts;
    for (const Words& words : wordsOn(picture)) texts.push_back(words.text);
    return texts;
}

/// A finding of its own on every tooth of the arch, and some about the whole denture.
std::vector<Finding> findingsEverywhere(Arch arch) {
    std::vector<Finding> findings;
    for (int position = 0; position < kTeethInArch; position += 2)
        for (const Severity severity : {Severity::Missing, Severity::Conflict, Severity::Caution})
            findings.push_back({.rule = "clasp.rest",
                                .severity = severity,
                                .tooth = Tooth::at(arch, position),
                                .found = {},
                                .requirement = {},
                                .question = {},
                                .source = {}});
    for (Finding whole : std::vector<Finding>(findings.begin(), findings.begin() + 6)) {
        whole.tooth.reset();
        findings.push_back(whole);
    }
    return findings;
}

/// Prescriptions that together hold every part a prescription can hold.
Prescription withEverything() {
    Prescription made = support::lowerClassIIMod1();
    made.dentition.set(48_fdi, ToothState::Closed);
    made.dentition.set(42_fdi, ToothState::ToBeExtracted);
    made.dentition.set(31_fdi, ToothState::Bridged);
    made.saddles[0].retention = ResinRetention::Mesh;
    made.rests[1].seatPrepared = false;
    made.guidePlates[1].planePrepared = false;
    return made;
}

TEST(TheArchPicture, DrawsEveryPartOfTheDesign) {
    EXPECT_THAT(depictedOn(pictureOf(withEverything())), IsSupersetOf({Depicted::PresentTooth,
                                                                       Depicted::ReplacedTooth,
                                                                       Depicted::NotReplaced,
                                                                       Depicted::ClosedSpace,
                                                                       Depicted::ExtractedTooth,
                                                                       Depicted::BridgedTooth,
                                                                       Depicted::Saddle,
                                                                       Depicted::MetalBase,
                                                                       Depicted::Mesh,
                                                                       Depicted::Bead,
                                                                       Depicted::TissueStop,
                                                                       Depicted::ExternalFinishLine,
                                                                       Depicted::InternalFinishLine,
                                                                       Depicted::MajorConnector,
                                                                       Depicted::MinorConnector,
                                                                       Depicted::PreparedRest,
                                                                       Depicted::UnpreparedRest,
                                                                       Depicted::IndirectRetainer,
                                                                       Depicted::RetentiveArm,
                                                                       Depicted::WroughtWire,
                                                                       Depicted::UndercutDepth,
                                                                       Depicted::Reciprocation,
                                                                       Depicted::GuidePlate,
                                                                       Depicted::PreparedGuidePlane,
                                                                       Depicted::Fulcrum,
                                                                       Depicted::Lever,
                                                                       Depicted::InsertionPath}));
    EXPECT_THAT(depictedOn(pictureOf(support::lowerClassI())), Contains(Depicted::OpenLattice));
    EXPECT_THAT(depictedOn(pictureOf(support::interimUpper())), Contains(Depicted::ResinPlate));
}

TEST(TheArchPicture, DrawsNothingThatIsNotPrescribed) {
    Prescription bare;
    bare.arch = Arch::Lower;
    EXPECT_EQ(depictedOn(pictureOf(bare)),
              (std::set{Depicted::Frame, Depicted::PresentTooth, Depicted::NotReplaced}));
}

TEST(TheArchPicture, LeavesOutWhatOneFieldTakesAway) {
    Prescription made = support::lowerClassI();
    made.survey.path.reset();
    made.indirectRetainers.clear();
    made.saddles[0].finishLines.internal = false;
    made.saddles[1].finishLines.internal = false;
    const auto depicted = depictedOn(pictureOf(made));
    EXPECT_THAT(depicted, Not(Contains(Depicted::InsertionPath)));
    EXPECT_THAT(depicted, Not(Contains(Depicted::IndirectRetainer)));
    EXPECT_THAT(depicted, Not(Contains(Depicted::Lever)));
    EXPECT_THAT(depicted, Not(Contains(Depicted::InternalFinishLine)));
    EXPECT_THAT(depicted, Contains(Depicted::ExternalFinishLine));
}

TEST(TheArchPicture, DrawsEveryMajorConnector) {
    for (const auto& code : enumCodes<ConnectorKind>) {
        Prescription made = archOf(code.value) == Arch::Upper ? support::upperClassIIIMod1()
                                                              : support::lowerClassI();
        made.majorConnector->kind = code.value;
        EXPECT_THAT(depictedOn(pictureOf(made)), Contains(Depicted::MajorConnector)) << code.word;
    }
}

TEST(TheArchPicture, DrawsEveryClaspOnEveryUndercut) {
    for (const auto& kind : enumCodes<ClaspKind>)
        for (const auto& place : enumCodes<UndercutPlace>) {
            Prescription made = support::upperClassIIIMod1();
            made.clasps.resize(1);
            made.clasps[0].kind = kind.value;
            made.clasps[0].undercut->place = place.value;
            made.clasps[0].retentiveArm = faceOf(place.value);
            EXPECT_THAT(depictedOn(pictureOf(made)),
                        IsSupersetOf({Depicted::RetentiveArm, Depicted::UndercutDepth}))
                << kind.word << ' ' << place.word;
        }
}

TEST(TheArchPicture, WritesTheDepthOfEachUndercutInMillimetres) {
    EXPECT_THAT(textsOn(pictureOf(support::lowerClassIIMod1())), IsSupersetOf({"0.25", "0.5"}));
}

TEST(TheArchPicture, LabelsTheTeethInTheNotationChosen) {
    EXPECT_THAT(textsOn(pictureOf(support::upperClassIIIMod1())), IsSupersetOf({"18", "11", "28"}));
    EXPECT_THAT(
        textsOn(archPicture(support::upperClassIIIMod1(), {},
                            {.notation = Notation::Palmer, .legend = false, .firstNumber = 1})),
        IsSupersetOf({"UR8", "UL1"}));
    EXPECT_THAT(textsOn(pictureOf(support::lowerClassIIMod1())), IsSupersetOf({"32", "17"}));
}

TEST(TheArchPicture, SaysWhereThePatientsRightIsAndShowsItOnTheLeft) {
    for (const Words& words : wordsOn(pictureOf(support::lowerClassI())))
        if (words.text == "patient's right") {
            EXPECT_LT(words.at.x, kArchPictureWidth / 2);
        }
    EXPECT_THAT(textsOn(pictureOf(support::lowerClassI())), Contains("patient's right"));
}

TEST(TheArchPicture, StandsAnUpperArchWithItsIncisorsUpAndALowerWithThemDown) {
    const auto heightOf = [](Tooth tooth) {
        return boxOf(toothShapes(tooth.arch())[static_cast<std::size_t>(tooth.position())].outline)
            .centre()
            .y;
    };
    EXPECT_LT(heightOf(11_fdi), heightOf(17_fdi));
    EXPECT_GT(heightOf(41_fdi), heightOf(47_fdi));
}

TEST(TheArchPicture, LetsEachToothBeFoundUnderItsOwnMiddleAlone) {
    for (const Arch arch : {Arch::Upper, Arch::Lower}) {
        const auto shapes = toothShapes(arch);
        ASSERT_EQ(shapes.size(), 16u);
        for (const ToothShape& shape : shapes)
            for (const ToothShape& other : shapes)
                EXPECT_EQ(contains(other.outline, boxOf(shape.outline).centre()),
                          other.tooth == shape.tooth)
                    << shape.tooth.text() << ' ' << other.tooth.text();
    }
}

TEST(TheArchPicture, StaysWithinItsFrame) {
    for (const Prescription& design : designs())
        for (const bool legend : {false, true}) {
            const Picture picture = pictureOf(design, findingsEverywhere(design.arch), legend);
            const auto inside = [&](Point point) {
                return std::isfinite(point.x) && std::isfinite(point.y) && point.x >= 0 &&
                       point.y >= 0 && point.x <= picture.width && point.y <= picture.height;
            };
            for (const Mark& mark : picture.marks) {
                if (const auto* fill = std::get_if<Fill>(&mark)) {
                    EXPECT_TRUE(std::ranges::all_of(fill->outline, inside));
                }
                if (const auto* stroke = std::get_if<Stroke>(&mark)) {
                    EXPECT_TRUE(std::ranges::all_of(stroke->line, inside));
                }
            }
            for (const Words& words : wordsOn(picture)) {
                const Box box = boxOf(words);
                EXPECT_TRUE(inside({box.left, box.top})) << words.text;
                EXPECT_TRUE(inside({box.right, box.bottom})) << words.text;
            }
        }
}

void expectApart(const Picture& picture, const std::string& which) {
    const auto words = wordsOn(picture);
    for (std::size_t one = 0; one < words.size(); ++one)
        for (std::size_t other = one + 1; other < words.size(); ++other)
            EXPECT_FALSE(boxOf(words[one]).touches(boxOf(words[other])))
                << which << ": " << words[one].text << " and " << words[other].text;
}

void expectOffTeeth(const Picture& picture, const Prescription& prescription) {
    for (const ToothShape& shape : toothShapes(prescription.arch))
        for (const Words& words : wordsOn(picture)) {
            const Box box = boxOf(words);
            EXPECT_FALSE(std::ranges::any_of(shape.outline,
                                             [&](Point point) {
                                                 return point.x > box.left && point.x < box.right &&
                                                        point.y > box.top && point.y < box.bottom;
                                             }))
                << words.text << " on " << shape.tooth.text();
            EXPECT_FALSE(contains(shape.outline, box.centre()))
                << words.text << " on " << shape.tooth.text();
        }
}

TEST(TheLabels, NeverTouchOneAnotherOrATooth) {
    for (const Prescription& design : designs()) {
        const Picture picture = pictureOf(design, {}, true);
        expectApart(picture, *design.statedClass);
        expectOffTeeth(picture, design);
    }
}

TEST(TheLabels, StayApartWithFindingsOnEveryOtherTooth) {
    for (const Prescription& design : designs()) {
        const Picture picture = pictureOf(design, findingsEverywhere(design.arch));
        expectApart(picture, *design.statedClass);
        expectOffTeeth(picture, design);
    }
}

TEST(TheLabels, StayApartInEveryNotation) {
    for (const auto& notation : enumCodes<Notation>)
        for (const Prescription& design : designs())
            expectApart(archPicture(design, findingsEverywhere(design.arch),
                                    {.notation = notation.value, .legend = true, .firstNumber = 1}),
                        std::string{notation.word});
}

TEST(TheFlags, CarryTheNumbersOfTheFindings) {
    Prescription made = support::upperClassIIIMod1();
    made.survey.path.reset();
    made.clasps[0].reciprocation.reset();
    const auto findings = examine(made, support::examinationDay());
    ASSERT_GE(findings.size(), 2u);
    const Picture picture = archPicture(
        made, findings, {.notation = Notation::Iso3950, .legend = false, .firstNumber = 7});
    std::string numbers;
    for (const Words& words : wordsOn(picture))
        if (words.depicts == Depicted::MissingFlag || words.depicts == Depicted::ConflictFlag ||
            words.depicts == Depicted::CautionFlag)
            numbers += ' ' + words.text + ',';
    for (std::size_t at = 0; at < findings.size(); ++at)
        EXPECT_NE(numbers.find(' ' + std::to_string(at + 7) + ','), std::string::npos) << numbers;
}

TEST(TheLegend, ListsOnlyWhatIsOnThePicture) {
    const auto texts = textsOn(pictureOf(support::interimUpper(), {}, true));
    EXPECT_THAT(texts, IsSupersetOf({"plate, resin", "retentive arm, wrought wire"}));
    EXPECT_THAT(texts, Not(Contains("fulcrum line")));
    EXPECT_THAT(texts, Not(Contains("minor connector")));
    EXPECT_THAT(textsOn(pictureOf(support::upperClassIIIMod1(), {}, true)),
                Contains("palatal strap, 10 mm"));
}

TEST(TheLegend, NamesEverythingThatCanBeDepicted) {
    std::set<std::string> rows;
    const auto collect = [&](const Prescription& made, const std::vector<Finding>& findings) {
        const Picture picture = pictureOf(made, findings, true);
        for (const Words& words : wordsOn(picture))
            if (words.at.x > kArchPictureWidth && words.anchor == Anchor::Left)
                rows.insert(words.text);
        return depictedOn(picture).size();
    };
    // All but the frame and the resin plate are on one picture; each has its row.
    Prescription made = withEverything();
    made.saddles.push_back(made.saddles[0]);
    made.saddles.back().teeth = {41_fdi};
    made.saddles.back().retention = ResinRetention::OpenLattice;
    const auto depicted = collect(made, findingsEverywhere(Arch::Lower));
    EXPECT_EQ(depicted, static_cast<std::size_t>(kDepicted - 1));
    EXPECT_EQ(rows.size(), depicted - 1);
}

TEST(TheLever, IsAsLongAsItIsDrawn) {
    const Picture picture = pictureOf(support::upperClassIIMod1());
    double drawn = 0;
    std::string written;
    for (const Mark& mark : picture.marks) {
        if (const auto* stroke = std::get_if<Stroke>(&mark))
            if (stroke->depicts == Depicted::Lever)
                drawn = std::hypot(stroke->line[1].x - stroke->line[0].x,
                                   stroke->line[1].y - stroke->line[0].y);
        if (const auto* words = std::get_if<Words>(&mark))
            if (words->depicts == Depicted::Lever) written = words->text;
    }
    EXPECT_EQ(written, std::to_string(std::lround(drawn)));
    EXPECT_GT(drawn, 5);
}

TEST(TheArchPicture, IsTheSameEveryTime) {
    const auto once = pictureOf(support::upperClassIV(), {}, true);
    const auto again = pictureOf(support::upperClassIV(), {}, true);
    ASSERT_EQ(once.marks.size(), again.marks.size());
    EXPECT_EQ(textsOn(once), textsOn(again));
}

}  // namespace
