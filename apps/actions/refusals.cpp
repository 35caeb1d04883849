#include "apps/actions/refusals.h"

#include <algorithm>

#include "apps/actions/credential_check.h"
#include "apps/actions/laboratory_key.h"
#include "storage/credential_store.h"

namespace actions {
namespace {

using domain::Done;
using domain::Instant;
using domain::PersonCode;
using domain::Result;
using storage::CredentialStore;
using storage::KeptCredentials;

constexpr std::int64_t kMicrosecondsPerHour = 3'600'000'000;
/// What was tried at a station is counted where attempts are, under a code nobody can have: the
/// count as its failures, the end of the hour as the end of its lock.
constexpr std::string_view kPlacePrefix = "at.";
constexpr std::string_view kNobody = "nobody";

/// Stations that were not entered can be made up without end, so they count as none.
std::string placeOf(const UnitOfWork& unit, const std::string& station) {
    const auto code = domain::ThingCode::parse(station);
    return code && unit.workshop().stations.contains(*code) ? station : std::string{};
}

PersonCode countedAs(const std::string& place) {
    constexpr std::size_t kLongest = 24;
    std::string code{kPlacePrefix};
    code += place;
    if (code.size() > kLongest) code.resize(kLongest);
    return *PersonCode::parse(code);
}

bool isOver(const KeptCredentials& count, Instant now) {
    // An hour that ends later than in an hour was begun by a clock that was wrong.
    return count.lockedUntil &&
           (now >= *count.lockedUntil ||
            count.lockedUntil->microseconds() - now.microseconds() > kMicrosecondsPerHour);
}

/// Records that the rest of the hour is not recorded one by one.
Result<Done> tellRest(UnitOfWork& unit, const KeptCredentials& count, const std::string& place) {
    const std::string where = place.empty() ? "at no station" : "at " + place;
    return unit.note(domain::AccessDenied{
        std::string{kSignIn},
        "more " + where + ", not recorded one by one until " + count.lockedUntil->text()});
}

}  // namespace

Result<bool> countRefusal(const Laboratory& laboratory, UnitOfWork& unit,
                          const std::string& station) {
    if (auto closed = closeHour(laboratory, unit, station); !closed) return closed.error();
    const CredentialStore store{laboratory.records()};
    const std::string place = placeOf(unit, station);
    auto kept = store.of(countedAs(place));
    if (!kept) return kept.error();
    KeptCredentials count = *std::move(kept);
    if (count.failures > kRefusalsAnHour) return false;
    if (!count.lockedUntil)
        count.lockedUntil =
            Instant::ofMicroseconds(unit.at().microseconds() + kMicrosecondsPerHour);
    ++count.failures;
    if (auto put = store.put(unit.transaction(), count, unit.at()); !put) return put.error();
    if (count.failures <= kRefusalsAnHour) return true;
    if (auto told = tellRest(unit, count, place); !told) return told.error();
    return false;
}

Result<Done> closeHour(const Laboratory& laboratory, UnitOfWork& unit, const std::string& station) {
    const CredentialStore store{laboratory.records()};
    auto kept = store.of(countedAs(placeOf(unit, station)));
    if (!kept) return kept.error();
    if (!isOver(*kept, unit.at())) return Done{};
    KeptCredentials count = *std::move(kept);
    count.failures = 0;
    count.lockedUntil.reset();
    return store.put(unit.transaction(), count, unit.at());
}

bool isReserved(const PersonCode& code) {
    std::string text = code.text();
    std::ranges::transform(text, text.begin(), [](char letter) {
        return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
    });
    return text == kUnknownBadge || text == kNobody || text.starts_with(kPlacePrefix);
}

}  // namespace actions
