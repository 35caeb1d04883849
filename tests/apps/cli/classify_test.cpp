#include "apps/cli/classify.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

#include "tests/oracles/kennedy_cases.h"

namespace {

using testing::HasSubstr;

std::string answered(std::string_view line) {
    const auto told = cli::parseToldArch(line);
    return told ? cli::answerTo(*told) : told.error().message;
}

TEST(Classify, GivesThePublishedAnswers) {
    for (const auto& known : oracles::kPublishedKennedy)
        EXPECT_EQ(answered(known.told), known.answer) << known.name << ": " << known.source;
}

TEST(Classify, GivesTheAnswersWorkedByHand) {
    for (const auto& known : oracles::kWorkedKennedy)
        EXPECT_EQ(answered(known.told), known.answer) << known.name;
}

TEST(Classify, ReadsEveryNotation) {
    EXPECT_EQ(answered("upper notation=universal missing=5,4,12,13,14"), "III mod 1");
    EXPECT_EQ(answered("upper missing=UR4,UR5,UL4,UL5,UL6 notation=palmer"), "III mod 1");
}

TEST(Classify, TakesNotReplacedAsMissingWhetherRepeatedOrNot) {
    EXPECT_EQ(answered("lower missing=46 not-replaced=47"), "II");
    EXPECT_EQ(answered("lower missing=46,47 not-replaced=47"), "II");
    EXPECT_EQ(answered("upper not-replaced=14"), "none");
}

TEST(Classify, SaysWhatItCannotRead) {
    EXPECT_THAT(answered(""), HasSubstr("the line is empty"));
    EXPECT_THAT(answered("middle missing=14"), HasSubstr("no arch; expected upper, lower"));
    EXPECT_THAT(answered("upper missing=36"), HasSubstr("tooth 36 is not in the upper arch"));
    EXPECT_THAT(answered("upper missing=19"), HasSubstr("\"19\" is no tooth"));
    EXPECT_THAT(answered("upper missing=14;15"), HasSubstr("\"14;15\" is no tooth"));
    EXPECT_THAT(answered("upper lost=14"), HasSubstr("\"lost=14\" is not understood"));
    EXPECT_THAT(answered("upper 14"), HasSubstr("\"14\" is not understood"));
    EXPECT_THAT(answered("upper notation=roman"), HasSubstr("no notation"));
    EXPECT_THAT(answered("upper missing=18 abutment=18"), HasSubstr("as abutment and as missing"));
    EXPECT_THAT(answered("upper not-replaced=18 replaced=18"), HasSubstr("and as not replaced"));
}

TEST(ClassifyBatch, AnswersEachLineInItsPlace) {
    std::istringstream lines{
        "upper missing=14,15,24,25,26\nupper missing=99\r\nlower missing=46\n"};
    std::vector<std::string> answers;
    std::vector<std::string> complaints;
    const auto into = [](std::vector<std::string>& list) {
        return [&list](std::string_view line) { list.emplace_back(line); };
    };
    EXPECT_EQ(cli::classifyBatch(lines, into(answers), into(complaints)), cli::Exit::Unusable);
    EXPECT_THAT(answers, testing::ElementsAre("III mod 1", "unusable", "III"));
    EXPECT_THAT(complaints, testing::ElementsAre(HasSubstr("line 2: \"99\" is no tooth")));
}

}  // namespace
