// Golden bytes: every kind of event in every format that was ever written is read for ever, and
// what is written now keeps its bytes. The files are only ever added to.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <set>
#include <sstream>

#include "storage/access_log.h"
#include "storage/event_codec.h"
#include "tests/storage/event_samples.h"

namespace {

using namespace domain;
using storage::decodeEvent;
using storage::encodeEvent;
using storage::LedgerEvent;
using testing::HasSubstr;

struct GoldenLine {
    int format{};
    std::string kind;
    QByteArray bytes;
};

/// Lines "format kind bytes-in-hexadecimal".
std::vector<GoldenLine> golden(const std::string& name) {
    std::ifstream file{std::string{GOLDEN_BYTES} + '/' + name};
    std::vector<GoldenLine> lines;
    for (std::string line; std::getline(file, line);) {
        std::istringstream words{line};
        GoldenLine read;
        std::string hex;
        words >> read.format >> read.kind >> hex;
        read.bytes = QByteArray::fromHex(QByteArray::fromStdString(hex));
        lines.push_back(std::move(read));
    }
    return lines;
}

std::vector<LedgerEvent> samples() {
    std::vector<LedgerEvent> all;
    for (const Event& event : support::orderSamples()) all.emplace_back(event);
    for (const WorkshopEvent& event : support::workshopSamples()) all.emplace_back(event);
    return all;
}

std::string kindWord(const LedgerEvent& event) {
    return std::visit([](const auto& each) { return std::string{codeOf(kindOf(each))}; }, event);
}

/// With what came after the first three formats.
std::vector<LedgerEvent> everySample() {
    std::vector<LedgerEvent> all = samples();
    for (const WorkshopEvent& event : support::laterWorkshopSamples()) all.emplace_back(event);
    all.emplace_back(support::keptSample());
    return all;
}

/// Every sample is found among the lines: read as it, and in the order of the lines.
void expectEverySampleIn(const std::vector<GoldenLine>& lines,
                         const std::vector<LedgerEvent>& expected) {
    std::size_t at = 0;
    for (const LedgerEvent& sample : expected) {
        ASSERT_LT(at, lines.size()) << "no bytes of " << kindWord(sample);
        const GoldenLine& line = lines[at++];
        const auto read = decodeEvent(line.bytes);
        ASSERT_TRUE(read) << line.kind << ": " << read.error().message;
        EXPECT_EQ(*read, sample) << line.kind << " in format " << line.format;
    }
}

TEST(EventBytes, OfTheFirstThreeFormatsAreReadAsTheyWereMeant) {
    const auto lines = golden("events_formats_1_to_3.txt");
    std::set<int> formats;
    for (const GoldenLine& line : lines) formats.insert(line.format);
    EXPECT_EQ(formats, (std::set{1, 2, 3}));
    expectEverySampleIn(lines, samples());
}

TEST(EventBytes, OfFormatFourAreReadAndWrittenAsEver) {
    const auto lines = golden("events_format_4.txt");
    expectEverySampleIn(lines, everySample());
    std::size_t at = 0;
    for (const LedgerEvent& sample : everySample())
        EXPECT_EQ(encodeEvent(sample).toHex().toStdString(),
                  lines.at(at++).bytes.toHex().toStdString())
            << kindWord(sample);
    std::set<std::string> kinds;
    for (const LedgerEvent& sample : everySample()) kinds.insert(kindWord(sample));
    EXPECT_EQ(kinds.size(), enumCodes<EventKind>.size() + enumCodes<WorkshopEventKind>.size());
}

TEST(EventBytes, OfTheAccessLogAreReadAndWrittenAsEver) {
    const auto lines = golden("access_format_1.txt");
    const auto entries = support::accessSamples();
    ASSERT_EQ(lines.size(), entries.size());
    std::set<AccessKind> kinds;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        kinds.insert(kindOf(entries[i]));
        EXPECT_EQ(storage::encodeAccess(entries[i]).toHex(), lines[i].bytes.toHex());
        const auto read = storage::decodeAccess(lines[i].bytes);
        ASSERT_TRUE(read) << read.error().message;
        EXPECT_EQ(*read, entries[i]) << lines[i].kind;
    }
    EXPECT_EQ(kinds.size(), enumCodes<AccessKind>.size());
}

// A prescription of the first formats is the text of its file: two fields of the form that change
// places must not make a record unreadable.
TEST(EventBytes, AreReadWhateverTheOrderOfTheForm) {
    GoldenLine line = golden("events_formats_1_to_3.txt").front();
    const LedgerEvent meant = *decodeEvent(line.bytes);
    const auto arch = line.bytes.indexOf("  \"arch\": \"lower\",\n");
    ASSERT_GE(arch, 0);
    const QByteArray moved = "  \"arch\": \"lower\",\n";
    line.bytes.remove(arch, moved.size());
    const auto format = line.bytes.indexOf("  \"format\"");
    ASSERT_GE(format, 0);
    line.bytes.insert(format, moved);
    const auto read = decodeEvent(line.bytes);
    ASSERT_TRUE(read) << read.error().message;
    EXPECT_EQ(*read, meant);
}

TEST(EventBytes, NameTheFieldThatIsMissingOrUnknown) {
    const QByteArray bytes = encodeEvent(Event{.order = support::orderSamples().front().order,
                                               .version = 1,
                                               .at = {},
                                               .person = support::orderSamples().front().person,
                                               .key = "k",
                                               .what = StageDone{Stage::WaxUp}});
    ASSERT_TRUE(decodeEvent(bytes));
    QByteArray renamed = bytes;
    const auto at = renamed.indexOf(QByteArray{"\0\0\0\5stage", 9});
    ASSERT_GE(at, 0);
    renamed[at + 8] = 'f';
    const auto read = decodeEvent(renamed);
    ASSERT_FALSE(read);
    EXPECT_THAT(read.error().message, HasSubstr("the field \"stage\" is missing"));
    QByteArray added = bytes;
    added.append(QByteArray{"\0\0\0\1z\0\0\0\0", 9});
    const auto newer = decodeEvent(added);
    ASSERT_FALSE(newer);
    EXPECT_THAT(newer.error().message, HasSubstr("the field \"z\" is not known here"));
}

}  // namespace
