#include "apps/actions/credential_change.h"

#include "storage/session_store.h"

namespace actions {
namespace {

using domain::Done;
using domain::Result;
using storage::KeptCredentials;

/// What the ledger is told of a credential that changed; `kept`: what is kept now.
domain::WorkshopHappening committed(const KeptCredentials& kept, domain::Credential credential,
                                    std::optional<domain::GivenBy> by) {
    auto digest = storage::credentialDigest(kept, credential);
    if (!digest) return domain::CredentialTaken{credential};
    return domain::CredentialGiven{credential, std::move(digest), by};
}

}  // namespace

Result<Done> checkPassword(const Secret& password) {
    const std::size_t characters = password.characters();
    if (characters >= kFewestPasswordCharacters && characters <= kMostPasswordCharacters)
        return Done{};
    return domain::Error{domain::ErrorCode::Unusable,
                         "a password of " + std::to_string(kFewestPasswordCharacters) + " to " +
                             std::to_string(kMostPasswordCharacters) +
                             " characters was expected; several words make a good one"};
}

Result<Done> changeCredential(const Laboratory& laboratory, UnitOfWork& work,
                              const domain::PersonCode& person, domain::Credential what,
                              const CredentialChange& change, std::optional<domain::GivenBy> by) {
    const storage::CredentialStore store{laboratory.records()};
    auto kept = store.of(person);
    if (!kept) return kept.error();
    KeptCredentials next = *std::move(kept);
    if (Result<Done> changed = change(next); !changed) return changed;
    const domain::Subject subject{domain::SubjectKind::Person, person.text()};
    if (auto done = work.record(subject, committed(next, what, by)); !done) return done;
    if (auto put = store.put(work.transaction(), next, work.at()); !put) return put;
    return storage::SessionStore{laboratory.records()}.endAllOf(work.transaction(), person,
                                                                work.at());
}

}  // namespace actions
