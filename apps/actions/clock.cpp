#include "apps/actions/clock.h"

#include "apps/actions/settings.h"
#include "apps/actions/unit_of_work.h"
#include "storage/ledger.h"

namespace actions {

using domain::ClockDoubt;
using domain::Done;
using domain::Result;

domain::Subject clockSubject() { return {domain::SubjectKind::Clock, "machine"}; }

Result<std::optional<ClockDoubt>> lookAtClock(const Laboratory& laboratory) {
    using Found = std::optional<ClockDoubt>;
    const auto newest = storage::Ledger{laboratory.records()}.newestAt();
    if (!newest) return newest.error();
    const domain::Instant now = laboratory.now();
    // The setting is read only where the shortest pause there may be has passed.
    if (!*newest || !clockFault(**newest, now, kLongestPause.least)) return Found{};
    const auto pause = longestPause(laboratory);
    if (!pause) return pause.error();
    const auto fault = clockFault(**newest, now, *pause);
    if (!fault) return Found{};
    return Found{ClockDoubt{*fault, **newest, now}};
}

Result<std::optional<ClockDoubt>> clockDoubt(const Laboratory& laboratory) {
    const auto workshop = laboratory.workshop();
    if (!workshop) return workshop.error();
    return (*workshop)->clockDoubt;
}

Result<Kept> confirmDate(const Laboratory& laboratory, domain::Date day, const Who& who) {
    return perform(laboratory, who,
                   {domain::Permission::KeepWorkshop, commandOf({"confirm-date", day.text()}), {}},
                   [&](UnitOfWork& unit) -> Result<Done> {
                       return unit.record(clockSubject(), domain::DateConfirmed{day});
                   });
}

Result<std::int64_t> longestPause(const Laboratory& laboratory) {
    return wholeSetting(laboratory, kLongestPause);
}

Result<Done> writeLongestPause(const Laboratory& laboratory, std::int64_t days, const Who& who) {
    return writeSettings(laboratory, who, {{kLongestPause, std::to_string(days)}});
}

std::string toldOf(const ClockDoubt& doubt) {
    return spoken(doubt) +
           "; this is recorded, and nothing is purged before a manager confirms the date: "
           "framewright clock " +
           doubt.at.day().text();
}

}  // namespace actions
