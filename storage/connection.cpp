#include "storage/connection.h"

#include <QUrl>
#include <QUuid>
#include <array>
#include <optional>
#include <vector>

#include "storage/journal_check.h"
#include "storage/laboratory_identity.h"
#include "storage/migrator.h"
#include "storage/projections.h"
#include "storage/statement.h"
#include "storage/take_over.h"
#include "storage/wiped_journal.h"

namespace storage {
namespace {

/// A mode of SQLite: how it is asked for, and what reading it back must give.
struct Mode {
    std::string_view name;
    std::string_view set;
    std::string_view read;
};

/// A rollback journal, because the write-ahead log of this SQLite can lose a race between two
/// programs; FULL, because what was acknowledged must survive a power cut; 24 MB of pages kept, so
/// that what reads the whole ledger finds again what it looks up beside it, and no action of a day
/// comes near it; the rest against orphans, hostile files, stray pointers, and the remains of what
/// was erased.
constexpr std::array kModes{
    Mode{"busy_timeout", "5000", "5000"},   Mode{"trusted_schema", "OFF", "0"},
    Mode{"cell_size_check", "ON", "1"},     Mode{"mmap_size", "0", "0"},
    Mode{"foreign_keys", "ON", "1"},        Mode{"secure_delete", "ON", "1"},
    Mode{"synchronous", "FULL", "2"},       Mode{"journal_mode", "TRUNCATE", "truncate"},
    Mode{"cache_size", "-24576", "-24576"},
};

/// Those that matter for reading.
constexpr std::array kModesOfACopy{Mode{"trusted_schema", "OFF", "0"},
                                   Mode{"cell_size_check", "ON", "1"}, Mode{"mmap_size", "0", "0"}};

/// "FRMW": says in the file's own header whose it is.
constexpr std::int64_t kApplicationId = 0x46524d57;

std::string pragma(const QSqlDatabase& database, std::string_view name) {
    QSqlQuery query{database};
    const QString text = QString::fromStdString("PRAGMA " + std::string{name});
    if (!query.exec(text))
        throw SqlFailure{database.databaseName(), query.lastError(), text.toStdString()};
    return query.next() ? query.value(0).toString().toStdString() : std::string{};
}

/// A database that is not ours is left alone.
void checkOwner(const QSqlDatabase& database) {
    const std::string id = pragma(database, "application_id");
    if (id != std::to_string(kApplicationId))
        throw SqlFailure{database.databaseName().toStdString() +
                         " is the database of another program (application id " + id +
                         "); choose another folder for the records"};
}

/// Whether another connection of this process works on the same file: it has seen to the journal.
bool isOpenAlready(const std::filesystem::path& file) {
    const QString name = QString::fromStdString(file.string());
    for (const QString& other : QSqlDatabase::connectionNames())
        if (QSqlDatabase::database(other, false).databaseName() == name) return true;
    return false;
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

/// What follows from the steps of the schema, in the transaction of the last of them.
domain::Result<domain::Done> afterwards(Transaction& transaction) {
    if (auto rebuilt = rebuildProjections(transaction); !rebuilt) return rebuilt;
    return takeOver(transaction);
}

}  // namespace

Connection::Connection(std::filesystem::path file)
    : file_{std::move(file)},
      name_{"records-" + QUuid::createUuid().toString(QUuid::WithoutBraces)},
      database_{QSqlDatabase::addDatabase(
          QString::fromUtf8(kSqlite.driver.data(), static_cast<qsizetype>(kSqlite.driver.size())),
          name_)},
      queue_{file_} {}

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

void Connection::connect() {
    database_.setDatabaseName(QString::fromStdString(file_.string()));
    database_.setConnectOptions(QStringLiteral("QSQLITE_BUSY_TIMEOUT=5000"));
    if (!database_.open())
        throw SqlFailure{database_.databaseName(), database_.lastError(), "opening"};
}

void Connection::setModes() const {
    for (const Mode& mode : kModes) set(database_, mode);
}

domain::Result<const IdentityCipher*> Connection::identity() const {
    if (cipher_ == nullptr) return noCipher_;
    return cipher_.get();
}

domain::Result<domain::Done> Connection::findKey(const KeyAccess& keys) {
    if (cipher_ != nullptr) return domain::Done{};
    const auto identity = identityOf(*this);
    if (identity && !*identity) return domain::Done{};
    auto cipher = identity ? keyOf(**identity, file_.parent_path(), keys)
                           : domain::Result<Cipher>{identity.error()};
    if (cipher)
        cipher_ = *std::move(cipher);
    else if (keys.mayLack)
        noCipher_ = cipher.error();
    else
        return cipher.error();
    return domain::Done{};
}

/// `folder`: where the records lie, or will.
domain::Result<domain::Done> Connection::bringUpToDate(const std::filesystem::path& folder,
                                                       const BeforeUpgrade& before,
                                                       const KeyAccess& keys) {
    auto steps = migrations(dialect());
    if (!steps) return steps.error();
    std::vector<Migration> taken = *std::move(steps);
    taken[kIdentityStep - 1].code = [&](Transaction& work) -> domain::Result<domain::Done> {
        auto cipher = beginIdentity(work, folder, keys);
        if (!cipher) return cipher.error();
        cipher_ = *std::move(cipher);
        return domain::Done{};
    };
    // The clear words of older records are not left in the journal either.
    const auto step = schemaStep(*this);
    std::optional<WipedJournal> journal;
    if (step && *step < kIdentityStep) journal.emplace(*this);
    if (auto done = migrate(*this, taken, &afterwards, before); !done) return done;
    return journal ? journal->wipe() : domain::Done{};
}

domain::Result<std::unique_ptr<Connection>> Connection::open(const std::filesystem::path& folder,
                                                             Opening opening,
                                                             const BeforeUpgrade& before,
                                                             const KeyAccess& keys) try {
    using Opened = domain::Result<std::unique_ptr<Connection>>;
    const auto place = findRecords(folder, opening);
    if (!place) return place.error();
    const auto fill = [&](const std::filesystem::path& part) {
        Connection fresh{part};
        fresh.connect();
        pragma(fresh.database_, "application_id = " + std::to_string(kApplicationId));
        fresh.setModes();
        return fresh.bringUpToDate(place->file.parent_path(), {}, keys);
    };
    if (!place->exists)
        if (auto made = makeRecords(place->file, fill); !made) return made.error();
    if (!isOpenAlready(place->file))
        if (const auto strange = strangeJournal(place->file))
            return domain::Error{domain::ErrorCode::Unavailable, *strange};
    std::unique_ptr<Connection> connection{new Connection{place->file}};
    connection->connect();
    checkOwner(connection->database_);
    connection->setModes();
    const auto step = schemaStep(*connection);
    if (!step) return step.error();
    if (auto found = connection->findKey(keys); !found) return found.error();
    // Left of a purge that was killed; where others are at work, the next one to open sees to it.
    if (hasUnwipedJournal(place->file)) (void)wipeJournal(*connection);
    // Some steps of the schema need the key; without it the records stay as they are.
    if (connection->cipher_ == nullptr && *step >= kIdentityStep) {
        const auto steps = migrations(connection->dialect());
        if (!steps) return steps.error();
        if (*step < steps->back().step) return connection->noCipher_;
    }
    if (auto current = connection->bringUpToDate(place->file.parent_path(), before, keys); !current)
        return current.error();
    // Another program may have upgraded them meanwhile.
    if (auto found = connection->findKey(keys); !found) return found.error();
    return Opened{std::move(connection)};
} catch (const SqlFailure& failure) {
    return failure.error();
}

domain::Result<std::unique_ptr<Connection>> Connection::openCopy(const std::filesystem::path& file,
                                                                 Cipher cipher) try {
    using Opened = domain::Result<std::unique_ptr<Connection>>;
    std::unique_ptr<Connection> connection{new Connection{file}};
    connection->cipher_ = std::move(cipher);
    QSqlDatabase& database = connection->database_;
    // Immutable: no lock is taken, so that a copy on a file system without reliable locks opens.
    QUrl place = QUrl::fromLocalFile(QString::fromStdString(std::filesystem::absolute(file)));
    place.setQuery(QStringLiteral("immutable=1"));
    database.setDatabaseName(place.toString(QUrl::FullyEncoded));
    database.setConnectOptions(QStringLiteral("QSQLITE_OPEN_READONLY;QSQLITE_OPEN_URI"));
    if (!database.open())
        throw SqlFailure{database.databaseName(), database.lastError(), "opening"};
    checkOwner(database);
    for (const Mode& mode : kModesOfACopy) set(database, mode);
    return Opened{std::move(connection)};
} catch (const SqlFailure& failure) {
    return failure.error();
}

domain::Result<std::unique_ptr<Connection>> Connection::inMemory() try {
    using Opened = domain::Result<std::unique_ptr<Connection>>;
    std::unique_ptr<Connection> connection{new Connection{":memory:"}};
    connection->connect();
    const auto steps = migrations(connection->dialect());
    if (!steps) return steps.error();
    if (auto current = migrate(*connection, *steps, &afterwards); !current) return current.error();
    return Opened{std::move(connection)};
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace storage
