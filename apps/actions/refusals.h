/// Refusals of whoever is not signed in: anybody can go on with those for ever, so the access log
/// keeps the first of each hour and each station, and one entry that says there were more.
#pragma once

#include "apps/actions/unit_of_work.h"

namespace actions {

/// So many are recorded within an hour at one station (at none, and at any that was not entered,
/// together); common practice, no source.
inline constexpr std::int64_t kRefusalsAnHour = 20;

/// Whether this one is still recorded.
domain::Result<bool> countRefusal(const Laboratory& laboratory, UnitOfWork& unit,
                                  const std::string& station);
/// Begins to count anew where the hour of a station is over.
domain::Result<domain::Done> closeHour(const Laboratory& laboratory, UnitOfWork& unit,
                                       const std::string& station);

/// Whether the records use a code themselves, so that no person may have it and no attempt at it
/// counts.
bool isReserved(const domain::PersonCode& code);

}  // namespace actions
