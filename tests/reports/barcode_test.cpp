#include "reports/barcode.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "reports/barcode_layout.h"
#include "reports/ticket.h"
#include "tests/reports/printed.h"
#include "tests/reports/sample_papers.h"

namespace {

using printed::Folder;
using reports::Symbol;
using testing::HasSubstr;

/// Whether the middle of a module is dark.
bool isDark(const Symbol& symbol, int column, int row) {
    const double x = column + 0.5;
    const double y = row + 0.5;
    for (const domain::Box& box : symbol.dark)
        if (box.left < x && x < box.right && box.top < y && y < box.bottom) return true;
    return false;
}

// ISO/IEC 15417: in set C two digits take 11 modules; start and check character 11 each, stop 13.
// The start character of set C is 211232, the stop character 2331112. The widths are from memory.
TEST(Code128, OfEightDigitsIsOfSetC) {
    const Symbol bars = reports::code128Of(samples::number()).value();
    EXPECT_EQ(bars.width, 11 + 4 * 11 + 11 + 13);
    std::string modules;
    for (int column = 0; column < static_cast<int>(bars.width); ++column)
        modules += isDark(bars, column, 0) ? '1' : '0';
    EXPECT_EQ(modules.substr(0, 11), "11010011100");
    EXPECT_EQ(modules.substr(modules.size() - 13), "1100011101011");
}

// ISO/IEC 18004: version 1 has 21 modules a side; a finder pattern of 7 lies in three corners, and
// the format's first two bits, 00 for level M, are masked with 10. The mask is from memory.
TEST(AQrCode, OfEightDigitsIsOfTheSmallestVersionAndOfLevelM) {
    const Symbol square = reports::qrOf(samples::number()).value();
    EXPECT_EQ(square.width, 21);
    EXPECT_EQ(square.height, 21);
    for (const auto& [left, top] : {std::pair{0, 0}, std::pair{14, 0}, std::pair{0, 14}})
        for (int at = 0; at < 7; ++at) {
            EXPECT_TRUE(isDark(square, left + at, top));
            EXPECT_TRUE(isDark(square, left, top + at));
            EXPECT_EQ(isDark(square, left + 1 + at % 5, top + 1), false);
        }
    EXPECT_TRUE(isDark(square, 0, 8));
    EXPECT_FALSE(isDark(square, 1, 8));
}

/// What a scanner of another make reads on the first page: kind and digits, a line each.
std::string scanned(const Folder& folder, const std::filesystem::path& pdf, int dotsPerInch) {
    const std::string image = (folder / "page").string();
    printed::run(PDFTOPPM " -gray -r " + std::to_string(dotsPerInch) + " -f 1 -l 1 -singlefile '" +
                 pdf.string() + "' '" + image + "'");
    return printed::run(ZBARIMG " -q '" + image + ".pgm'").output;
}

// 203 dots an inch is what cheap printers and scanners have.
TEST(TheBarcodesOfAPaper, AreReadBackAsItsOrderNumber) {
    const Folder folder;
    for (const int count : {1, 12, 99'999})
        for (const auto size : {reports::PageSize::A4, reports::PageSize::UsLetter}) {
            reports::Ticket ticket = samples::ticket();
            ticket.number = samples::number(count);
            reports::PaperHead head = printed::head();
            head.size = size;
            const auto file = printed::put(folder, reports::ticketOf(head, ticket));
            for (const int dots : {203, 300}) {
                const std::string read = scanned(folder, file, dots);
                EXPECT_THAT(read, HasSubstr("CODE-128:" + ticket.number.text() + '\n'));
                EXPECT_THAT(read, HasSubstr("QR-Code:" + ticket.number.text() + '\n'));
                EXPECT_EQ(std::ranges::count(read, '\n'), 2) << read;
            }
        }
}

TEST(TheBarcodesOfAPaper, HoldNothingOfThePatient) {
    const Folder folder;
    reports::Ticket ticket = samples::ticket();
    const auto one = scanned(folder, printed::put(folder, ticketOf(printed::head(), ticket)), 203);
    ticket.patientCode = "Z-9";
    EXPECT_EQ(scanned(folder, printed::put(folder, ticketOf(printed::head(), ticket)), 203), one);
    EXPECT_FALSE(one.empty());
}

TEST(TheBarcodesOfAPaper, AreAsLargeAsScannersNeed) {
    EXPECT_GE(reports::kBarModule, 0.25);
    EXPECT_GE(reports::kBarHeight, 10);
    EXPECT_GE(reports::kBarQuiet, 10);
    EXPECT_GE(reports::kQrModule, 0.5);
    EXPECT_GE(reports::kQrQuiet, 4);
}

TEST(ADrawing, ThatIsRefusedTellsWhy) {
    reports::PdfDocument pdf{reports::PageSize::A4, "refused", domain::Instant{}};
    pdf.addPage();
    pdf.refuse("the barcode library refuses: too long");
    pdf.refuse("a later trouble");
    const auto bytes = pdf.bytes();
    ASSERT_FALSE(bytes);
    EXPECT_THAT(bytes.error().message, HasSubstr("too long"));
}

TEST(ADrawing, OfAreasThatReachNowhereIsRefused) {
    reports::PdfDocument pdf{reports::PageSize::A4, "nan", domain::Instant{}};
    pdf.addPage();
    pdf.areas({{1, 1, std::numeric_limits<double>::quiet_NaN(), 2}}, domain::Colour::Ink);
    EXPECT_FALSE(pdf.bytes());
}

}  // namespace
