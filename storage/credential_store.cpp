#include "storage/credential_store.h"

#include "storage/access_log.h"
#include "storage/kept_digest.h"
#include "storage/statement.h"
#include "storage/stored_person.h"

namespace storage {
namespace {

using domain::Credential;
using domain::Done;
using domain::Result;

/// Anything but 0 and 1 is damage. Throws SqlFailure.
bool isSet(const Statement& row, std::string_view column) {
    const std::int64_t held = row.whole(column);
    if (held != 0 && held != 1)
        throw SqlFailure{"the credentials are damaged: " + std::string{column} + " holds " +
                         std::to_string(held) + "; verify the records"};
    return held == 1;
}

KeptCredentials read(const Statement& row) {
    KeptCredentials kept{.person = storedPerson(row),
                         .passwordHash = row.textIfAny("password_hash"),
                         .mustChange = isSet(row, "must_change"),
                         .failures = row.whole("failures")};
    if (auto digest = row.textIfAny("badge_digest"))
        kept.badge = KeptBadge{*std::move(digest), row.text("pin_hash")};
    if (const auto until = row.wholeIfAny("locked_until_us"))
        kept.lockedUntil = domain::Instant::ofMicroseconds(*until);
    return kept;
}

/// Says in the access log how many attempts failed, where that changes.
Result<Done> noteAttempts(Transaction& transaction, const KeptCredentials& before,
                          const KeptCredentials& after, domain::Instant at) {
    if (before.failures == after.failures && before.lockedUntil == after.lockedUntil) return Done{};
    domain::AttemptsCounted counted{.failures = after.failures};
    if (after.lockedUntil) counted.lockedUntil = after.lockedUntil->microseconds();
    return AccessLog{transaction.connection()}.append(
        transaction, {.at = at, .person = after.person, .what = counted});
}

}  // namespace

Result<KeptCredentials> CredentialStore::of(const domain::PersonCode& person) const try {
    Statement query{connection_, "credential_find"};
    query.bind("person", person.text()).run();
    return query.next() ? read(query) : KeptCredentials{.person = person};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::optional<KeptCredentials>> CredentialStore::withBadge(const std::string& digest) const
    try {
    Statement query{connection_, "credential_of_badge"};
    query.bind("badge_digest", digest).run();
    return query.next() ? std::optional{read(query)} : std::nullopt;
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::vector<KeptCredentials>> CredentialStore::all() const try {
    Statement query{connection_, "credential_all"};
    query.run();
    std::vector<KeptCredentials> all;
    while (query.next()) all.push_back(read(query));
    return all;
} catch (const SqlFailure& failure) {
    return failure.error();
}

std::optional<std::string> credentialDigest(const KeptCredentials& kept, Credential credential) {
    const std::string person = kept.person.text();
    switch (credential) {
        case Credential::Password:
            if (!kept.passwordHash) return {};
            return keptDigest(
                {"password", person, *kept.passwordHash, kept.mustChange ? "must change" : ""});
        case Credential::Badge:
            if (!kept.badge) return {};
            return keptDigest({"badge", person, kept.badge->digest, kept.badge->pinHash});
    }
    return {};
}

Result<Done> CredentialStore::put(Transaction& transaction, const KeptCredentials& kept,
                                  domain::Instant at) const try {
    if (kept == KeptCredentials{.person = kept.person}) return remove(transaction, kept.person, at);
    const auto before = of(kept.person);
    if (!before) return before.error();
    if (auto noted = noteAttempts(transaction, *before, kept, at); !noted) return noted;
    std::optional<std::string> badge;
    std::optional<std::string> pin;
    if (kept.badge) {
        badge = kept.badge->digest;
        pin = kept.badge->pinHash;
    }
    std::optional<std::int64_t> until;
    if (kept.lockedUntil) until = kept.lockedUntil->microseconds();
    Statement{transaction.connection(), "credential_put"}
        .bind({{"person", kept.person.text()},
               {"password_hash", orNull(kept.passwordHash)},
               {"must_change", std::int64_t{kept.mustChange ? 1 : 0}},
               {"badge_digest", orNull(badge)},
               {"pin_hash", orNull(pin)},
               {"failures", kept.failures},
               {"locked_until_us", orNull(until)}})
        .run();
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<Done> CredentialStore::remove(Transaction& transaction, const domain::PersonCode& person,
                                     domain::Instant at) const try {
    const auto before = of(person);
    if (!before) return before.error();
    if (auto noted = noteAttempts(transaction, *before, {.person = person}, at); !noted)
        return noted;
    Statement{transaction.connection(), "credential_remove"}.bind("person", person.text()).run();
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace storage
