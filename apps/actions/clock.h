/// The clock of the machine, looked at before anything is recorded; what is wrong with one is said
/// in domain/workshop/clock_check.h.
#pragma once

#include "apps/actions/laboratory.h"
#include "apps/actions/outcome.h"
#include "apps/actions/who.h"
#include "domain/workshop/workshop_event.h"

namespace actions {

/// What is wrong with the clock now, with both times; nullopt: nothing, or nothing is recorded yet.
domain::Result<std::optional<domain::ClockDoubt>> lookAtClock(const Laboratory& laboratory);

/// What was found wrong and not confirmed since.
domain::Result<std::optional<domain::ClockDoubt>> clockDoubt(const Laboratory& laboratory);
/// A manager confirms that today is this day; refused where nothing was marked, and where the
/// machine says another day.
domain::Result<Kept> confirmDate(const Laboratory& laboratory, domain::Date day, const Who& who);

/// Days the laboratory may pause before its clock is taken for wrong.
domain::Result<std::int64_t> longestPause(const Laboratory& laboratory);
/// 1 to 400; for who may keep the workshop.
domain::Result<domain::Done> writeLongestPause(const Laboratory& laboratory, std::int64_t days,
                                               const Who& who);

/// What is told, once, when it is marked.
std::string toldOf(const domain::ClockDoubt& doubt);
/// What the marks and confirmations are about.
domain::Subject clockSubject();

}  // namespace actions
