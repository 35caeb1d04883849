/// An open database of one laboratory's records, in the mode that loses nothing it acknowledged.
#pragma once

#include <QSqlDatabase>
#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <string>

#include "domain/base/result.h"
#include "storage/dialect.h"
#include "storage/identity_key_file.h"
#include "storage/records_file.h"
#include "storage/statement.h"
#include "storage/writer_queue.h"

namespace storage {

class Connection;

/// What must succeed before records with entries are brought from a schema to a newer one.
using BeforeUpgrade =
    std::function<domain::Result<domain::Done>(Connection&, std::int64_t fromSchema)>;

/// Belongs to the thread that opened it.
class Connection {
public:
    /// Opens the records in `folder` and brings them to the newest schema. Every mode is set and
    /// read back. ErrorCode::Unusable when the path is no folder; ErrorCode::Unavailable when there
    /// are none, unless they may be made, and when they cannot be trusted: what findRecords()
    /// refuses, a journal that is not theirs, not a database, another program's database, one
    /// without any schema or of a newer one; and when their identity key is not to be had, see
    /// KeyAccess. Records that are made, and older ones that have no key yet, are given one.
    static domain::Result<std::unique_ptr<Connection>> open(const std::filesystem::path& folder,
                                                            Opening opening,
                                                            const BeforeUpgrade& before = {},
                                                            const KeyAccess& keys = {});
    /// Opens a copy of records that nobody else has open, to look at it as it is: it is not
    /// written, not locked, and of the schema it was made with. `cipher`: the key of the records,
    /// where it is at hand. ErrorCode::Unavailable.
    static domain::Result<std::unique_ptr<Connection>> openCopy(const std::filesystem::path& file,
                                                                Cipher cipher = {});
    /// Empty records of the newest schema in memory, to compare others with.
    static domain::Result<std::unique_ptr<Connection>> inMemory();

    Connection(const Connection&) = delete;
    Connection& operator=(const Connection&) = delete;
    ~Connection();

    const std::filesystem::path& file() const noexcept { return file_; }
    const QSqlDatabase& database() const noexcept { return database_; }
    const Dialect& dialect() const noexcept { return kSqlite; }

    /// What names people is encrypted with. ErrorCode::Unavailable, with a sentence that names the
    /// key file, where it is not at hand.
    domain::Result<const IdentityCipher*> identity() const;
    /// nullptr where it is not at hand.
    const Cipher& cipher() const noexcept { return cipher_; }

    /// How many statements were run so far, and how many transactions that wrote were committed.
    std::int64_t statements() const noexcept { return statements_; }
    std::int64_t commits() const noexcept { return commits_; }
    /// How often one statement was run.
    std::int64_t runsOf(std::string_view name) const;

private:
    friend class Transaction;
    friend class Snapshot;
    friend class Statement;

    /// A query that was prepared before and is not in use; nullptr: there is none.
    std::unique_ptr<PreparedQuery> takePrepared(std::string_view name);
    void keepPrepared(const std::string& name, std::unique_ptr<PreparedQuery> query);
    void countStatement(std::string_view name);

    explicit Connection(std::filesystem::path file);
    void connect();
    void setModes() const;
    domain::Result<domain::Done> findKey(const KeyAccess& keys);
    domain::Result<domain::Done> bringUpToDate(const std::filesystem::path& folder,
                                               const BeforeUpgrade& before, const KeyAccess& keys);

    std::filesystem::path file_;
    QString name_;
    QSqlDatabase database_;
    Cipher cipher_{};
    domain::Error noCipher_{domain::ErrorCode::Unavailable, "these records have no identity key"};
    WriterQueue queue_;
    bool inTransaction_{false};
    std::map<std::string, std::unique_ptr<PreparedQuery>, std::less<>> prepared_;
    std::map<std::string, std::int64_t, std::less<>> runs_;
    std::int64_t statements_{0};
    std::int64_t commits_{0};
};

}  // namespace storage
