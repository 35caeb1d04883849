/// An open database of one laboratory's records, in the mode that loses nothing it acknowledged.
#pragma once

#include <QSqlDatabase>
#include <filesystem>
#include <memory>
#include <string>

#include "domain/base/result.h"
#include "storage/dialect.h"
#include "storage/records_file.h"

namespace storage {

/// Belongs to the thread that opened it.
class Connection {
public:
    /// Opens the records in `folder` and brings them to the newest schema. Every mode is set and
    /// read back. ErrorCode::Unusable when the path is no folder; ErrorCode::Unavailable when there
    /// are none, unless they may be made, and when they cannot be trusted: what findRecords()
    /// refuses, a journal that is not theirs, not a database, another program's database, one
    /// without any schema or of a newer one.
    static domain::Result<std::unique_ptr<Connection>> open(const std::filesystem::path& folder,
                                                            Opening opening);
    /// Empty records of the newest schema in memory, to compare others with.
    static domain::Result<std::unique_ptr<Connection>> inMemory();

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
    void connect();
    void setModes() const;
    static domain::Result<domain::Done> fillNew(const std::filesystem::path& part);

    std::filesystem::path file_;
    QString name_;
    QSqlDatabase database_;
    bool inTransaction_{false};
};

}  // namespace storage
