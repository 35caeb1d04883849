/// Calendar days and instants. The current time is never asked for here: it comes in as a value.
#pragma once

#include <chrono>
#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace domain {

/// A day of the Gregorian calendar that exists: 2026-02-30 cannot be made.
class Date {
public:
    /// Reads exactly "YYYY-MM-DD" (ISO 8601), years 1900 to 2199.
    static std::optional<Date> parse(std::string_view text) noexcept;
    static Date ofDays(std::int64_t sinceEpoch) noexcept;

    std::string text() const;
    /// Days since 1970-01-01.
    std::int64_t days() const noexcept { return days_; }
    /// Monday to Friday; holidays are for a calendar to know.
    bool isWeekday() const noexcept;
    Date plusDays(std::int64_t count) const noexcept { return Date{days_ + count}; }
    /// The same day of a later year; 1 March where 29 February is asked of a year without one, so
    /// that a term of years never ends early.
    Date plusYears(int count) const noexcept;

    friend constexpr auto operator<=>(Date, Date) = default;

private:
    explicit constexpr Date(std::int64_t days) noexcept : days_{days} {}
    std::int64_t days_;
};

/// A moment in UTC, in whole microseconds since 1970-01-01T00:00:00Z.
class Instant {
public:
    constexpr Instant() = default;
    static constexpr Instant ofMicroseconds(std::int64_t count) noexcept { return Instant{count}; }
    constexpr std::int64_t microseconds() const noexcept { return count_; }

    /// The UTC day it falls on.
    Date day() const noexcept;
    /// "2026-11-25 08:14 UTC"
    std::string text() const;

    friend constexpr auto operator<=>(Instant, Instant) = default;

private:
    explicit constexpr Instant(std::int64_t count) noexcept : count_{count} {}
    std::int64_t count_{0};
};

}  // namespace domain
