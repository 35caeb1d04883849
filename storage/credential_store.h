/// What people prove who they are with, kept outside the ledger and only as hashes.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "domain/base/date.h"
#include "domain/base/id.h"
#include "domain/workshop/kept_beside.h"
#include "storage/transaction.h"

namespace storage {

/// A badge and the PIN that goes with it; neither is worth anything without the other.
struct KeptBadge {
    std::string digest{};   ///< badgeDigest()
    std::string pinHash{};  ///< hashOf()
    friend bool operator==(const KeptBadge&, const KeptBadge&) = default;
};

/// One row for each code that was ever tried, whether a person has it or not, so that failures
/// count alike.
struct KeptCredentials {
    domain::PersonCode person;
    std::optional<std::string> passwordHash{};  ///< hashOf()
    bool mustChange{};                          ///< the password was given by somebody else
    std::optional<KeptBadge> badge{};
    std::int64_t failures{};  ///< since the last success
    std::optional<domain::Instant> lockedUntil{};
    friend bool operator==(const KeptCredentials&, const KeptCredentials&) = default;
};

/// What the ledger says of a password with whether it must be changed, or of a badge with its PIN:
/// a digest over their salted hashes, 64 hexadecimal digits; nullopt where there is none.
std::optional<std::string> credentialDigest(const KeptCredentials& kept,
                                            domain::Credential credential);

class CredentialStore {
public:
    explicit CredentialStore(Connection& connection) : connection_{connection} {}

    /// Nothing but the code where nothing is kept.
    domain::Result<KeptCredentials> of(const domain::PersonCode& person) const;
    domain::Result<std::optional<KeptCredentials>> withBadge(const std::string& digest) const;
    domain::Result<std::vector<KeptCredentials>> all() const;
    /// What holds nothing is removed. Where failures or the lock change, the access log says so.
    /// ErrorCode::Unavailable when the badge is somebody else's.
    domain::Result<domain::Done> put(Transaction& transaction, const KeptCredentials& kept,
                                     domain::Instant at) const;
    domain::Result<domain::Done> remove(Transaction& transaction, const domain::PersonCode& person,
                                        domain::Instant at) const;

private:
    Connection& connection_;
};

}  // namespace storage
