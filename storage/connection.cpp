#include "storage/connection.h"

#include <QUuid>
#include <array>
#include <vector>

#include "storage/migrator.h"
#include "storage/projections.h"
#include "storage/records_file.h"
#include "storage/statement.h"

namespace storage {
namespace {

/// A mode of SQLite: how it is asked for, and what reading it back must give.
struct Mode {
    std::string_view name;
    std::string_view set;
    std::string_view read;
};

/// A rollback journal, because the write-ahead log of this SQLite can lose a race between two
/// programs; FULL, because what was acknowledged must survive a power cut; the rest against
/// orphans, hostile files, stray pointers, and the remains of what was erased.
constexpr std::array kModes{
    Mode{"busy_timeout", "5000", "5000"}, Mode{"trusted_schema", "OFF", "0"},
    Mode{"cell_size_check", "ON", "1"},   Mode{"mmap_size", "0", "0"},
    Mode{"foreign_keys", "ON", "1"},      Mode{"secure_delete", "ON", "1"},
    Mode{"synchronous", "FULL", "2"},     Mode{"journal_mode", "TRUNCATE", "truncate"},
};

/// "FRMW": says in the file's own header whose it is.
constexpr std::int64_t kApplicationId = 0x46524d57;

std::string pragma(const QSqlDatabase& database, std::string_view name) {
    QSqlQuery query{database};
    const QString text = QString::fromStdString("PRAGMA " + std::string{name});
    if (!query.exec(text))
        throw SqlFailure{database.databaseName(), query.lastError(), text.toStdString()};
    return query.next() ? query.value(0).toString().toStdString() : std::string{};
}

void openDatabase(QSqlDatabase& database, const std::filesystem::path& file) {
    database.setDatabaseName(QString::fromStdString(file.string()));
    database.setConnectOptions(QStringLiteral("QSQLITE_BUSY_TIMEOUT=5000"));
    if (!database.open())
        throw SqlFailure{database.databaseName(), database.lastError(), "opening"};
}

/// An empty file becomes ours; a database that is not ours is left alone. The tables are looked at
/// first: another program that makes the same records just now writes its id before them.
void claim(const QSqlDatabase& database) {
    Statement tables{database, Sql{"SELECT COUNT(*) AS tables FROM sqlite_schema"}};
    const bool fresh = tables.run().next() && tables.whole("tables") == 0;
    const std::string ours = std::to_string(kApplicationId);
    std::string id = pragma(database, "application_id");
    if (fresh && id == "0") {
        pragma(database, "application_id = " + ours);
        id = pragma(database, "application_id");
    }
    if (id != ours)
        throw SqlFailure{database.databaseName().toStdString() +
                         " is the database of another program (application id " + id +
                         "); choose another folder for the records"};
}

void set(const QSqlDatabase& database, const Mode& mode) {
    const std::string name{mode.name};
    pragma(database, name + " = " + std::string{mode.set});
    const std::string found = pragma(database, name);
    if (found != mode.read)
        throw SqlFailure{"the records in " + database.databaseName().toStdString() +
                         " cannot be kept safely: " + name + " is " + found + " and must be " +
                         std::string{mode.read}};
}

}  // namespace

Connection::Connection(std::filesystem::path file)
    : file_{std::move(file)},
      name_{"records-" + QUuid::createUuid().toString(QUuid::WithoutBraces)},
      database_{QSqlDatabase::addDatabase(
          QString::fromUtf8(kSqlite.driver.data(), static_cast<qsizetype>(kSqlite.driver.size())),
          name_)} {}

Connection::~Connection() {
    prepared_.clear();
    database_.close();
    database_ = {};
    QSqlDatabase::removeDatabase(name_);
}

std::unique_ptr<PreparedQuery> Connection::takePrepared(std::string_view name) {
    const auto found = prepared_.find(name);
    return found == prepared_.end() ? nullptr : std::move(found->second);
}

void Connection::countStatement(std::string_view name) {
    ++statements_;
    const auto runs = runs_.find(name);
    if (runs == runs_.end())
        runs_.emplace(name, 1);
    else
        ++runs->second;
}

std::int64_t Connection::runsOf(std::string_view name) const {
    const auto runs = runs_.find(name);
    return runs == runs_.end() ? 0 : runs->second;
}

void Connection::keepPrepared(const std::string& name, std::unique_ptr<PreparedQuery> query) {
    prepared_.insert_or_assign(name, std::move(query));
}

domain::Result<std::unique_ptr<Connection>> Connection::open(
    const std::filesystem::path& folder) try {
    using Opened = domain::Result<std::unique_ptr<Connection>>;
    auto file = prepareRecordsFile(folder);
    if (!file) return file.error();
    std::unique_ptr<Connection> connection{new Connection{*std::move(file)}};
    openDatabase(connection->database_, connection->file_);
    claim(connection->database_);
    for (const Mode& mode : kModes) set(connection->database_, mode);
    const auto steps = migrations(connection->dialect());
    if (!steps) return steps.error();
    if (auto current = migrate(*connection, *steps, &rebuildProjections); !current)
        return current.error();
    return Opened{std::move(connection)};
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace storage
