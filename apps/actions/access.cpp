#include "apps/actions/access.h"

#include <charconv>

#include "apps/actions/proof.h"
#include "storage/session_store.h"
#include "storage/settings_store.h"
#include "storage/workshop_store.h"

namespace actions {
namespace {

using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Instant;
using domain::Permission;
using domain::Person;
using domain::Result;
using domain::Workshop;
using storage::KeptSession;
using storage::SessionStore;
using storage::Transaction;

constexpr std::string_view kIdleSetting = "access.idle-minutes";
constexpr std::int64_t kMicrosecondsPerMinute = 60'000'000;

/// Sessions last used before this have rested too long.
Result<Instant> restedBefore(const Laboratory& laboratory) {
    const auto minutes = idleMinutes(laboratory);
    if (!minutes) return minutes.error();
    return Instant::ofMicroseconds(laboratory.now().microseconds() -
                                   *minutes * kMicrosecondsPerMinute);
}

/// What keeps a session from being used, in a sentence; empty when nothing does.
std::string flawOf(const std::optional<KeptSession>& session, const Who& who, Instant rested) {
    const std::string again = "sign in again: framewright sign-in " + who.person.text();
    if (who.token.empty())
        return who.person.text() + " is not signed in: framewright sign-in " + who.person.text();
    if (!session || session->person != who.person)
        return "this is no session of " + who.person.text() + "; " + again;
    if (session->ended)
        return "the session of " + who.person.text() + " ended " + session->ended->text() + "; " +
               again;
    if (session->lastUsed < rested)
        return who.person.text() + " was signed out: nothing was done since " +
               session->lastUsed.text() + "; " + again;
    if (!who.station.empty() && !session->station.empty() && who.station != session->station)
        return who.person.text() + " is signed in at " + session->station + ", not at " +
               who.station;
    return {};
}

/// What keeps a person from a command, in a sentence; empty when nothing does.
std::string flawOf(const Workshop& workshop, const Who& who, Permission permission) {
    const Person* person = workshop.worker(who.person);
    if (person == nullptr) return who.person.text() + " does not work here";
    if (!who.station.empty() && !workshop.stations.empty()) {
        const auto station = domain::ThingCode::parse(who.station);
        if (!station || !workshop.stations.contains(*station))
            return '"' + who.station + "\" is no station here: a manager enters stations";
    }
    if (!may(person->role, permission))
        return who.person.text() + " is " + wordsOf(person->role) + " here, and to " +
               wordsOf(permission) + " is for: " + rolesThatMay(permission);
    return {};
}

/// Marks a session used; one that rested too long is ended instead, and the sentence says so.
Result<std::string> useSession(const Laboratory& laboratory, const Who& who) {
    const auto rested = restedBefore(laboratory);
    if (!rested) return rested.error();
    auto begun = Transaction::begin(laboratory.records());
    if (!begun) return begun.error();
    Transaction work = *std::move(begun);
    const SessionStore sessions{laboratory.records()};
    const std::string digest = storage::tokenDigest(who.token);
    const auto session = sessions.find(digest);
    if (!session) return session.error();
    std::string flaw = flawOf(*session, who, *rested);
    if (!*session || (**session).person != who.person || (**session).ended) return flaw;
    const Instant now = laboratory.now();
    const bool over = (**session).lastUsed < *rested;
    if (auto done = over ? sessions.end(work, digest, now) : sessions.touch(work, digest, now);
        !done)
        return done.error();
    if (auto committed = work.commit(); !committed) return committed.error();
    return flaw;
}

}  // namespace

Result<Person> authorise(const Laboratory& laboratory, const Who& who, Permission permission) {
    const auto workshop = storage::loadWorkshop(laboratory.records());
    if (!workshop) return workshop.error();
    if (workshop->people.empty()) return notSetUp();
    auto flaw = useSession(laboratory, who);
    if (!flaw) return flaw.error();
    std::string why = *std::move(flaw);
    if (why.empty()) why = flawOf(*workshop, who, permission);
    if (!why.empty()) return refuse(laboratory, who, codeOf(permission), {why, why});
    return *workshop->worker(who.person);
}

Result<Done> use(const Laboratory& laboratory, const Who& who) {
    auto flaw = useSession(laboratory, who);
    if (!flaw) return flaw.error();
    if (!flaw->empty()) return Error{ErrorCode::Refused, *std::move(flaw)};
    return Done{};
}

Result<std::int64_t> lockIdle(const Laboratory& laboratory) {
    const auto rested = restedBefore(laboratory);
    if (!rested) return rested.error();
    auto begun = Transaction::begin(laboratory.records());
    if (!begun) return begun.error();
    Transaction work = *std::move(begun);
    const auto ended = SessionStore{laboratory.records()}.endIdle(work, *rested, laboratory.now());
    if (!ended) return ended.error();
    if (auto committed = work.commit(); !committed) return committed.error();
    return *ended;
}

Result<int> idleMinutes(const Laboratory& laboratory) {
    const auto text = storage::SettingsStore{laboratory.records()}.find(kIdleSetting);
    if (!text) return text.error();
    if (!*text) return kUsualIdleMinutes;
    int minutes{};
    const char* end = (*text)->data() + (*text)->size();
    const auto read = std::from_chars((*text)->data(), end, minutes);
    if (read.ec != std::errc{} || read.ptr != end || minutes < 1 || minutes > kMostIdleMinutes)
        return Error{
            ErrorCode::Unavailable,
            "the records are damaged: " + std::string{kIdleSetting} + " is \"" + **text + '"'};
    return minutes;
}

Result<Done> writeIdleMinutes(const Laboratory& laboratory, int minutes, const Who& who) {
    if (minutes < 1 || minutes > kMostIdleMinutes)
        return Error{ErrorCode::Unusable, "1 to " + std::to_string(kMostIdleMinutes) +
                                              " minutes were expected, not " +
                                              std::to_string(minutes)};
    if (const auto allowed = authorise(laboratory, who, Permission::KeepWorkshop); !allowed)
        return allowed.error();
    auto begun = Transaction::begin(laboratory.records());
    if (!begun) return begun.error();
    Transaction work = *std::move(begun);
    auto put = storage::SettingsStore{laboratory.records()}.put(work, kIdleSetting,
                                                                std::to_string(minutes));
    if (!put) return put;
    return work.commit();
}

}  // namespace actions
