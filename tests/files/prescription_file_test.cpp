#include "storage/files/prescription_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <string>

#include "tests/support/designs.h"

namespace {

using testing::AllOf;
using testing::HasSubstr;

/// A small file that is right; the tests spoil one thing in it.
const std::string kSmall = R"({
  "format": "framewright-prescription-1",
  "arch": "upper",
  "notation": "iso3950",
  "dentition": {"missing": ["14", "15"], "not-replaced": ["17"]},
  "clasps": [
    {"tooth": "16", "kind": "circumferential",
     "undercut": {"place": "mesio-buccal", "depth": "0.25 mm"}}
  ],
  "issued": "2026-11-20"
})";

std::string spoilt(std::string_view part, std::string_view by) {
    std::string text = kSmall;
    const auto at = text.find(part);
    EXPECT_NE(at, std::string::npos) << part;
    return text.replace(at, part.size(), by);
}

/// What reading says when it refuses.
std::string refusal(const std::string& text) {
    const auto read = storage::readPrescription(text, "case.json");
    return read ? "was read" : read.error().message;
}

TEST(PrescriptionFile, ReadsTheSmallFile) {
    const auto read = storage::readPrescription(kSmall, "case.json");
    ASSERT_TRUE(read) << read.error().message;
    using domain::operator""_fdi;
    EXPECT_EQ(read->dentition.of(14_fdi), domain::ToothState::Missing);
    EXPECT_EQ(read->dentition.of(17_fdi), domain::ToothState::NotReplaced);
    ASSERT_EQ(read->clasps.size(), 1U);
    EXPECT_EQ(read->clasps[0].undercut->depth, domain::Microns::of(250));
    EXPECT_EQ(read->issued->text(), "2026-11-20");
}

TEST(PrescriptionFile, ReadsBackWhatItWritesToTheByte) {
    for (const auto& prescription :
         {support::upperClassIIIMod1(), support::lowerClassI(), support::upperClassIIMod1(),
          support::lowerClassIIMod1(), support::upperClassIV(), support::lowerClassIIIMod1(),
          support::interimUpper()}) {
        const std::string text = storage::writePrescription(prescription);
        const auto read = storage::readPrescription(text, "case.json");
        ASSERT_TRUE(read) << read.error().message;
        EXPECT_EQ(*read, prescription);
        EXPECT_EQ(storage::writePrescription(*read), text);
    }
}

TEST(PrescriptionFile, NamesFileLinePathAndWhatWasExpected) {
    EXPECT_THAT(refusal(spoilt("0.25 mm", "-1 mm")),
                AllOf(HasSubstr("case.json:8: clasps[0].undercut.depth: expected"),
                      HasSubstr("0.25 mm"), HasSubstr("given: \"-1 mm\"")));
    EXPECT_THAT(refusal(spoilt("0.25 mm", "0.010 in")), HasSubstr("with its unit"));
    EXPECT_THAT(refusal(spoilt("\"0.25 mm\"", "0.25")), HasSubstr("the bare number 0.25"));
    EXPECT_THAT(
        refusal(spoilt("\"16\"", "\"19\"")),
        HasSubstr("case.json:7: clasps[0].tooth: expected a tooth in the notation iso3950"));
    EXPECT_THAT(refusal(spoilt("2026-11-20", "2026-02-30")),
                HasSubstr("case.json:10: issued: expected a day that exists"));
    EXPECT_THAT(refusal(spoilt("\"upper\"", "\"uper\"")), HasSubstr("one of: upper, lower"));
    EXPECT_THAT(refusal(spoilt("\"arch\": \"upper\",", "")),
                HasSubstr("expected the field \"arch\""));
    EXPECT_THAT(refusal(spoilt("\"issued\"", "\"isued\"")), HasSubstr("given: \"isued\""));
    EXPECT_THAT(refusal(spoilt("framewright-prescription-1", "something-else")),
                HasSubstr("format: expected"));
}

TEST(PrescriptionFile, RefusesWhatIsGivenTwice) {
    EXPECT_THAT(refusal(spoilt("\"notation\"", "\"arch\"")),
                HasSubstr("case.json:4: the field \"arch\" is given twice"));
    EXPECT_THAT(refusal(spoilt("\"not-replaced\": [\"17\"]", "\"closed\": [\"14\"]")),
                HasSubstr("each tooth charted once"));
}

TEST(PrescriptionFile, RefusesWhatIsNoJson) {
    EXPECT_THAT(refusal(""), HasSubstr("case.json:1: not valid JSON"));
    EXPECT_THAT(refusal(kSmall.substr(0, kSmall.size() / 2)), HasSubstr("not valid JSON"));
    EXPECT_THAT(refusal(spoilt("\"0.25 mm\"", "NaN")), HasSubstr("not valid JSON"));
    EXPECT_THAT(refusal(spoilt("\"0.25 mm\"", "1e999")),
                HasSubstr("not valid JSON: number overflow parsing '1e999'"));
    EXPECT_THAT(refusal(spoilt("upper", "up\xC3per")), HasSubstr("UTF-8"));
    EXPECT_THAT(refusal(spoilt("upper", "up\xC0\xAFper")), HasSubstr("UTF-8"));
    EXPECT_THAT(refusal(kSmall + "x"), HasSubstr("not valid JSON"));
    EXPECT_THAT(refusal(std::string(100'000, '[')), HasSubstr("nested deeper"));
    EXPECT_THAT(refusal("[]"), HasSubstr("a group of fields"));
    EXPECT_THAT(refusal("null"), HasSubstr("a group of fields"));
}

TEST(PrescriptionFile, RefusesTextsThatCannotBePrinted) {
    EXPECT_THAT(
        refusal(spoilt("\"issued\": \"2026-11-20\"", "\"identity\": {\"remarks\": \"a\\u0007b\"}")),
        HasSubstr("without control characters"));
    EXPECT_THAT(refusal(spoilt("\"issued\": \"2026-11-20\"", "\"identity\": {\"remarks\": \"\"}")),
                HasSubstr("not empty"));
    const std::string large = "\"identity\": {\"remarks\": \"" + std::string(4001, 'x') + "\"}";
    EXPECT_THAT(refusal(spoilt("\"issued\": \"2026-11-20\"", large)), HasSubstr("at most 4000"));
}

TEST(PrescriptionFile, NeverCrashesOnAnyTruncationOrChangedByte) {
    const std::string text = storage::writePrescription(support::upperClassIIIMod1());
    for (std::size_t at = 0; at < text.size(); at += 3) {
        EXPECT_FALSE(storage::readPrescription(text.substr(0, at), "case.json"));
        for (const char byte : {'\0', '"', '{', ']', '\xFF', '9'}) {
            std::string changed = text;
            changed[at] = byte;
            (void)storage::readPrescription(changed, "case.json");
        }
    }
}

TEST(PrescriptionFile, ReadsTeethInTheNotationItDeclares) {
    using domain::operator""_fdi;
    std::string text = spoilt("iso3950", "universal");
    text.replace(text.find("\"14\", \"15\""), 10, "\"5\", \"4\"");
    text.replace(text.find("[\"17\"]"), 6, "[\"2\"]");
    text.replace(text.find("\"16\""), 4, "\"3\"");
    const auto read = storage::readPrescription(text, "case.json");
    ASSERT_TRUE(read) << read.error().message;
    EXPECT_EQ(read->dentition.of(14_fdi), domain::ToothState::Missing);
    EXPECT_EQ(read->clasps[0].tooth, 16_fdi);
}

class LoadingPrescriptions : public testing::Test {
protected:
    LoadingPrescriptions() { std::filesystem::create_directories(folder_); }
    ~LoadingPrescriptions() override { std::filesystem::remove_all(folder_); }
    std::string refusalOf(const std::filesystem::path& file) {
        const auto read = storage::loadPrescription(file);
        return read ? "was read" : read.error().message;
    }
    std::filesystem::path folder_ =
        std::filesystem::temp_directory_path() /
        ("framewright-files-" + std::to_string(testing::UnitTest::GetInstance()->random_seed()) +
         testing::UnitTest::GetInstance()->current_test_info()->name());
};

TEST_F(LoadingPrescriptions, RefusesWhatIsNoFileOfTheRightSize) {
    EXPECT_THAT(refusalOf(folder_), HasSubstr("is a folder"));
    EXPECT_THAT(refusalOf(folder_ / "none.json"), HasSubstr("no such file"));
    std::ofstream{folder_ / "empty.json"};
    EXPECT_THAT(refusalOf(folder_ / "empty.json"), HasSubstr("is empty"));
    std::ofstream{folder_ / "large.json"}.put('[');
    std::filesystem::resize_file(folder_ / "large.json", 100'000'000);
    EXPECT_THAT(refusalOf(folder_ / "large.json"), HasSubstr("has 100000000 bytes"));
    EXPECT_THAT(refusalOf("/dev/null"), HasSubstr("is not a plain file"));
}

TEST_F(LoadingPrescriptions, ReadsAFileWithAByteOrderMark) {
    std::ofstream{folder_ / "marked.json"} << "\xEF\xBB\xBF" << kSmall;
    EXPECT_TRUE(storage::loadPrescription(folder_ / "marked.json"));
}

TEST(PrescriptionSchema, IsTheOneInTheTree) {
    std::ifstream file{FRAMEWRIGHT_SCHEMA};
    const std::string kept{std::istreambuf_iterator<char>{file}, {}};
    EXPECT_EQ(kept, storage::prescriptionSchema());
}

}  // namespace
