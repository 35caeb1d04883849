/// That letters leave ink: what a text search finds may still be missing on paper.
#include <gtest/gtest.h>

#include "tests/reports/printed.h"

#include "reports/pdf_document.h"
#include "reports/pdf_picture.h"

namespace {

using namespace reports;
using domain::Instant;
using printed::Folder;

constexpr int kDotsPerInch = 200;
constexpr double kPitch = 14;  // mm between the letters of a row

/// Ink of each letter, printed large in a row; `face` as given.
std::vector<int> inkOf(const std::vector<std::string>& letters, Face face) {
    const Folder folder;
    PdfDocument pdf{PageSize::A4, "letters", Instant{}};
    pdf.addPage();
    for (std::size_t at = 0; at < letters.size(); ++at)
        pdf.text({15 + kPitch * static_cast<double>(at), 40}, letters[at],
                 {.face = face, .size = 30, .colour = domain::Colour::Ink});
    const auto bytes = pdf.bytes();
    EXPECT_TRUE(bytes);
    std::ofstream{folder / "letters.pdf", std::ios::binary} << *bytes;
    const auto raster = printed::rasterOf(folder / "letters.pdf", 1, kDotsPerInch);
    EXPECT_GT(raster.width, 0);
    std::vector<int> ink;
    const auto dots = [](double mm) { return static_cast<int>(mm / 25.4 * kDotsPerInch); };
    for (std::size_t at = 0; at < letters.size(); ++at) {
        const double left = 14 + kPitch * static_cast<double>(at);
        ink.push_back(raster.ink(dots(left), dots(22), dots(left + kPitch), dots(46)));
    }
    return ink;
}

// Each letter is a base letter with something added, so it must leave more ink than its base does.
// All eleven are composed of composed glyphs in the face, which libharu 2.3.0 alone drops in part.
TEST(ComposedLetters, LeaveMoreInkThanTheirBases) {
    const std::vector<std::string> composed{"Ё", "ї", "Ї", "Ό", "ό", "ΐ", "ǘ", "Č", "é", "ő", "Ż"};
    const std::vector<std::string> bases{"Е", "ı", "І", "Ο", "ο", "ι", "u", "C", "e", "o", "Z"};
    for (const Face face : {Face::Plain, Face::Bold}) {
        const auto whole = inkOf(composed, face);
        const auto plain = inkOf(bases, face);
        for (std::size_t at = 0; at < composed.size(); ++at) {
            EXPECT_GT(plain[at], 100) << bases[at];
            EXPECT_GT(whole[at], plain[at] + 15) << composed[at];
        }
    }
}

TEST(Letters, OfEveryScriptWePromiseArePrinted) {
    for (const int count : inkOf({"ł", "ą", "ß", "Ø", "ψ", "Ω", "ж", "Щ", "ґ", "є"}, Face::Plain))
        EXPECT_GT(count, 100);
}

TEST(ADrawing, ToAPlaceThatIsNoNumberIsRefused) {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double infinite = std::numeric_limits<double>::infinity();
    const auto refused = [](auto draw) {
        PdfDocument pdf{PageSize::A4, "nan", Instant{}};
        pdf.addPage();
        draw(pdf);
        const auto bytes = pdf.bytes();
        return !bytes && bytes.error().code == domain::ErrorCode::Unavailable &&
               bytes.error().message.find("not a number") != std::string::npos;
    };
    EXPECT_TRUE(refused([&](PdfDocument& pdf) { pdf.text({nan, 5}, "x", {}); }));
    EXPECT_TRUE(refused([&](PdfDocument& pdf) { pdf.line({{1, 1}, {infinite, 2}}, false, {}); }));
    EXPECT_TRUE(refused(
        [&](PdfDocument& pdf) { pdf.area({{1, 1}, {2, nan}, {3, 3}}, domain::Colour::Ink); }));
    EXPECT_FALSE(refused([](PdfDocument& pdf) { pdf.text({5, 5}, "x", {}); }));
}

TEST(ADrawing, OfNothingIsStillAnEmptyPage) {
    PdfDocument pdf{PageSize::UsLetter, "empty", Instant{}};
    pdf.addPage();
    pdf.text({10, 10}, "", {});
    pdf.line({{1, 1}}, false, {});
    pdf.area({}, domain::Colour::Ink);
    const auto bytes = pdf.bytes();
    ASSERT_TRUE(bytes);
    EXPECT_EQ(bytes->substr(0, 5), "%PDF-");
}

TEST(ADrawing, WithoutAPageTellsSoInsteadOfCrashing) {
    PdfDocument pdf{PageSize::A4, "none", Instant{}};
    pdf.text({10, 10}, "x", {});
    EXPECT_EQ(pdf.pageCount(), 0);
    pdf.turnTo(3);
    (void)pdf.bytes();
}

}  // namespace
