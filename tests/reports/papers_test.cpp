/// The papers as files: what a reader of PDF finds in them. qpdf and pdftotext are the judges.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <memory>

#include "domain/rules/examine.h"
#include "reports/paper_file.h"
#include "reports/prescription_sheet.h"
#include "reports/question_sheet.h"
#include "tests/support/designs.h"

namespace {

using testing::AllOf;
using testing::HasSubstr;

class Papers : public testing::Test {
protected:
    Papers() { std::filesystem::create_directories(folder_); }
    ~Papers() override { std::filesystem::remove_all(folder_); }

    static reports::PaperHead head() {
        return {.laboratory = "Westhaven Prosthetic Workshop",
                .address = "1 Tide Street, Westhaven",
                .contact = "bench@westhaven.example",
                .order = "26000017",
                .revision = 1,
                .printedAt = domain::Instant::ofMicroseconds(1'795'000'000'000'000),
                .printedBy = "MK",
                .digest = "0123456789ab",
                .size = reports::PageSize::A4};
    }

    static reports::Paper sheetOf(const domain::Prescription& prescription) {
        return reports::prescriptionSheet(
            head(), prescription, domain::examine(prescription, support::examinationDay()), {}, {});
    }

    /// What a command prints; it must succeed.
    static std::string told(const std::string& command) {
        const std::unique_ptr<FILE, int (*)(FILE*)> pipe{popen(command.c_str(), "r"), &pclose};
        std::string out;
        std::array<char, 4096> part{};
        while (pipe &&
               std::fgets(part.data(), static_cast<int>(part.size()), pipe.get()) != nullptr)
            out += part.data();
        return out;
    }

    /// The text of a paper as pdftotext reads it from the file, once qpdf finds the file sound.
    std::string textOf(const reports::Paper& paper) {
        const auto file = (folder_ / "paper.pdf").string();
        const auto written = reports::write(paper, file);
        EXPECT_TRUE(written) << written.error().message;
        EXPECT_THAT(told("qpdf --check " + file + " 2>&1"),
                    HasSubstr("No syntax or stream encoding errors found"));
        return told("pdftotext -layout " + file + " - 2>/dev/null");
    }

    std::filesystem::path folder_ = std::filesystem::temp_directory_path() /
                                    (std::string{"framewright-"} +
                                     testing::UnitTest::GetInstance()->current_test_info()->name());
};

TEST_F(Papers, PrintNamesInLatinGreekAndCyrillic) {
    EXPECT_THAT(textOf(sheetOf(support::upperClassIIIMod1())),
                AllOf(HasSubstr("Amélie Brûlé-Čapková"), HasSubstr("26000017"),
                      HasSubstr("III mod 1"), HasSubstr("palatal strap")));
    EXPECT_THAT(textOf(sheetOf(support::lowerClassI())), HasSubstr("Ευρυδίκη Θαλασσινή"));
    EXPECT_THAT(textOf(sheetOf(support::upperClassIIMod1())), HasSubstr("Милорад Звездин"));
    EXPECT_THAT(textOf(sheetOf(support::upperClassIV())), HasSubstr("Łucja Świętosz"));
}

TEST_F(Papers, AskWhatIsMissingWithItsRule) {
    auto prescription = support::lowerClassIIMod1();
    prescription.survey = {};
    const auto findings = domain::examine(prescription, support::examinationDay());
    ASSERT_TRUE(reports::hasQuestions(findings, {}));
    EXPECT_THAT(textOf(reports::questionSheet(head(), prescription, findings, {})),
                AllOf(HasSubstr("survey.present"), HasSubstr("survey.path"), HasSubstr("Signature"),
                      HasSubstr("Tooth 29")));
}

TEST_F(Papers, AreTheSameBytesEachTime) {
    const auto first = reports::pdfOf(sheetOf(support::lowerClassIIIMod1()));
    const auto second = reports::pdfOf(sheetOf(support::lowerClassIIIMod1()));
    ASSERT_TRUE(first && second);
    EXPECT_EQ(*first, *second);
    EXPECT_TRUE(first->starts_with("%PDF-"));
}

TEST_F(Papers, StaySoundWhateverANameHolds) {
    for (const std::string& name :
         {std::string{") Tj ET (x"}, std::string{"%%EOF endobj"}, std::string(10'000, 'W'),
          std::string{"a\xE2\x80\xAE"
                      "b"},
          std::string{"bad \xC3("}}) {
        auto prescription = support::upperClassIIIMod1();
        prescription.identity.patientName = name;
        prescription.identity.remarks = name;
        EXPECT_THAT(textOf(sheetOf(prescription)), HasSubstr("26000017"));
    }
}

TEST_F(Papers, SayWhenTheyCannotBeWritten) {
    const auto refused = reports::write(sheetOf(support::interimUpper()), "/sys/paper.pdf");
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, domain::ErrorCode::Unavailable);
    EXPECT_THAT(refused.error().message, HasSubstr("/sys"));
}

}  // namespace
