#include "apps/actions/sessions.h"

#include "apps/actions/settings.h"
#include "storage/session_store.h"

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

/// The session of a person, and what keeps it from being used.
struct Looked {
    std::optional<KeptSession> session;
    std::string flaw;
    bool hasRested{};
};

Result<Looked> look(const Laboratory& laboratory, const Who& who) {
    const auto rested = restedBefore(laboratory);
    if (!rested) return rested.error();
    auto session = SessionStore{laboratory.records()}.find(storage::tokenDigest(who.token));
    if (!session) return session.error();
    Looked looked{*std::move(session), {}};
    looked.flaw = flawOf(looked.session, who, *rested);
    looked.hasRested = looked.session && looked.session->person == who.person &&
                       !looked.session->ended && looked.session->lastUsed < *rested;
    return looked;
}

}  // namespace

std::string whyNot(const Workshop& workshop, const Who& who, Permission permission) {
    const Person* person = workshop.worker(who.person);
    if (person == nullptr) return who.person.text() + " does not work here";
    if (!who.station.empty()) {
        const auto station = domain::ThingCode::parse(who.station);
        if (!station || !workshop.stations.contains(*station))
            return '"' + who.station + "\" is no station here: a manager enters stations";
    }
    if (!may(person->role, permission))
        return who.person.text() + " is " + wordsOf(person->role) + " here, and to " +
               wordsOf(permission) + " is for: " + rolesThatMay(permission);
    return {};
}

Result<std::string> useSession(const Laboratory& laboratory, storage::Transaction& transaction,
                               const Who& who) {
    auto looked = look(laboratory, who);
    if (!looked) return looked.error();
    if (!looked->flaw.empty()) return looked->flaw;
    const auto touched = SessionStore{laboratory.records()}.touch(
        transaction, storage::tokenDigest(who.token), laboratory.now());
    if (!touched) return touched.error();
    return std::string{};
}

Result<std::string> whyRefused(const Laboratory& laboratory, const Who& who,
                               Permission permission) {
    const auto workshop = laboratory.workshop();
    if (!workshop) return workshop.error();
    if ((*workshop)->people.empty()) return notSetUp();
    auto looked = look(laboratory, who);
    if (!looked) return looked.error();
    auto seen = *std::move(looked);
    return seen.flaw.empty() ? whyNot(**workshop, who, permission) : std::move(seen.flaw);
}

Result<Done> letLook(const Laboratory& laboratory, const Who& who) {
    const auto workshop = laboratory.workshop();
    if (!workshop) return workshop.error();
    if ((*workshop)->people.empty()) return notSetUp();
    const auto looked = look(laboratory, who);
    if (!looked) return looked.error();
    const std::string why =
        looked->flaw.empty() ? whyNot(**workshop, who, Permission::Look) : looked->flaw;
    if (!why.empty())
        return refuse(laboratory, who, codeOf(Permission::Look), {why, why, !looked->flaw.empty()});
    const std::int64_t rested =
        laboratory.now().microseconds() - looked->session->lastUsed.microseconds();
    if (rested < kMicrosecondsPerMinute) return Done{};
    return use(laboratory, who);
}

Result<Done> endIfRested(const Laboratory& laboratory, storage::Transaction& transaction,
                         const Who& who) {
    const auto looked = look(laboratory, who);
    if (!looked) return looked.error();
    if (!looked->hasRested) return Done{};
    return SessionStore{laboratory.records()}.end(transaction, storage::tokenDigest(who.token),
                                                  laboratory.now(), domain::SignOutReason::Rested);
}

Result<Person> authorise(const Laboratory& laboratory, const Who& who, Permission permission) {
    std::optional<Person> allowed;
    const auto asked =
        perform(laboratory, {who.person, {}, who.token, who.station},
                {permission, commandOf({"authorise"}), {}}, [&](UnitOfWork& unit) -> Result<Done> {
                    allowed = *unit.workshop().worker(who.person);
                    return Done{};
                });
    if (!asked) return asked.error();
    return *std::move(allowed);
}

Result<Done> use(const Laboratory& laboratory, const Who& who) {
    std::string flaw;
    const auto used = perform(laboratory, {.person = who.person}, {.command = commandOf({"use"})},
                              [&](UnitOfWork& unit) -> Result<Done> {
                                  auto found = useSession(laboratory, unit.transaction(), who);
                                  if (!found) return found.error();
                                  flaw = *std::move(found);
                                  return endIfRested(laboratory, unit.transaction(), who);
                              });
    if (!used) return used.error();
    if (!flaw.empty()) return Error{ErrorCode::Refused, flaw};
    return Done{};
}

Result<std::int64_t> lockIdle(const Laboratory& laboratory) {
    const auto rested = restedBefore(laboratory);
    if (!rested) return rested.error();
    std::int64_t count{};
    const auto locked =
        perform(laboratory, {.person = *domain::PersonCode::parse("nobody")},
                {.command = commandOf({"lock-idle"})}, [&](UnitOfWork& unit) -> Result<Done> {
                    const auto ended = SessionStore{laboratory.records()}.endIdle(
                        unit.transaction(), *rested, laboratory.now());
                    if (!ended) return ended.error();
                    count = *ended;
                    return Done{};
                });
    if (!locked) return locked.error();
    return count;
}

Result<int> idleMinutes(const Laboratory& laboratory) {
    const auto minutes = wholeSetting(laboratory, kIdleMinutes);
    if (!minutes) return minutes.error();
    return static_cast<int>(*minutes);
}

Result<Done> writeIdleMinutes(const Laboratory& laboratory, int minutes, const Who& who) {
    return writeSettings(laboratory, who, {{kIdleMinutes, std::to_string(minutes)}});
}

}  // namespace actions
