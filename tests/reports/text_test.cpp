#include "reports/text.h"

#include <gtest/gtest.h>

#include "reports/line_breaking.h"
#include "reports/true_type.h"

namespace {

using reports::printable;

TEST(PrintableText, KeepsLettersOfAnyScript) {
    const std::string names = "Čapková Θαλασσινή Звездин";
    EXPECT_EQ(printable(names), names);
}

// RFC 3629: overlong forms, surrogates and cut sequences are no characters.
TEST(PrintableText, ShowsEveryByteThatIsNoCharacter) {
    EXPECT_EQ(printable("a\xC0\xAF"), "a\uFFFD\uFFFD");
    EXPECT_EQ(printable("\xED\xA0\x80"), "\uFFFD\uFFFD\uFFFD");
    EXPECT_EQ(printable("x\xE2\x82"), "x\uFFFD\uFFFD");
    EXPECT_EQ(printable("\xFF z"), "\uFFFD z");
    EXPECT_EQ(printable("\xF5\x80\x80\x80"), "\uFFFD\uFFFD\uFFFD\uFFFD");
}

TEST(PrintableText, HasNoControlCharacters) {
    EXPECT_EQ(printable(std::string{"a\0b\x1B[31m\tc\r\nd\x7F", 13}), "ab[31m c  d");
    EXPECT_EQ(printable("\xC2\x85next"), "next");  // U+0085
}

// Unicode Standard Annex 9: explicit directional formatting characters.
TEST(PrintableText, SpellsOutWhatWouldTurnTheOrderOfWriting) {
    EXPECT_EQ(printable("a\u202Eb"), "a[U+202E]b");
    EXPECT_EQ(printable("\u2066x\u2069"), "[U+2066]x[U+2069]");
    EXPECT_EQ(printable("zero\u200Bwidth"), "zero[U+200B]width");
}

TEST(Characters, SurviveThereAndBack) {
    const std::string text = "aé€𝄞";
    EXPECT_EQ(reports::encoded(reports::decoded(text)), text);
    EXPECT_EQ(reports::decoded(text).size(), 4u);
}

class BrokenLines : public testing::Test {
protected:
    reports::PdfDocument pdf_{reports::PageSize::A4, "lines", domain::Instant{}};
    reports::Type type_{};

    std::vector<std::string> of(std::string_view text, double width) {
        return reports::brokenLines(pdf_, text, type_, width);
    }
};

TEST_F(BrokenLines, EndAtSpaces) {
    const auto lines = of("one two three four five six seven eight nine ten", 30);
    EXPECT_GT(lines.size(), 2u);
    for (const std::string& line : lines) {
        EXPECT_LE(pdf_.widthOf(line, type_), 30);
        EXPECT_NE(line.front(), ' ');
        EXPECT_NE(line.back(), ' ');
    }
}

TEST_F(BrokenLines, LoseNoLetterOfAWordThatIsTooLong) {
    std::string word;
    for (int count = 0; count < 1000; ++count) word += static_cast<char>('a' + count % 26);
    std::string joined;
    for (const std::string& line : of("so " + word + " then", 40)) {
        EXPECT_LE(pdf_.widthOf(line, type_), 40);
        joined += line;
    }
    EXPECT_NE(joined.find(word), std::string::npos);
}

TEST_F(BrokenLines, ComeToAnEndWhereNothingFits) {
    EXPECT_EQ(of("abc", 0.1).size(), 3u);
    EXPECT_TRUE(of("", 50).empty());
}

TEST_F(BrokenLines, SpellOutWhatTheFaceCannotShow) {
    EXPECT_EQ(of("\U0001F600", 50), (std::vector<std::string>{"[U+1F600]"}));
}

TEST(ATrueTypeFont, ThatIsNoneHasNoParts) {
    for (const std::string& bytes :
         {std::string{}, std::string{"no font"}, std::string(5000, '\xFF'), std::string(64, '\0')})
        for (const std::uint16_t glyph : std::initializer_list<std::uint16_t>{0, 1, 500, 65535})
            EXPECT_TRUE(reports::TrueType{bytes}.parts(glyph).empty());
}

}  // namespace
