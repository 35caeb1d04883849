/// Units of work: everything that is written between begin and commit is kept, or nothing.
#pragma once

#include "domain/base/result.h"
#include "storage/connection.h"

namespace storage {

/// Rolls back unless committed. Every function that writes takes one, so writing outside a
/// transaction does not compile.
class Transaction {
public:
    /// Waits in turn with other programs that write, up to 5 seconds. ErrorCode::Unavailable.
    static domain::Result<Transaction> begin(Connection& connection);

    Transaction(Transaction&& other) noexcept;
    Transaction& operator=(Transaction&&) = delete;
    ~Transaction();

    /// After a failure nobody knows whether it was kept: the command is to be repeated under the
    /// same idempotency key, which never takes effect twice. ErrorCode::Unavailable.
    domain::Result<domain::Done> commit();

    /// For what may change more pages than the cache holds, before it changes any: they are written
    /// before the commit, and a journal that is found after a power cut is known for the records'
    /// own by the first page in it; see journal_check.h. Throws SqlFailure.
    void journalHead() const;

    Connection& connection() const noexcept { return *connection_; }
    const QSqlDatabase& database() const noexcept { return connection_->database(); }

private:
    explicit Transaction(Connection& connection) : connection_{&connection} {}

    Connection* connection_;  ///< nullptr once committed or moved from
};

/// Holds several reads to one state of the records; within a transaction it is part of that.
/// Throws SqlFailure.
class Snapshot {
public:
    explicit Snapshot(Connection& connection);
    Snapshot(const Snapshot&) = delete;
    Snapshot& operator=(const Snapshot&) = delete;
    ~Snapshot();

private:
    Connection& connection_;
    bool own_;
};

}  // namespace storage
