#include "storage/files/cure_log_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

namespace {

using domain::CureReading;
using domain::Seconds;
using domain::Temperature;
using storage::readCureLog;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;

TEST(ACureLogFile, IsReadWithTimesInSecondsAndEitherEndOfLine) {
    const auto log = readCureLog("minutes,celsius\n0,20\r\n0.5,21.125\n1.017,22.0", "cure.csv");
    ASSERT_TRUE(log) << log.error().message;
    EXPECT_THAT(log->readings, ElementsAre(CureReading{Seconds::of(0), Temperature::of(20'000)},
                                           CureReading{Seconds::of(30), Temperature::of(21'125)},
                                           CureReading{Seconds::of(61), Temperature::of(22'000)}));
}

// Computed with the coreutils program sha256sum over the same bytes.
TEST(ACureLogFile, IsKnownByTheDigestOfItsBytes) {
    const auto digest = [](const char* text) { return readCureLog(text, "cure.csv")->digest; };
    EXPECT_EQ(digest("minutes,celsius\n0,20\n"),
              "cc1f39265058f07881b804c15c76f58a26dd44988a2a071eb71713564f2d713b");
    EXPECT_NE(digest("minutes,celsius\n0,20\n"), digest("minutes,celsius\r\n0,20\r\n"));
}

TEST(ACureLogFile, ThatIsWrongIsRefusedByLineAndNothingOfItIsRead) {
    struct Spoilt {
        const char* text;
        const char* place;
    };
    for (const Spoilt& spoilt : {Spoilt{"", "cure.csv:1"},
                                 {"minutes;celsius\n0,20\n", "cure.csv:1"},
                                 {"celsius,minutes\n20,0\n", "cure.csv:1"},
                                 {"Minutes,Celsius\n0,20\n", "cure.csv:1"},
                                 {"\xEF\xBB\xBFminutes,celsius\n0,20\n", "cure.csv:1"},
                                 {"0,20\n1,21\n", "cure.csv:1"},
                                 {"minutes,celsius\n", "cure.csv:1"},
                                 {"minutes,celsius\n0\n", "cure.csv:2"},
                                 {"minutes,celsius\n0,20\n1,21,\n", "cure.csv:3"},
                                 {"minutes,celsius\n0,20\n\n1,21\n", "cure.csv:3"},
                                 {"minutes,celsius\n0,20\n1,21\n\n", "cure.csv:4"},
                                 {"minutes,celsius\n0,20\n1,\n", "cure.csv:3"},
                                 {"minutes,celsius\n0,20\n,21\n", "cure.csv:3"},
                                 {"minutes,celsius\n0, 20\n", "cure.csv:2"},
                                 {"minutes,celsius\n\"0\",\"20\"\n", "cure.csv:2"},
                                 {"minutes,celsius\n-1,20\n", "cure.csv:2"},
                                 {"minutes,celsius\n0,-2\n", "cure.csv:2"},
                                 {"minutes,celsius\n0,nan\n", "cure.csv:2"},
                                 {"minutes,celsius\n0,1e2\n", "cure.csv:2"},
                                 {"minutes,celsius\n0,20.0001\n", "cure.csv:2"},
                                 {"minutes,celsius\n0;20,5\n", "cure.csv:2"},
                                 {"minutes,celsius\n0,2001\n", "cure.csv:2"},
                                 {"minutes,celsius\n10080.001,20\n", "cure.csv:2"},
                                 {"minutes,celsius\n0,20C\n", "cure.csv:2"}}) {
        const auto log = readCureLog(spoilt.text, "cure.csv");
        ASSERT_FALSE(log) << spoilt.text;
        EXPECT_EQ(log.error().code, domain::ErrorCode::Unusable);
        EXPECT_THAT(log.error().message, AllOf(HasSubstr(spoilt.place), HasSubstr("expected")));
    }
    EXPECT_TRUE(readCureLog("minutes,celsius\n10080,2000\n", "cure.csv"));
}

TEST(ACureLogFile, OnTheDiskIsReadOrRefusedByItsName) {
    const auto folder = std::filesystem::path{testing::TempDir()};
    EXPECT_THAT(storage::loadCureLog(folder / "no-such-cure.csv").error().message,
                HasSubstr("no-such-cure.csv: no such file"));
    EXPECT_THAT(storage::loadCureLog(folder).error().message, HasSubstr("a cure log"));
    const auto path = folder / "framewright-cure-log-test.csv";
    std::ofstream{path, std::ios::binary} << "minutes,celsius\n0,20\nten,21\n";
    EXPECT_THAT(storage::loadCureLog(path).error().message,
                HasSubstr("framewright-cure-log-test.csv:3"));
    std::ofstream{path, std::ios::binary} << "minutes,celsius\n0,20\n10,21\n";
    const auto log = storage::loadCureLog(path);
    ASSERT_TRUE(log) << log.error().message;
    EXPECT_EQ(log->readings.size(), 2U);
    std::filesystem::remove(path);
}

}  // namespace
