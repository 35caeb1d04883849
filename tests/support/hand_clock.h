/// A clock that stands still until a test moves it.
#pragma once

#include "domain/base/clock.h"

namespace support {

class HandClock : public domain::Clock {
public:
    static constexpr std::int64_t kDay = 24 * 60;  ///< minutes

    domain::Instant now() const override { return now_; }
    /// Minutes may be negative: the clock is put back.
    void letPass(std::int64_t minutes, std::int64_t microseconds = 0) {
        now_ = domain::Instant::ofMicroseconds(now_.microseconds() + minutes * 60'000'000 +
                                               microseconds);
    }
    /// The first moment of a day.
    void goTo(domain::Date day) {
        now_ = domain::Instant::ofMicroseconds(day.days() * 86'400'000'000);
    }

private:
    domain::Instant now_{domain::Instant::ofMicroseconds(domain::Date::parse("2026-11-25")->days() *
                                                         86'400'000'000)};
};

}  // namespace support
