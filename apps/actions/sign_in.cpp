#include "apps/actions/sign_in.h"

#include "apps/actions/credential_check.h"
#include "apps/actions/laboratory_key.h"
#include "apps/actions/refusals.h"
#include "storage/session_store.h"

namespace actions {
namespace {

using domain::Credential;
using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Result;
using domain::Workshop;

/// Whom a scan is recorded under that led to nobody. No person can be entered by this code.
domain::PersonCode unknownBadge() { return *domain::PersonCode::parse(kUnknownBadge); }

/// Refuses where nobody was entered, and at a station that was not.
Result<Done> checkPlace(const Laboratory& laboratory, const Attempt& attempt) {
    const auto known = laboratory.workshop();
    if (!known) return known.error();
    const Workshop* workshop = *known;
    if (workshop->people.empty()) return notSetUp();
    const bool atBench = attempt.credential == Credential::Badge;
    if (attempt.station.empty() && (!atBench || workshop->stations.empty())) return Done{};
    const auto station = domain::ThingCode::parse(attempt.station);
    if (station && workshop->stations.contains(*station)) return Done{};
    const std::string sentence =
        attempt.station.empty()
            ? std::string{"a badge is scanned at a station: say which, with --station"}
            : '"' + attempt.station + "\" is no station here: a manager enters stations";
    return refuse(laboratory, {.person = attempt.person}, kSignIn,
                  {sentence, "at no station of this laboratory", true});
}

Result<Session> openSession(const Laboratory& laboratory, const Attempt& attempt,
                            const Proved& proved) {
    const Session session{attempt.person, storage::newToken(), attempt.station};
    const auto opened = perform(
        laboratory, {.person = attempt.person}, {.command = commandOf({"sign-in"})},
        [&](UnitOfWork& unit) -> Result<Done> {
            if (auto settled = settle(laboratory, unit, proved); !settled) return settled;
            if (auto told = closeHour(laboratory, unit, session.station); !told) return told;
            const storage::SessionStore sessions{laboratory.records()};
            if (!session.station.empty())
                if (auto ended = sessions.endAllAt(unit.transaction(), session.station, unit.at());
                    !ended)
                    return ended;
            return sessions.open(unit.transaction(), storage::tokenDigest(session.token),
                                 {.person = session.person,
                                  .station = session.station,
                                  .opened = unit.at(),
                                  .lastUsed = unit.at()});
        });
    if (!opened) return opened.error();
    return session;
}

}  // namespace

Result<Session> signIn(const Laboratory& laboratory, const domain::PersonCode& person,
                       const Secret& password, const std::string& station) {
    const Attempt attempt{person, Credential::Password, person.text(), station};
    if (auto place = checkPlace(laboratory, attempt); !place) return place.error();
    const auto proved = prove(laboratory, attempt, password);
    if (!proved) return proved.error();
    if (proved->after.mustChange) return mustChange(laboratory, *proved);
    return openSession(laboratory, attempt, *proved);
}

Result<Session> signInAtBench(const Laboratory& laboratory, const Secret& badge, const Secret& pin,
                              const std::string& station) {
    Attempt attempt{unknownBadge(), Credential::Badge, "this badge", station};
    if (auto place = checkPlace(laboratory, attempt); !place) return place.error();
    const auto digest = digestOfBadge(laboratory, badge);
    if (!digest) return digest.error();
    const auto kept = storage::CredentialStore{laboratory.records()}.withBadge(*digest);
    if (!kept) return kept.error();
    if (!*kept) {
        if (const auto spent = storage::hashOf(pin, laboratory.hashCost()); !spent)
            return spent.error();
        return refuse(laboratory, {.person = attempt.person, .station = station}, kSignIn,
                      {"this badge is nobody's here: look whether it is the right one, or let a "
                       "manager give it (framewright badge CODE)",
                       "a badge of nobody here", true});
    }
    attempt = {(**kept).person, Credential::Badge, attempt.named, station};
    const auto proved = prove(laboratory, attempt, pin);
    if (!proved) return proved.error();
    // Between the scan and the PIN somebody else may have been given this badge.
    if (!proved->before.badge || proved->before.badge->digest != *digest)
        return Error{ErrorCode::Conflict, "this badge was changed just now; scan it again"};
    return openSession(laboratory, attempt, *proved);
}

Result<Done> signOut(const Laboratory& laboratory, const Who& who) {
    const auto out =
        perform(laboratory, {.person = who.person}, {.command = commandOf({"sign-out"})},
                [&](UnitOfWork& unit) -> Result<Done> {
                    const storage::SessionStore sessions{laboratory.records()};
                    const std::string digest = storage::tokenDigest(who.token);
                    const auto session = sessions.find(digest);
                    if (!session) return session.error();
                    if (!*session || (**session).person != who.person) return Done{};
                    return sessions.end(unit.transaction(), digest, unit.at());
                });
    if (!out) return out.error();
    return Done{};
}

}  // namespace actions
