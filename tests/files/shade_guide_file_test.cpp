#include "storage/files/shade_guide_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace {

using storage::readShadeTabs;
using testing::AllOf;
using testing::HasSubstr;

TEST(AShadeGuideFile, IsReadWithMeasuredAndUnmeasuredTabs) {
    const auto tabs = readShadeTabs("tab,L*,a*,b*\nA2,76.04,-0.08,16.73\r\nA3,,,\n", "guide.csv");
    ASSERT_TRUE(tabs) << tabs.error().message;
    ASSERT_EQ(tabs->size(), 2U);
    EXPECT_EQ((*tabs)[0].name, "A2");
    EXPECT_EQ((*tabs)[0].colour->text(), "76.04 -0.08 16.73");
    EXPECT_FALSE((*tabs)[1].colour);
}

TEST(AShadeGuideFile, ThatIsWrongIsRefusedByLine) {
    struct Spoilt {
        const char* text;
        const char* place;
    };
    for (const Spoilt& spoilt : {Spoilt{"", "guide.csv:1"},
                                 {"tab;L*;a*;b*\nA2,1,1,1\n", "guide.csv:1"},
                                 {"tab,L*,a*,b*\n", "guide.csv:1"},
                                 {"tab,L*,a*,b*\nA2,76.04,-0.08\n", "guide.csv:2"},
                                 {"tab,L*,a*,b*\nA2,76.04,-0.08,16.73,9\n", "guide.csv:2"},
                                 {"tab,L*,a*,b*\nA2,1,1,1\nA2,2,2,2\n", "guide.csv:3"},
                                 {"tab,L*,a*,b*\n,1,1,1\n", "guide.csv:2"},
                                 {"tab,L*,a*,b*\nA2,101,1,1\n", "guide.csv:2"},
                                 {"tab,L*,a*,b*\nA2,1,,1\n", "guide.csv:2"},
                                 {"tab,L*,a*,b*\nA 2,1,1,1\n", "guide.csv:2"},
                                 {"tab,L*,a*,b*\n\nA2,1,1,1\n", "guide.csv:2"}}) {
        const auto tabs = readShadeTabs(spoilt.text, "guide.csv");
        ASSERT_FALSE(tabs) << spoilt.text;
        EXPECT_EQ(tabs.error().code, domain::ErrorCode::Unusable);
        EXPECT_THAT(tabs.error().message, AllOf(HasSubstr(spoilt.place), HasSubstr("expected")));
    }
}

TEST(AShadeGuideFile, HoldsAtMostTwoHundredTabsWithShortNames) {
    std::string text = "tab,L*,a*,b*\n";
    for (int tab = 0; tab < 200; ++tab) text += std::to_string(tab) + ",,,\n";
    EXPECT_EQ(readShadeTabs(text, "guide.csv")->size(), 200U);
    EXPECT_FALSE(readShadeTabs(text + "more,,,\n", "guide.csv"));
    EXPECT_TRUE(readShadeTabs("tab,L*,a*,b*\n" + std::string(40, 'a') + ",,,", "guide.csv"));
    EXPECT_FALSE(readShadeTabs("tab,L*,a*,b*\n" + std::string(41, 'a') + ",,,", "guide.csv"));
}

}  // namespace
