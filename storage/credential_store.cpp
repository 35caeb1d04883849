#include "storage/credential_store.h"

#include "storage/statement.h"
#include "storage/stored_person.h"

namespace storage {
namespace {

using domain::Done;
using domain::Result;

KeptCredentials read(const Statement& row) {
    KeptCredentials kept{.person = storedPerson(row),
                         .passwordHash = row.textIfAny("password_hash"),
                         .mustChange = row.whole("must_change") != 0,
                         .failures = row.whole("failures")};
    if (auto digest = row.textIfAny("badge_digest"))
        kept.badge = KeptBadge{*std::move(digest), row.text("pin_hash")};
    if (const auto until = row.wholeIfAny("locked_until_us"))
        kept.lockedUntil = domain::Instant::ofMicroseconds(*until);
    return kept;
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

Result<Done> CredentialStore::put(Transaction& transaction, const KeptCredentials& kept) const try {
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

Result<Done> CredentialStore::remove(Transaction& transaction,
                                     const domain::PersonCode& person) const try {
    Statement{transaction.connection(), "credential_remove"}.bind("person", person.text()).run();
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace storage
