/// Who is signed in, where, and since when. A token is kept only as its digest.
#pragma once

#include <map>
#include <optional>
#include <string>

#include "domain/base/date.h"
#include "domain/base/id.h"
#include "domain/workshop/access_entry.h"
#include "storage/transaction.h"

namespace storage {

struct KeptSession {
    domain::PersonCode person;
    std::string station{};  ///< empty: at no station
    domain::Instant opened{};
    domain::Instant lastUsed{};
    std::optional<domain::Instant> ended{};
    friend bool operator==(const KeptSession&, const KeptSession&) = default;
};

/// When a session was last used, under the laboratory's key, so that nobody without it makes one
/// that rested too long look fresh.
std::string lastUsedSeal(const std::string& key, const std::string& tokenDigest,
                         domain::Instant lastUsed);

/// Sessions are ended, never removed: they say who was here when. What opens and ends them writes
/// it into the access log.
class SessionStore {
public:
    explicit SessionStore(Connection& connection) : connection_{connection} {}

    /// `session.ended` is not written.
    domain::Result<domain::Done> open(Transaction& transaction, const std::string& tokenDigest,
                                      const KeptSession& session) const;
    domain::Result<std::optional<KeptSession>> find(const std::string& tokenDigest) const;
    /// Never back in time.
    domain::Result<domain::Done> touch(Transaction& transaction, const std::string& tokenDigest,
                                       domain::Instant at) const;
    domain::Result<domain::Done> end(
        Transaction& transaction, const std::string& tokenDigest, domain::Instant at,
        domain::SignOutReason why = domain::SignOutReason::Asked) const;
    domain::Result<domain::Done> endAllOf(Transaction& transaction,
                                          const domain::PersonCode& person,
                                          domain::Instant at) const;
    domain::Result<domain::Done> endAllAt(Transaction& transaction, const std::string& station,
                                          domain::Instant at) const;
    /// How many sessions ended that were last used before `usedBefore`.
    domain::Result<std::int64_t> endIdle(Transaction& transaction, domain::Instant usedBefore,
                                         domain::Instant at) const;
    /// When each person's sessions were last used.
    domain::Result<std::map<domain::PersonCode, domain::Instant>> lastUsed() const;

private:
    Connection& connection_;
};

}  // namespace storage
