// What may be typed into the records of a stage in clear.
#include "domain/production/bench_words.h"

#include <gtest/gtest.h>

#include "domain/materials/cure_log.h"

namespace {

using domain::strangeWordIn;

TEST(BenchWords, HoldWhatABenchMeasuresAndDisinfectsWith) {
    for (const char* text :
         {"alloy charge 42.3 g", "humidity 40 %", "room temperature 21.5 °C", "Alcohol 70 %",
          "sodium hypochlorite 0.5 %", "iodophor 1:213", "wax=5 g", "match neighbours", "A-D scale",
          "M2B", "B3", "cobalt-chromium", "300 µm", "", "12"})
        EXPECT_EQ(strangeWordIn(text), "") << text;
}

TEST(BenchWords, HoldNobodysName) {
    EXPECT_EQ(strangeWordIn("wax for Zzcanary"), "Zzcanary");
    EXPECT_EQ(strangeWordIn("Søren"), "Søren");
    EXPECT_EQ(strangeWordIn("42 g Zzcanary"), "Zzcanary");
    EXPECT_EQ(strangeWordIn("12zzcanarysmith"), "12zzcanarysmith") << "too long for a code";
    EXPECT_EQ(strangeWordIn("李"), "李");
    EXPECT_EQ(strangeWordIn("alcohol; zzcanary"), "zzcanary");
    EXPECT_EQ(strangeWordIn("wax_zzcanary"), "zzcanary") << "other signs part words";
}

// A cure that is judged complains in sentences of the program's own, which are recorded as well.
TEST(BenchWords, HoldEveryComplaintAboutACure) {
    using domain::CureReading;
    using domain::Seconds;
    using domain::Temperature;
    std::vector<std::vector<CureReading>> logs{{}};
    for (const std::int64_t step : {30, 60, 600, -60})
        for (const std::int64_t peak : {40'000, 74'000, 90'000, 100'000, 140'000}) {
            std::vector<CureReading> log;
            for (std::int64_t i = 0; i < 12; ++i)
                log.push_back({Seconds::of(i * step), Temperature::of(i < 8 ? peak : 25'000)});
            logs.push_back(log);
        }
    std::size_t complaints = 0;
    for (const auto& cycle : domain::enumCodes<domain::CureCycle>)
        for (const auto& log : logs)
            for (const auto& complaint :
                 domain::judgeCure(log, cycle.value, domain::Microns::of(9'000)).complaints) {
                ++complaints;
                EXPECT_EQ(strangeWordIn(domain::wordsOf(complaint.fault) + ": " + complaint.says),
                          "")
                    << complaint.says;
            }
    EXPECT_GT(complaints, 20U);
}

}  // namespace
