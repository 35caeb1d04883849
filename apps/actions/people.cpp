#include "apps/actions/people.h"

#include <algorithm>

#include "apps/actions/checkpoints.h"
#include "apps/actions/credential_change.h"
#include "apps/actions/credential_check.h"
#include "apps/actions/laboratory_key.h"
#include "apps/actions/recovery.h"
#include "apps/actions/refusals.h"
#include "storage/session_store.h"

namespace actions {
namespace {

using domain::Credential;
using domain::CredentialTaken;
using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Permission;
using domain::PersonCode;
using domain::Result;
using domain::Subject;
using storage::CredentialStore;
using storage::KeptBadge;
using storage::KeptCredentials;
using storage::SessionStore;

Subject subject(const PersonCode& person) { return {domain::SubjectKind::Person, person.text()}; }

Error unusable(std::string why) { return {ErrorCode::Unusable, std::move(why)}; }

/// "12 to 256"
std::string between(std::size_t fewest, std::size_t most) {
    return std::to_string(fewest) + " to " + std::to_string(most);
}

bool isWithin(std::size_t count, std::size_t fewest, std::size_t most) {
    return count >= fewest && count <= most;
}

Result<Done> checkBadge(const Secret& badge, const Secret& pin) {
    constexpr char kFirstPrinted = '!';
    constexpr char kLastPrinted = '~';
    const auto isPrinted = [](char letter) {
        return letter >= kFirstPrinted && letter <= kLastPrinted;
    };
    const auto isDigit = [](char letter) { return letter >= '0' && letter <= '9'; };
    if (!isWithin(badge.text().size(), kFewestBadgeCharacters, kMostBadgeCharacters) ||
        !std::ranges::all_of(badge.text(), isPrinted))
        return unusable("a badge code of " + between(kFewestBadgeCharacters, kMostBadgeCharacters) +
                        " letters, digits and signs without spaces was expected");
    if (!isWithin(pin.text().size(), kFewestPinDigits, kMostPinDigits) ||
        !std::ranges::all_of(pin.text(), isDigit))
        return unusable("a PIN of " + between(kFewestPinDigits, kMostPinDigits) +
                        " digits was expected");
    return Done{};
}

std::string lowered(const PersonCode& code) {
    std::string text = code.text();
    std::ranges::transform(text, text.begin(), [](char letter) {
        return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
    });
    return text;
}

/// Two people must not be told apart by capitals alone, and none be taken for an unknown badge.
Result<Done> checkCode(const domain::Workshop& workshop, const PersonCode& person) {
    if (isReserved(person))
        return Error{ErrorCode::Refused,
                     "the records use \"" + person.text() + "\" themselves; choose another code"};
    for (const auto& [code, known] : workshop.people)
        if (code != person && lowered(code) == lowered(person))
            return Error{ErrorCode::Refused, "\"" + person.text() + "\" would be taken for " +
                                                 code.text() + "; choose another code"};
    return Done{};
}

Result<Done> doneOf(const Result<Kept>& kept) {
    if (!kept) return kept.error();
    return Done{};
}

/// Somebody who may keep people does one thing to one person.
template <typename Body>
Result<Done> keepPeople(const Laboratory& laboratory, const Who& who, const std::string& command,
                        const Body& body) {
    return doneOf(perform(laboratory, who, {Permission::KeepPeople, command, {}}, body));
}
/// Likewise what decides who may do what: with the password given once more.
template <typename Body>
Result<Kept> decidePeople(const Laboratory& laboratory, const Who& who, const std::string& command,
                          const Body& body) {
    return perform(laboratory, who, {Permission::KeepPeople, command, {}, true}, body);
}

}  // namespace

Result<Secret> setUp(const Laboratory& laboratory, const PersonCode& person,
                     const std::vector<domain::Skill>& skills, const Secret& password) {
    if (auto fit = checkPassword(password); !fit) return fit.error();
    auto hash = storage::hashOf(password, laboratory.hashCost());
    if (!hash) return hash.error();
    const auto recovery = newRecoveryCode(laboratory);
    if (!recovery) return recovery.error();
    const auto kept =
        perform(laboratory, {.person = person}, {.command = commandOf({"set-up"})},
                [&](UnitOfWork& work) -> Result<Done> {
                    if (!work.workshop().people.empty())
                        return Error{ErrorCode::Refused,
                                     "this laboratory is set up already; a manager enters people: "
                                     "framewright people CODE --role ROLE"};
                    if (auto fit = checkCode(work.workshop(), person); !fit) return fit;
                    const domain::PersonEntered manager{domain::Role::Manager, skills};
                    if (auto done = work.record(subject(person), manager); !done) return done;
                    for (const auto make : {&makeLaboratoryKey, &makeSigningKey})
                        if (auto made = make(laboratory, work); !made) return made;
                    if (auto done = keepRecoveryCode(laboratory, work, *recovery); !done)
                        return done;
                    return changeCredential(laboratory, work, person, Credential::Password,
                                            [&](KeptCredentials& first) -> Result<Done> {
                                                first.passwordHash = *hash;
                                                return Done{};
                                            });
                });
    if (!kept) return kept.error();
    return recovery->code;
}

Result<Done> enterPerson(const Laboratory& laboratory, const PersonCode& person, domain::Role role,
                         const std::vector<domain::Skill>& skills, const Who& who) {
    std::string command = commandOf({"person", person.text(), std::string{codeOf(role)}});
    for (const domain::Skill skill : skills) command += commandOf({std::string{codeOf(skill)}});
    return doneOf(decidePeople(laboratory, who, command, [&](UnitOfWork& work) -> Result<Done> {
        if (auto fit = checkCode(work.workshop(), person); !fit) return fit;
        return work.record(subject(person), domain::PersonEntered{role, skills});
    }));
}

Result<Done> personLeaves(const Laboratory& laboratory, const PersonCode& person, const Who& who) {
    const std::string command = commandOf({"person-leaves", person.text()});
    return doneOf(decidePeople(laboratory, who, command, [&](UnitOfWork& work) -> Result<Done> {
        const CredentialStore store{laboratory.records()};
        const auto kept = store.of(person);
        if (!kept) return kept.error();
        if (kept->passwordHash)
            if (auto done = work.record(subject(person), CredentialTaken{Credential::Password});
                !done)
                return done;
        if (kept->badge)
            if (auto done = work.record(subject(person), CredentialTaken{Credential::Badge}); !done)
                return done;
        if (auto done = work.record(subject(person), domain::PersonLeft{}); !done) return done;
        if (auto done = store.remove(work.transaction(), person, work.at()); !done) return done;
        return SessionStore{laboratory.records()}.endAllOf(work.transaction(), person, work.at());
    }));
}

Result<Done> givePassword(const Laboratory& laboratory, const PersonCode& person,
                          const Secret& current, const Secret& fresh) {
    if (auto fit = checkPassword(fresh); !fit) return fit;
    if (current.text() == fresh.text())
        return unusable("another password than the present one was expected");
    auto proved = prove(laboratory, {person, Credential::Password, person.text()}, current);
    if (!proved) return proved.error();
    auto hash = storage::hashOf(fresh, laboratory.hashCost());
    if (!hash) return hash.error();
    return doneOf(perform(laboratory, {.person = person}, {.command = commandOf({"password"})},
                          [&](UnitOfWork& work) -> Result<Done> {
                              if (auto done = settle(laboratory, work, *proved); !done) return done;
                              return changeCredential(laboratory, work, person,
                                                      Credential::Password,
                                                      [&](KeptCredentials& kept) -> Result<Done> {
                                                          kept.passwordHash = *hash;
                                                          kept.mustChange = false;
                                                          return Done{};
                                                      });
                          }));
}

Result<Secret> resetPassword(const Laboratory& laboratory, const PersonCode& person,
                             const Who& who) {
    // One that works once would take the place of their own, and they know that one.
    if (person == who.person)
        return Error{ErrorCode::Refused,
                     "another person was expected; change your own with: framewright password " +
                         person.text()};
    const Secret secret = storage::newOneTimeSecret();
    const auto hash = storage::hashOf(secret, laboratory.hashCost());
    if (!hash) return hash.error();
    const std::string command = commandOf({"reset-password", person.text()});
    const auto reset =
        decidePeople(laboratory, who, command, [&](UnitOfWork& work) -> Result<Done> {
            return changeCredential(laboratory, work, person, Credential::Password,
                                    [&](KeptCredentials& kept) -> Result<Done> {
                                        kept.passwordHash = *hash;
                                        kept.mustChange = true;
                                        kept.failures = 0;
                                        kept.lockedUntil.reset();
                                        return Done{};
                                    });
        });
    if (!reset) return reset.error();
    if (reset->repeated)
        return Error{ErrorCode::Refused, "this was done before, " + reset->before->text() +
                                             ": the password was told then; take another key for "
                                             "a new one"};
    return secret;
}

Result<Done> giveBadge(const Laboratory& laboratory, const PersonCode& person, const Secret& badge,
                       const Secret& pin, const Who& who) {
    if (auto fit = checkBadge(badge, pin); !fit) return fit;
    const auto pinHash = storage::hashOf(pin, laboratory.hashCost());
    if (!pinHash) return pinHash.error();
    const auto digest = digestOfBadge(laboratory, badge);
    if (!digest) return digest.error();
    const std::string command = commandOf({"badge", person.text(), *digest});
    return keepPeople(laboratory, who, command, [&](UnitOfWork& work) -> Result<Done> {
        const auto owner = CredentialStore{laboratory.records()}.withBadge(*digest);
        if (!owner) return owner.error();
        if (*owner && (**owner).person != person)
            return Error{ErrorCode::Refused, "this badge is the badge of " +
                                                 (**owner).person.text() +
                                                 "; take another, or revoke that one first"};
        return changeCredential(laboratory, work, person, Credential::Badge,
                                [&](KeptCredentials& kept) -> Result<Done> {
                                    kept.badge = KeptBadge{*digest, *pinHash};
                                    return Done{};
                                });
    });
}

Result<Done> revokeBadge(const Laboratory& laboratory, const PersonCode& person, const Who& who) {
    const std::string command = commandOf({"revoke-badge", person.text()});
    return keepPeople(laboratory, who, command, [&](UnitOfWork& work) -> Result<Done> {
        return changeCredential(laboratory, work, person, Credential::Badge,
                                [&](KeptCredentials& kept) -> Result<Done> {
                                    if (!kept.badge && work.workshop().worker(person) != nullptr)
                                        return Error{ErrorCode::Refused,
                                                     person.text() + " has no badge"};
                                    kept.badge.reset();
                                    return Done{};
                                });
    });
}

Result<std::vector<PersonLine>> people(const Laboratory& laboratory) {
    const auto workshop = laboratory.workshop();
    if (!workshop) return workshop.error();
    const auto lastHere = SessionStore{laboratory.records()}.lastUsed();
    if (!lastHere) return lastHere.error();
    std::vector<PersonLine> lines;
    for (const auto& [code, person] : (*workshop)->people) {
        const auto kept = CredentialStore{laboratory.records()}.of(code);
        if (!kept) return kept.error();
        PersonLine line{.code = code,
                        .person = person,
                        .hasPassword = kept->passwordHash.has_value(),
                        .mustChange = kept->mustChange,
                        .hasBadge = kept->badge.has_value()};
        if (kept->lockedUntil > laboratory.now()) line.lockedUntil = kept->lockedUntil;
        if (const auto found = lastHere->find(code); found != lastHere->end())
            line.lastHere = found->second;
        lines.push_back(std::move(line));
    }
    return lines;
}

}  // namespace actions
