#include "apps/actions/refusals.h"

#include <algorithm>

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

/// Records how many were not recorded one by one.
Result<Done> tellRest(UnitOfWork& unit, const KeptCredentials& count, const std::string& place) {
    const std::int64_t more = count.failures - kRefusalsAnHour;
    if (more <= 0) return Done{};
    const std::string where = place.empty() ? "at no station" : "at " + place;
    return unit.record(
        {domain::SubjectKind::Access, std::string{kNobody}},
        domain::AccessRefused{"sign-in", "and " + std::to_string(more) + " more " + where +
                                             " in the hour to " + count.lockedUntil->text()});
}

}  // namespace

Result<bool> countRefusal(const Laboratory& laboratory, UnitOfWork& unit,
                          const std::string& station) {
    if (auto closed = closeHour(laboratory, unit, station); !closed) return closed.error();
    const CredentialStore store{laboratory.records()};
    auto kept = store.of(countedAs(placeOf(unit, station)));
    if (!kept) return kept.error();
    KeptCredentials count = *std::move(kept);
    if (!count.lockedUntil)
        count.lockedUntil =
            Instant::ofMicroseconds(unit.at().microseconds() + kMicrosecondsPerHour);
    ++count.failures;
    if (auto put = store.put(unit.transaction(), count); !put) return put.error();
    return count.failures <= kRefusalsAnHour;
}

Result<Done> closeHour(const Laboratory& laboratory, UnitOfWork& unit, const std::string& station) {
    const CredentialStore store{laboratory.records()};
    const std::string place = placeOf(unit, station);
    auto kept = store.of(countedAs(place));
    if (!kept) return kept.error();
    if (!isOver(*kept, unit.at())) return Done{};
    if (auto told = tellRest(unit, *kept, place); !told) return told;
    KeptCredentials count = *std::move(kept);
    count.failures = 0;
    count.lockedUntil.reset();
    return store.put(unit.transaction(), count);
}

bool isReserved(const PersonCode& code) {
    std::string text = code.text();
    std::ranges::transform(text, text.begin(), [](char letter) {
        return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
    });
    return text == kUnknownBadge || text == kNobody || text.starts_with(kPlacePrefix);
}

}  // namespace actions
