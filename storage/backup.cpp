#include "storage/backup.h"

#include <fcntl.h>
#include <sqlite3.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <sys/statvfs.h>
#include <unistd.h>

#include <QCryptographicHash>
#include <QSqlDriver>
#include <QUrl>
#include <QUuid>
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <regex>

#include "storage/backup_keeping.h"
#include "storage/statement.h"
#include "storage/transaction.h"

namespace storage {
namespace {

namespace fs = std::filesystem;
using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Instant;
using domain::Result;
using Clock = std::chrono::steady_clock;

constexpr std::string_view kPrefix = "framewright-";
constexpr std::string_view kPartialPrefix = ".framewright-";
constexpr std::string_view kPartialEnding = ".partial";
constexpr int kPagesAtOnce = 1024;
/// How long to wait for programs that write before giving up.
constexpr const char* kPatience = "PRAGMA busy_timeout = 60000";
constexpr const char* kUsualPatience = "PRAGMA busy_timeout = 5000";
constexpr std::uintmax_t kSlackBytes = 1 << 20;

void tell(const Progress& progress, std::string_view doing, std::int64_t done, std::int64_t all) {
    if (progress) progress(doing, done, all);
}

/// "framewright-20261125T081400Z-000123"
std::string nameOf(const Manifest& manifest) {
    constexpr std::int64_t kMicroseconds = 1'000'000;
    constexpr std::int64_t kSecondsPerDay = 86'400;
    std::string day = manifest.made.day().text();
    std::erase(day, '-');
    const std::int64_t second =
        manifest.made.microseconds() / kMicroseconds - manifest.made.day().days() * kSecondsPerDay;
    char rest[48];
    std::snprintf(rest, sizeof rest, "T%02d%02d%02dZ-%06lld", static_cast<int>(second / 3600),
                  static_cast<int>(second / 60 % 60), static_cast<int>(second % 60),
                  static_cast<long long>(manifest.entries));
    return std::string{kPrefix} + day + rest;
}

bool isOurName(const std::string& name) {
    static const std::regex kName{R"(framewright-\d{8}T\d{6}Z-\d{6,}(-\d+)?\.backup)"};
    return std::regex_match(name, kName);
}

/// A file under a name that is nobody's, until it is given its own; removed otherwise. The lock on
/// it tells another program that it is being written.
class Partial {
public:
    explicit Partial(const fs::path& folder)
        : path_{folder /
                (std::string{kPartialPrefix} + randomName() + std::string{kPartialEnding})},
          file_{::open(path_.c_str(), O_CREAT | O_EXCL | O_RDWR | O_CLOEXEC | O_NOFOLLOW, 0600)} {
        if (file_) ::flock(file_.number(), LOCK_EX | LOCK_NB);  // none on some file systems
    }
    Partial(const Partial&) = delete;
    Partial& operator=(const Partial&) = delete;
    ~Partial() {
        if (file_ && !named_) ::unlink(path_.c_str());
    }

    const fs::path& path() const noexcept { return path_; }
    const Descriptor& file() const noexcept { return file_; }
    std::int64_t size() const {
        struct stat found{};
        return ::fstat(file_.number(), &found) == 0 ? std::int64_t{found.st_size} : 0;
    }

    /// "NAME.backup", or "NAME-2.backup" where that is taken.
    Result<fs::path> name(const std::string& stem) {
        for (int i = 1;; ++i) {
            const fs::path to =
                path_.parent_path() / (stem + (i > 1 ? '-' + std::to_string(i) : std::string{}) +
                                       std::string{kBackupEnding});
            const auto renamed = renameNew(path_, to);
            if (!renamed) return renamed.error();
            if (!*renamed) continue;
            named_ = true;
            if (auto forced = forceFolder(path_.parent_path()); !forced) return forced.error();
            return to;
        }
    }

private:
    fs::path path_;
    Descriptor file_;
    bool named_{false};
};

/// Removes what a program that was killed left behind: a partial file that nobody holds the lock
/// of.
void sweep(const fs::path& folder) {
    std::error_code ignored;
    for (const auto& entry : fs::directory_iterator{folder, ignored}) {
        const std::string name = entry.path().filename().string();
        if (!name.starts_with(kPartialPrefix) || !name.ends_with(kPartialEnding)) continue;
        const Descriptor file{
            ::open(entry.path().c_str(), O_RDWR | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK)};
        struct stat found{};
        if (file && ::fstat(file.number(), &found) == 0 && S_ISREG(found.st_mode) &&
            ::flock(file.number(), LOCK_EX | LOCK_NB) == 0)
            ::unlink(entry.path().c_str());
    }
}

/// The database a copy is written into. Nothing but the file itself is written: what is half done
/// is thrown away.
class Target {
public:
    explicit Target(const fs::path& file)
        : name_{"backup-" + QUuid::createUuid().toString(QUuid::WithoutBraces)},
          database_{QSqlDatabase::addDatabase(
              QString::fromUtf8(kSqlite.driver.data(),
                                static_cast<qsizetype>(kSqlite.driver.size())),
              name_)} {
        QUrl place = QUrl::fromLocalFile(QString::fromStdString(fs::absolute(file).string()));
        place.setQuery(QStringLiteral("nolock=1"));
        database_.setDatabaseName(place.toString(QUrl::FullyEncoded));
        database_.setConnectOptions(QStringLiteral("QSQLITE_OPEN_URI"));
        if (!database_.open())
            throw SqlFailure{database_.databaseName(), database_.lastError(), "opening"};
        for (const char* mode : {"PRAGMA journal_mode = OFF", "PRAGMA synchronous = OFF"})
            Statement{database_, Sql{mode}}.run();
    }
    Target(const Target&) = delete;
    Target& operator=(const Target&) = delete;
    ~Target() {
        database_.close();
        database_ = {};
        QSqlDatabase::removeDatabase(name_);
    }

    const QSqlDatabase& database() const noexcept { return database_; }

private:
    QString name_;
    QSqlDatabase database_;
};

/// The handle behind Qt's connection, if the driver works with the very library we call: two
/// copies of SQLite in one program must not touch each other's handles.
sqlite3* handleOf(const QSqlDatabase& database) {
    Statement used{database, Sql{"SELECT sqlite_source_id() AS source"}};
    used.run().next();
    const QVariant handle = database.driver()->handle();
    if (used.text("source") != sqlite3_sourceid() || !handle.isValid() ||
        std::string_view{handle.typeName()} != "sqlite3*")
        throw SqlFailure{std::string{"the driver of Qt works with another SQLite than this "
                                     "program ("} +
                         sqlite3_libversion() + "); no backup can be made"};
    return *static_cast<sqlite3* const*>(handle.constData());
}

/// A backup in the sense of SQLite, ended whatever happens.
class PageCopy {
public:
    PageCopy(const QSqlDatabase& from, const QSqlDatabase& to)
        : to_{handleOf(to)}, copy_{sqlite3_backup_init(to_, "main", handleOf(from), "main")} {
        if (copy_ == nullptr) throw failure(sqlite3_errcode(to_));
    }
    PageCopy(const PageCopy&) = delete;
    PageCopy& operator=(const PageCopy&) = delete;
    ~PageCopy() {
        if (copy_ != nullptr) sqlite3_backup_finish(copy_);
    }

    void run(const Progress& progress) {
        int code = SQLITE_OK;
        while (code == SQLITE_OK) {
            code = sqlite3_backup_step(copy_, kPagesAtOnce);
            const int all = sqlite3_backup_pagecount(copy_);
            tell(progress, "copying", all - sqlite3_backup_remaining(copy_), all);
        }
        const int end = sqlite3_backup_finish(copy_);
        copy_ = nullptr;
        if (code != SQLITE_DONE) throw failure(code);
        if (end != SQLITE_OK) throw failure(end);
    }

private:
    static SqlFailure failure(int code) {
        return SqlFailure{code == SQLITE_FULL
                              ? std::string{"the disk of the backup is full"}
                              : std::string{"copying the records failed: "} + sqlite3_errstr(code)};
    }

    sqlite3* to_;
    sqlite3_backup* copy_;
};

/// Waits longer than usual for other programs, as long as it lives.
class Patience {
public:
    explicit Patience(const QSqlDatabase& database) : database_{database} {
        QSqlQuery{database_}.exec(QString::fromUtf8(kPatience));
    }
    Patience(const Patience&) = delete;
    Patience& operator=(const Patience&) = delete;
    ~Patience() { QSqlQuery{database_}.exec(QString::fromUtf8(kUsualPatience)); }

private:
    const QSqlDatabase& database_;
};

/// What was copied, and for how long nobody could write, in microseconds.
struct Copied {
    Census census;
    std::int64_t lockedFor{};
};

Copied copyPages(Connection& records, const fs::path& to, const Progress& progress,
                 CensusDepth depth) {
    const Target target{to};
    PageCopy copy{records.database(), target.database()};
    const Patience patience{records.database()};
    const Snapshot snapshot{records};
    const auto seen = [&records] {
        Statement first{records, "ledger_head_all"};  // the lock is taken by reading
        first.run().next();
        return Clock::now();
    }();
    Copied copied{.census = takeCensus(records, depth), .lockedFor = {}};
    copy.run(progress);
    copied.lockedFor =
        std::chrono::duration_cast<std::chrono::microseconds>(Clock::now() - seen).count();
    return copied;
}

Result<Done> enoughRoom(const Connection& records, const fs::path& folder) {
    std::error_code failure;
    const auto needed = fs::file_size(records.file(), failure) + kSlackBytes;
    const auto space = fs::space(folder, failure);
    if (failure || space.available >= needed) return Done{};
    return Error{ErrorCode::Unavailable,
                 "the disk of " + folder.string() + " has " + std::to_string(space.available) +
                     " bytes left, and a backup needs " + std::to_string(needed)};
}

/// The copy as it lies on the disk must say the same as the records did, and prove true.
Result<Census> prove(const fs::path& file, const Census& original, const Cipher& cipher) try {
    auto opened = Connection::openCopy(file, cipher);
    if (!opened) return opened.error();
    const auto copy = *std::move(opened);
    const auto census = takeCensus(*copy, CensusDepth::RowsAndSums);
    auto problems = censusDifferences(original, census);
    if (problems.empty()) {
        auto own = problemsIn(*copy);
        if (!own) return own.error();
        problems = *std::move(own);
    }
    if (problems.empty()) return census;
    return Error{
        ErrorCode::Unavailable,
        "the copy does not prove true, and no backup was made: " + problems.front() +
            (problems.size() > 1 ? " (and " + std::to_string(problems.size() - 1) + " more)"
                                 : std::string{}) +
            "; framewright verify says whether the records are damaged"};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Manifest manifestOf(Census census, Instant now, std::int64_t databaseBytes) {
    return {.made = now,
            .program = FRAMEWRIGHT_VERSION,
            .schema = census.schema,
            .needs = census.needs,
            .entries = census.entries,
            .head = std::move(census.head),
            .first = std::move(census.first),
            .tables = std::move(census.tables),
            .databaseBytes = databaseBytes};
}

/// Reads the pages back from the disk and puts manifest and end behind them; gives the digest.
Result<std::string> finish(const Partial& partial, const Manifest& manifest) {
    QCryptographicHash hash{QCryptographicHash::Sha256};
    const auto add = [&](std::string_view bytes) {
        hash.addData(QByteArrayView{bytes.data(), static_cast<qsizetype>(bytes.size())});
        return Result<Done>{Done{}};
    };
    if (auto read = readRange(partial.file(), 0, manifest.databaseBytes, partial.path(), add);
        !read)
        return read.error();
    const std::string text = writeManifest(manifest);
    (void)add(text);
    const std::string digest = hash.result().toHex().toStdString();
    if (::lseek(partial.file().number(), manifest.databaseBytes, SEEK_SET) < 0)
        return diskError("cannot write", partial.path());
    if (auto done = appendAll(partial.file(), text + endLine(digest, text.size()), partial.path());
        !done)
        return done.error();
    if (auto forced = forceToDisk(partial.file(), partial.path()); !forced) return forced.error();
    return digest;
}

bool onOneDisk(const fs::path& left, const fs::path& right) {
    struct stat one{};
    struct stat other{};
    return ::stat(left.c_str(), &one) == 0 && ::stat(right.c_str(), &other) == 0 &&
           one.st_dev == other.st_dev;
}

bool isOpenToOthers(const Descriptor& file) {
    constexpr mode_t kOthers = 0077;
    struct stat found{};
    return ::fstat(file.number(), &found) == 0 && (found.st_mode & kOthers) != 0;
}

}  // namespace

Result<Backup> makeBackup(Connection& records, const fs::path& folder, Instant now,
                          const Progress& progress, CensusDepth compared) try {
    if (auto ready = ensureFolder(folder); !ready) return ready.error();
    sweep(folder);
    Partial partial{folder};
    if (!partial.file()) return diskError("cannot write into the folder", folder);
    if (auto room = enoughRoom(records, folder); !room) return room.error();
    const Copied copied = copyPages(records, partial.path(), progress, compared);
    if (auto forced = forceToDisk(partial.file(), partial.path()); !forced) return forced.error();
    tell(progress, "proving the copy", 0, 1);
    auto proved = prove(partial.path(), copied.census, records.cipher());
    if (!proved) return proved.error();
    Backup backup{.file = {}, .manifest = manifestOf(*std::move(proved), now, partial.size())};
    const auto digest = finish(partial, backup.manifest);
    if (!digest) return digest.error();
    backup.digest = *digest;
    backup.readableByOthers = isOpenToOthers(partial.file());
    const auto file = partial.name(nameOf(backup.manifest));
    if (!file) return file.error();
    backup.file = *file;
    backup.onTheSameDisk = onOneDisk(records.file(), *file);
    backup.writersWaited = copied.lockedFor;
    tell(progress, "proving the copy", 1, 1);
    return backup;
} catch (const SqlFailure& failure) {
    return failure.error();
}

std::vector<FoundBackup> backupsIn(const fs::path& folder, const std::string& first) {
    std::vector<FoundBackup> found;
    std::error_code ignored;
    for (const auto& entry : fs::directory_iterator{folder, ignored}) {
        if (!isOurName(entry.path().filename().string()) || entry.is_symlink(ignored)) continue;
        const auto backup = BackupFile::open(entry.path());
        if (backup && backup->manifest().first == first)
            found.push_back({entry.path(), backup->manifest()});
    }
    std::ranges::sort(found, {}, [](const FoundBackup& each) {
        return std::pair{each.manifest.made, each.file};
    });
    return found;
}

Result<std::vector<fs::path>> removeSuperseded(const Backup& justMade) {
    std::vector<fs::path> removed;
    if (justMade.manifest.entries == 0) return removed;  // whose they are cannot be told
    const auto all = backupsIn(justMade.file.parent_path(), justMade.manifest.first);
    std::vector<BackupMark> marks;
    marks.reserve(all.size());
    for (const FoundBackup& each : all) marks.push_back({each.manifest.made, each.manifest.head});
    const auto own = std::ranges::find(all, justMade.file, &FoundBackup::file);
    if (own == all.end())
        return Error{ErrorCode::Unavailable,
                     justMade.file.string() + " cannot be read back; no backup was removed"};
    for (const std::size_t at : superseded(marks, static_cast<std::size_t>(own - all.begin()))) {
        if (::unlink(all[at].file.c_str()) != 0) return diskError("cannot remove", all[at].file);
        removed.push_back(all[at].file);
    }
    return removed;
}

fs::path usualBackupFolder(const fs::path& records) { return records / "backups"; }

BeforeUpgrade backupBeforeUpgrade(Instant now) {
    return [now](Connection& records, std::int64_t fromSchema) -> Result<Done> {
        const auto backup =
            makeBackup(records, usualBackupFolder(records.file().parent_path()), now);
        if (!backup)
            return Error{backup.error().code,
                         "the records are of schema " + std::to_string(fromSchema) +
                             " and are not upgraded, because they cannot be backed up first: " +
                             backup.error().message};
        (void)removeSuperseded(*backup);  // one too many is no reason to keep people from working
        return Done{};
    };
}

}  // namespace storage
