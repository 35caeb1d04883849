#include "domain/base/date.h"

#include <cstdio>

namespace domain {
namespace {

constexpr std::int64_t kMicrosecondsPerDay = 86'400'000'000;

std::optional<int> number(std::string_view digits) {
    int value = 0;
    for (const char c : digits) {
        if (c < '0' || c > '9') return {};
        value = value * 10 + (c - '0');
    }
    return value;
}

std::int64_t floorDays(std::int64_t microseconds) {
    const std::int64_t days = microseconds / kMicrosecondsPerDay;
    return microseconds % kMicrosecondsPerDay < 0 ? days - 1 : days;
}

}  // namespace

std::optional<Date> Date::parse(std::string_view text) noexcept {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return {};
    const auto year = number(text.substr(0, 4));
    const auto month = number(text.substr(5, 2));
    const auto day = number(text.substr(8, 2));
    if (!year || !month || !day || *year < 1900 || *year > 2199) return {};
    const std::chrono::year_month_day ymd{std::chrono::year{*year},
                                          std::chrono::month{static_cast<unsigned>(*month)},
                                          std::chrono::day{static_cast<unsigned>(*day)}};
    if (!ymd.ok()) return {};
    return Date{std::chrono::sys_days{ymd}.time_since_epoch().count()};
}

bool Date::isWeekday() const noexcept {
    constexpr std::int64_t kThursday = 3;  // 1970-01-01 was one; Monday counts as 0
    return ((days_ + kThursday) % 7 + 7) % 7 < 5;
}

Date Date::plusYears(int count) const noexcept {
    using namespace std::chrono;
    const year_month_day from{sys_days{std::chrono::days{static_cast<int>(days_)}}};
    const year_month_day to = from + years{count};
    // Of a day beyond the month's end, sys_days makes the first days of the next month.
    return Date{sys_days{to}.time_since_epoch().count()};
}

Date Date::ofDays(std::int64_t sinceEpoch) noexcept { return Date{sinceEpoch}; }

std::string Date::text() const {
    const std::chrono::year_month_day ymd{
        std::chrono::sys_days{std::chrono::days{static_cast<int>(days_)}}};
    char written[16];
    std::snprintf(written, sizeof written, "%04d-%02u-%02u", static_cast<int>(ymd.year()),
                  static_cast<unsigned>(ymd.month()), static_cast<unsigned>(ymd.day()));
    return written;
}

Date Instant::day() const noexcept { return Date::ofDays(floorDays(count_)); }

std::string Instant::text() const {
    const std::int64_t minutes =
        (count_ - floorDays(count_) * kMicrosecondsPerDay) / std::int64_t{60'000'000};
    char written[16];
    std::snprintf(written, sizeof written, "%02d:%02d UTC", static_cast<int>(minutes / 60),
                  static_cast<int>(minutes % 60));
    return day().text() + ' ' + written;
}

}  // namespace domain
