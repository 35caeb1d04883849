#include "domain/base/plain_text.h"

#include <gtest/gtest.h>

#include "tests/oracles/hidden_characters.h"

namespace {

using domain::plainText;

TEST(PlainText, LeavesLettersOfAnyScriptAsTheyAre) {
    for (const char* text : {"", "MK-204 [waits]", "Čapková Θαλασσινή Звездин", "محمد", "田中 花子",
                             "e\u0301", "\u00A0\u3000", "\U0001F600"})
        EXPECT_EQ(plainText(text), text);
}

TEST(PlainText, SpellsOutWhatSteersATerminal) {
    EXPECT_EQ(plainText("a\x1B[31mb"), "a[U+001B][31mb");
    EXPECT_EQ(plainText("\u009B31m"), "[U+009B]31m");
    EXPECT_EQ(plainText(std::string{"\0\a\b\x7F", 4}), "[U+0000][U+0007][U+0008][U+007F]");
}

TEST(PlainText, IsOneLine) {
    EXPECT_EQ(plainText("a\nb\rc\td"), "a[U+000A]b[U+000D]c[U+0009]d");
    EXPECT_EQ(plainText("a\u0085b\u2028c\u2029d"), "a[U+0085]b[U+2028]c[U+2029]d");
}

// Unicode Standard Annex 9: explicit directional formatting characters.
TEST(PlainText, SpellsOutWhatTurnsTheOrderOfWriting) {
    EXPECT_EQ(plainText("26\u202E71"), "26[U+202E]71");
    for (const auto [first, last] : oracles::kBidiControl)
        for (char32_t code = first; code <= last; ++code)
            EXPECT_TRUE(domain::isHidden(code)) << domain::spelt(code);
}

// Persian and Indic names need the joiners; here two names that look the same must not differ.
TEST(PlainText, ShowsTheJoinersOfANameByTheirNumbers) {
    EXPECT_EQ(plainText("a\u200Cb\u200Dc"), "a[U+200C]b[U+200D]c");
}

TEST(PlainText, SpellsOutEveryCharacterThatUnicodeShowsAsNothing) {
    std::ptrdiff_t ignorable = 0;
    for (const auto [first, last] : oracles::kDefaultIgnorable)
        for (char32_t code = first; code <= last; ++code, ++ignorable)
            EXPECT_TRUE(domain::isHidden(code)) << domain::spelt(code);
    std::ptrdiff_t hidden = 0;
    for (char32_t code = 0; code <= 0x10FFFF; ++code) hidden += domain::isHidden(code) ? 1 : 0;
    // Besides them only U+2028, U+2029 and the marks of annotation U+FFF9 to U+FFFB.
    EXPECT_EQ(hidden, ignorable + 5);
    EXPECT_EQ(plainText("\U000E0041"), "[U+E0041]");
}

// RFC 3629: overlong forms, surrogates, cut sequences and what lies beyond U+10FFFF are none.
TEST(PlainText, ShowsEveryByteThatBelongsToNoCharacter) {
    EXPECT_EQ(plainText("a\xC0\xAF"), "a[0xC0][0xAF]");
    EXPECT_EQ(plainText("\xED\xA0\x80"), "[0xED][0xA0][0x80]");
    EXPECT_EQ(plainText("\xF4\x90\x80\x80"), "[0xF4][0x90][0x80][0x80]");
    EXPECT_EQ(plainText("x\xE2\x82"), "x[0xE2][0x82]");
    EXPECT_EQ(plainText("x\xE2\x82y"), "x[0xE2][0x82]y");
    EXPECT_EQ(plainText("\x9B"
                        "31m"),
              "[0x9B]31m");
}

TEST(PlainText, LeavesAloneWhatItReturned) {
    const std::string once = plainText("a\x1B\n\u202E\xFF");
    EXPECT_EQ(plainText(once), once);
}

}  // namespace
