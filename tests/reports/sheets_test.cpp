#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "domain/rules/examine.h"
#include "reports/prescription_sheet.h"
#include "reports/question_sheet.h"
#include "tests/reports/printed.h"
#include "tests/support/designs.h"

namespace {

using namespace domain;
using printed::flat;
using printed::Folder;
using printed::head;
using testing::HasSubstr;
using testing::Not;

std::vector<Finding> found(const Prescription& prescription) {
    return examine(prescription, support::examinationDay());
}

reports::Paper sheetOf(const Prescription& prescription) {
    return reports::prescriptionSheet(head(), prescription, found(prescription), {}, {}, {});
}

TEST(ThePrescriptionSheet, OfEveryDesignIsASoundPdfWithItsPeopleAndNumbers) {
    const Folder folder;
    for (const Prescription& design :
         {support::upperClassIIIMod1(), support::lowerClassI(), support::upperClassIIMod1(),
          support::lowerClassIIMod1(), support::upperClassIV(), support::lowerClassIIIMod1(),
          support::interimUpper()}) {
        const auto file = printed::put(folder, sheetOf(design));
        EXPECT_EQ(printed::contentOf(file).substr(0, 5), "%PDF-");
        EXPECT_TRUE(printed::isSound(file));
        const std::string text = flat(printed::textOf(file));
        // Polish, Greek, Cyrillic and accented names come back whole.
        EXPECT_THAT(text, HasSubstr(*design.identity.patientName));
        EXPECT_THAT(text, HasSubstr(*design.identity.prescriberName));
        EXPECT_THAT(text, HasSubstr(*design.identity.patientReference));
        EXPECT_THAT(text, HasSubstr("order 26000012"));
        EXPECT_THAT(text, HasSubstr(*design.statedClass));
        EXPECT_THAT(text, HasSubstr("patient's right"));
        EXPECT_THAT(text, HasSubstr("Cautions"));
    }
}

TEST(ThePrescriptionSheet, NumbersItsPagesAndSaysWhenAndByWhomItWasPrinted) {
    const Folder folder;
    const auto file = printed::put(folder, sheetOf(support::lowerClassI()));
    const int pages = printed::pagesOf(file);
    ASSERT_GE(pages, 2);
    const std::string text = flat(printed::textOf(file));
    for (int page = 1; page <= pages; ++page)
        EXPECT_THAT(text,
                    HasSubstr("page " + std::to_string(page) + " of " + std::to_string(pages)));
    EXPECT_THAT(text, HasSubstr("printed 2026-11-25 08:34 UTC by MK"));
    EXPECT_THAT(text, HasSubstr("digest 9f86d081"));
}

TEST(ThePrescriptionSheet, NamesTheRuleTheSourceAndTheNumberOfEachFinding) {
    Prescription design = support::lowerClassI();
    design.clasps[0].reciprocation.reset();
    design.shades.clear();
    const auto findings = found(design);
    ASSERT_FALSE(findings.empty());
    const Folder folder;
    const std::string text = flat(printed::textOf(printed::put(folder, sheetOf(design))));
    for (const Finding& finding : findings) {
        EXPECT_THAT(text, HasSubstr(finding.rule));
        EXPECT_THAT(text, HasSubstr(finding.found));
    }
}

TEST(ThePrescriptionSheet, WarnsOfWhatTheDesignHolds) {
    Prescription design = support::lowerClassI();
    EXPECT_THAT(reports::textOf(sheetOf(design)), HasSubstr("Cobalt: this alloy"));
    EXPECT_THAT(reports::textOf(sheetOf(design)), Not(HasSubstr("Nickel: this alloy")));
    design.framework.material = FrameworkMaterial::NickelChromium;
    design.sensitivities = {.noneKnown = {}, .known = {Sensitivity::Latex}};
    const std::string nickel = reports::textOf(sheetOf(design));
    EXPECT_THAT(nickel, HasSubstr("Nickel: this alloy"));
    EXPECT_THAT(nickel, HasSubstr("states them: latex"));
    design.base.methacrylateFree = true;
    EXPECT_THAT(reports::textOf(sheetOf(design)), Not(HasSubstr("Monomer:")));
    EXPECT_THAT(nickel, HasSubstr("Monomer:"));
    EXPECT_THAT(reports::textOf(sheetOf(support::interimUpper())), Not(HasSubstr("Beryllium and")));
}

TEST(ThePrescriptionSheet, OfNothingAtAllStillSaysWhatIsOpen) {
    const Prescription nothing;
    const Folder folder;
    const auto file = printed::put(folder, sheetOf(nothing));
    EXPECT_TRUE(printed::isSound(file));
    const std::string text = flat(printed::textOf(file));
    EXPECT_THAT(text, HasSubstr("not given"));
    EXPECT_THAT(text, HasSubstr("no reference given"));
}

/// Everything at once, many times over, so that the paper runs over many pages.
Prescription endless() {
    Prescription design = support::lowerClassIIMod1();
    for (int count = 0; count < 60; ++count) {
        design.clasps.push_back(design.clasps[static_cast<std::size_t>(count % 3)]);
        design.rests.push_back(design.rests[static_cast<std::size_t>(count % 4)]);
        design.enclosures.push_back(
            {.kind = EnclosureKind::Photograph,
             .disinfection = {},
             .sha256 = std::string(60, 'a') + std::to_string(1000 + count)});
    }
    return design;
}

TEST(ALongPrescription, LosesNothingAtTheEndsOfItsPages) {
    const Prescription design = endless();
    const Folder folder;
    const auto file = printed::put(folder, sheetOf(design));
    EXPECT_TRUE(printed::isSound(file));
    EXPECT_GT(printed::pagesOf(file), 6);
    const std::string text = flat(printed::textOf(file));
    for (int count = 0; count < 60; ++count)
        EXPECT_THAT(text, HasSubstr(std::to_string(1000 + count)));
}

TEST(ALongPrescription, KeepsItsMarginsOnEveryPage) {
    const Folder folder;
    for (const auto size : {reports::PageSize::A4, reports::PageSize::UsLetter}) {
        reports::Paper paper = sheetOf(endless());
        paper.head.size = size;
        const auto file = printed::put(folder, paper);
        for (int page = 1; page <= printed::pagesOf(file); ++page) {
            const auto raster = printed::rasterOf(file, page, 50);
            const int margin = 12 * 50 * 10 / 254;  // 12 mm in pixels
            ASSERT_GT(raster.width, 0);
            EXPECT_EQ(raster.ink(0, 0, raster.width, margin), 0) << page;
            EXPECT_EQ(raster.ink(0, raster.height - margin, raster.width, raster.height), 0);
            EXPECT_EQ(raster.ink(0, 0, margin, raster.height), 0) << page;
            EXPECT_EQ(raster.ink(raster.width - margin, 0, raster.width, raster.height), 0);
        }
    }
}

TEST(AHostileName, SurvivesOnPaperAsPlainText) {
    const Folder folder;
    for (const std::string& name :
         {std::string{") Tj ET (x"}, std::string{"%%EOF"}, std::string{"endstream endobj <<"},
          std::string{"back\\slash (paren"}}) {
        Prescription design = support::lowerClassI();
        design.identity.patientName = name;
        design.identity.patientReference = name;
        reports::PaperHead named = head();
        named.laboratory = name;
        named.order = name;
        const auto file = printed::put(
            folder, reports::prescriptionSheet(named, design, found(design), {}, {}, {}));
        EXPECT_TRUE(printed::isSound(file)) << name;
        EXPECT_THAT(flat(printed::textOf(file)), HasSubstr(name));
    }
}

TEST(AHostileName, OfTenThousandLettersRunsOnOverThePages) {
    Prescription design = support::lowerClassI();
    std::string name;
    for (int count = 0; count < 1000; ++count)
        name += "N" + std::to_string(1000000000 + count).substr(1);
    ASSERT_EQ(name.size(), 10'000u);
    design.identity.patientName = name;
    design.identity.patientReference = name;
    design.identity.remarks = std::string(10'000, ' ');
    const Folder folder;
    const auto file = printed::put(folder, sheetOf(design));
    EXPECT_TRUE(printed::isSound(file));
    std::string text;
    for (const char letter : printed::textOf(file))
        if (letter == 'N' || (letter >= '0' && letter <= '9')) text += letter;
    // Broken anywhere, but every tenth of the name is there somewhere in order.
    EXPECT_THAT(text, HasSubstr("N000000000"));
    EXPECT_THAT(text, HasSubstr("N000000999"));
    EXPECT_GT(printed::pagesOf(file), 4);
}

TEST(AHostileName, ShowsWhatIsHiddenInIt) {
    Prescription design = support::lowerClassI();
    design.identity.patientName = "Ann\u202Enna\u202C \xFF\xC0\xAF\x01 end";
    const Folder folder;
    const auto file = printed::put(folder, sheetOf(design));
    EXPECT_TRUE(printed::isSound(file));
    EXPECT_THAT(flat(printed::textOf(file)), HasSubstr("Ann[U+202E]nna[U+202C]"));
}

TEST(TheQuestionSheet, AsksOnceForEachRuleAndNumbersEachPlace) {
    Prescription design = support::lowerClassI();
    design.clasps[0].reciprocation.reset();
    design.clasps[1].reciprocation.reset();
    design.shades.clear();
    const auto findings = found(design);
    ASSERT_TRUE(reports::hasQuestions(findings, {}));
    const reports::Paper paper =
        reports::questionSheet(head(), design, findings, {}, printed::noOffers);
    std::vector<int> numbers;
    std::vector<std::string> texts;
    for (const reports::Block& block : paper.blocks)
        if (const auto* question = std::get_if<reports::Question>(&block)) {
            texts.push_back(question->text);
            for (const auto& place : question->places) numbers.push_back(place.flag.number);
        }
    std::size_t blocking = 0;
    for (const Finding& finding : findings)
        if (finding.severity != Severity::Caution) ++blocking;
    ASSERT_EQ(numbers.size(), blocking);
    for (std::size_t at = 0; at < numbers.size(); ++at)
        EXPECT_EQ(numbers[at], static_cast<int>(at) + 1);
    std::ranges::sort(texts);
    EXPECT_EQ(std::ranges::adjacent_find(texts), texts.end());
}

TEST(TheQuestionSheet, PutsTheBenchFirstAndLeavesRoomToSign) {
    Prescription design = support::lowerClassI();
    design.shades.clear();
    const std::vector<reports::FlagOnPaper> flags{{.reason = FlagReason::UndercutNotFound,
                                                   .note = "34: 0.1 mm at most.",
                                                   .person = "tech-2",
                                                   .since = head().printedAt}};
    const Folder folder;
    const auto file = printed::put(
        folder, reports::questionSheet(head(), design, found(design), flags, printed::noOffers));
    EXPECT_TRUE(printed::isSound(file));
    const std::string text = flat(printed::textOf(file));
    const auto bench = text.find("34: 0.1 mm at most.");
    const auto shade = text.find("shade.given");
    ASSERT_NE(bench, std::string::npos);
    ASSERT_NE(shade, std::string::npos);
    EXPECT_LT(bench, shade);
    EXPECT_THAT(text, HasSubstr("Signature"));
    EXPECT_THAT(text, HasSubstr("bench@foundrywalk.example"));
}

TEST(TheQuestionSheet, HasNoQuestionWhereNothingBlocks) {
    EXPECT_FALSE(reports::hasQuestions(found(support::lowerClassI()), {}));
    Finding caution{.rule = "clasp.count",
                    .severity = Severity::Caution,
                    .tooth = {},
                    .found = {},
                    .requirement = {},
                    .question = {},
                    .source = {}};
    EXPECT_FALSE(reports::hasQuestions({caution}, {}));
    caution.severity = Severity::Missing;
    EXPECT_TRUE(reports::hasQuestions({caution}, {}));
}

TEST(TheQuestionSheet, ListsCautionsApartFromWhatMustBeAnswered) {
    Prescription design = support::lowerClassI();
    design.clasps.pop_back();
    const auto findings = found(design);
    const std::string text =
        reports::textOf(reports::questionSheet(head(), design, findings, {}, printed::noOffers));
    for (const Finding& finding : findings)
        if (finding.severity == Severity::Caution) {
            EXPECT_GT(text.find(finding.rule), text.find("To know: no answer needed"));
        }
}

}  // namespace
