/// An open database of one laboratory's records, in the mode that loses nothing it acknowledged.
#pragma once

#include <QSqlDatabase>
#include <filesystem>
#include <memory>
#include <string>

#include "domain/base/result.h"
#include "storage/dialect.h"

namespace storage {

/// Belongs to the thread that opened it.
class Connection {
public:
    /// Opens the records in `folder`, makes them if there are none, and brings them to the newest
    /// schema. Every mode is set and read back. ErrorCode::Unusable when the path is no folder;
    /// ErrorCode::Unavailable when the records cannot be trusted there: network file system, hard
    /// link, not a database, another program's database, a newer schema.
    static domain::Result<std::unique_ptr<Connection>> open(const std::filesystem::path& folder);

    Connection(const Connection&) = delete;
    Connection& operator=(const Connection&) = delete;
    ~Connection();

    const std::filesystem::path& file() const noexcept { return file_; }
    const QSqlDatabase& database() const noexcept { return database_; }
    const Dialect& dialect() const noexcept { return kSqlite; }

private:
    friend class Transaction;
    friend class Snapshot;

    explicit Connection(std::filesystem::path file);

    std::filesystem::path file_;
    QString name_;
    QSqlDatabase database_;
    bool inTransaction_{false};
};

}  // namespace storage
