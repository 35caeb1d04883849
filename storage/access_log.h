/// The access log: what domain::AccessEntry holds, in order, never changed, chained as the ledger
/// is.
///
/// An entry is a piece with the number of its format, 1, then a part as in tagged_record.h with at
/// (microseconds), person, station if any, and what happened. The hash of an entry is SHA-256 of a
/// byte 4, the hash before it, and its bytes; the first follows 32 zero bytes. A head outside the
/// table keeps the count and the newest hash.
#pragma once

#include <QByteArray>
#include <functional>
#include <optional>
#include <string>

#include "domain/workshop/access_entry.h"
#include "storage/transaction.h"

namespace storage {

struct AccessReport {
    std::int64_t entries{};
    std::string head{};                    ///< hash of the newest entry, 64 hexadecimal digits
    std::optional<std::string> problem{};  ///< the first one, with the entry it is in
};

QByteArray encodeAccess(const domain::AccessEntry& entry);
/// Strict, as decodeEvent(). ErrorCode::Unusable.
domain::Result<domain::AccessEntry> decodeAccess(const QByteArray& bytes);

class AccessLog {
public:
    explicit AccessLog(Connection& connection) : connection_{connection} {}

    domain::Result<domain::Done> append(Transaction& transaction,
                                        const domain::AccessEntry& entry) const;
    /// When a person last did a kind of thing about something: a number of an order, the digest of
    /// a session, a command. nullopt: never.
    domain::Result<std::optional<domain::Instant>> newest(const std::string& about,
                                                          const domain::PersonCode& person,
                                                          domain::AccessKind kind) const;
    /// Everything, in order, one at a time.
    domain::Result<domain::Done> visit(
        const std::function<void(const domain::AccessEntry&)>& visitor) const;
    /// Computes the chain anew, reads every entry, and compares every column with what the bytes
    /// say, and the head with the last entry. `visitor` is told each entry that holds.
    domain::Result<AccessReport> verify(
        const std::function<void(const domain::AccessEntry&)>& visitor = {}) const;

private:
    Connection& connection_;
};

}  // namespace storage
