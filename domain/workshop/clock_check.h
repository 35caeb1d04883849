/// Whether the clock of the machine can be believed, judged by the newest entry of the ledger.
///
/// The order of entries is that of the ledger, never that of their times. A step back of up to two
/// minutes is what keeping time by a network does to a clock: what is recorded then has the time of
/// the newest entry. A clock that is further behind, or ahead of the newest entry by more than the
/// laboratory ever pauses, was put wrong or lost its battery: that is marked in the ledger, and
/// nothing is purged until a manager has confirmed the date.
#pragma once

#include <optional>

#include "domain/base/codes.h"
#include "domain/base/date.h"

namespace domain {

enum class ClockFault : std::uint8_t { Behind, Ahead };
template <>
inline constexpr std::array<EnumCode<ClockFault>, 2> enumCodes<ClockFault>{{
    {ClockFault::Behind, "behind"},
    {ClockFault::Ahead, "ahead"},
}};

/// Two minutes, in microseconds: common practice, no source.
inline constexpr std::int64_t kToleratedStepBack = 120'000'000;

/// A clock that was found wrong, until the date is confirmed.
struct ClockDoubt {
    ClockFault fault{};
    Instant before{};  ///< time of the newest entry then
    Instant at{};      ///< what the clock said
    friend bool operator==(const ClockDoubt&, const ClockDoubt&) = default;
};

/// What is wrong with the clock; nullopt: nothing. `longestPause`: in days.
std::optional<ClockFault> clockFault(Instant newest, Instant now, std::int64_t longestPause);
/// The time an entry is given: now, but never before the newest entry.
inline Instant entryTime(Instant newest, Instant now) { return now < newest ? newest : now; }

/// In a sentence, with both times.
std::string spoken(const ClockDoubt& doubt);

}  // namespace domain
