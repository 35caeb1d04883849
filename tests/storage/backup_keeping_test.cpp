// Which backups stay: a table of lists and rules.
#include "storage/backup_keeping.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace {

using domain::Date;
using domain::Instant;
using storage::BackupMark;
using storage::KeepRule;
using storage::KeptPeriod;
using storage::superseded;
using testing::ElementsAreArray;
using testing::IsEmpty;

constexpr std::int64_t kDay = 86'400'000'000;

Instant on(const char* day, int hour = 8) {
    return Instant::ofMicroseconds(Date::parse(day)->days() * kDay + hour * kDay / 24);
}

struct Case {
    const char* name;
    std::vector<BackupMark> backups;
    std::vector<KeepRule> rules;
    std::size_t justMade;
    std::vector<std::size_t> superseded;
};

const Case kCases[] = {
    {"the only one stays", {{on("2026-11-25"), "a"}}, {{KeptPeriod::State, 1}}, 0, {}},
    {"the newest states stay",
     {{on("2026-11-23"), "a"}, {on("2026-11-24"), "b"}, {on("2026-11-25"), "c"}},
     {{KeptPeriod::State, 2}},
     2,
     {0}},
    {"of one state the newest stays and counts once",
     {{on("2026-11-23"), "a"},
      {on("2026-11-24"), "b"},
      {on("2026-11-25", 8), "b"},
      {on("2026-11-25", 9), "b"}},
     {{KeptPeriod::State, 2}},
     3,
     {1, 2}},
    {"the newest of each month stays",
     {{on("2026-09-01"), "a"},
      {on("2026-09-30", 23), "b"},
      {on("2026-10-01", 0), "c"},
      {on("2026-10-31"), "d"},
      {on("2026-11-01"), "e"}},
     {{KeptPeriod::Month, 3}},
     4,
     {0, 2}},
    {"months without a backup do not count",
     {{on("2025-01-10"), "a"}, {on("2026-02-10"), "b"}, {on("2026-11-10"), "c"}},
     {{KeptPeriod::Month, 3}},
     2,
     {}},
    {"months beyond the number go",
     {{on("2025-01-10"), "a"}, {on("2026-02-10"), "b"}, {on("2026-11-10"), "c"}},
     {{KeptPeriod::Month, 2}},
     2,
     {0}},
    {"years are kept likewise",
     {{on("2024-12-31"), "a"}, {on("2025-06-01"), "b"}, {on("2025-12-31"), "c"}},
     {{KeptPeriod::Year, 2}},
     2,
     {1}},
    {"what one rule keeps no other removes",
     {{on("2026-01-10"), "a"}, {on("2026-02-10"), "b"}, {on("2026-02-11"), "c"}},
     {{KeptPeriod::State, 1}, {KeptPeriod::Month, 2}},
     2,
     {1}},
    {"the list may be in any order",
     {{on("2026-11-25"), "c"}, {on("2026-11-23"), "a"}, {on("2026-11-24"), "b"}},
     {{KeptPeriod::State, 2}},
     0,
     {1}},
    {"one made by a clock that went back stays while it is the newest made",
     {{on("2026-11-24"), "a"}, {on("2026-11-25"), "b"}, {on("1970-01-01"), "c"}},
     {{KeptPeriod::State, 2}},
     2,
     {}},
    {"a clock that ran ahead once makes no others old",
     {{on("2026-10-25"), "a"}, {on("2026-11-25"), "b"}, {on("2099-01-01"), "c"}},
     {{KeptPeriod::Month, 12}},
     2,
     {}},
    {"of the same moment the later in the list stays",
     {{on("2026-11-25"), "a"}, {on("2026-11-25"), "a"}},
     {{KeptPeriod::State, 1}},
     1,
     {0}},
    {"no rule keeps but what was just made",
     {{on("2026-11-24"), "a"}, {on("2026-11-25"), "b"}},
     {},
     1,
     {0}},
};

TEST(BackupKeeping, SupersedesWhatTheTableSays) {
    for (const Case& each : kCases) {
        SCOPED_TRACE(each.name);
        EXPECT_THAT(superseded(each.backups, each.justMade, each.rules),
                    ElementsAreArray(each.superseded));
    }
}

TEST(BackupKeeping, KeepsTenStatesAndTwelveMonthsUnlessToldOtherwise) {
    std::vector<BackupMark> daily;
    for (int day = 0; day < 800; ++day)
        daily.push_back({Instant::ofMicroseconds(on("2024-01-01").microseconds() + day * kDay),
                         "state " + std::to_string(day)});
    const auto gone = superseded(daily, daily.size() - 1);
    // 2026-03-10 is the 800th day: ten in March, and the last day of each of eleven months before.
    EXPECT_EQ(daily.back().made.day().text(), "2026-03-10");
    EXPECT_EQ(gone.size(), daily.size() - 10 - 11);
    // Thinned out again a day later, nothing of it is thinned out twice.
    std::vector<BackupMark> left;
    std::size_t next = 0;
    for (std::size_t at = 0; at < daily.size(); ++at)
        if (next < gone.size() && gone[next] == at)
            ++next;
        else
            left.push_back(daily[at]);
    EXPECT_THAT(superseded(left, left.size() - 1), IsEmpty());
}

}  // namespace
