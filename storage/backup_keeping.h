/// Which backups of a folder stay and which are superseded. Pure: nothing is read or removed here.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "domain/base/date.h"

namespace storage {

/// What counts of a backup when it is asked whether it stays.
struct BackupMark {
    domain::Instant made{};
    std::string head{};  ///< of the ledger: two backups of one head hold the same events
};

enum class KeptPeriod : std::uint8_t { State, Month, Year };

/// Of the `count` most recent periods that have a backup, the newest of each stays. A period is a
/// state of the ledger, or a month or a year of the calendar (UTC). Periods without a backup do not
/// count, and the present day is not asked for: a clock that is wrong cannot make backups old.
struct KeepRule {
    KeptPeriod period{};
    std::size_t count{};
};

/// Common practice, no source.
inline constexpr KeepRule kUsualKeeping[] = {{KeptPeriod::State, 10}, {KeptPeriod::Month, 12}};

/// The places of those that no rule keeps, in ascending order; the one at `justMade` stays whatever
/// its time says.
std::vector<std::size_t> superseded(std::span<const BackupMark> backups, std::size_t justMade,
                                    std::span<const KeepRule> rules = kUsualKeeping);

}  // namespace storage
