#include "storage/restore.h"

#include <fcntl.h>
#include <sys/stat.h>

#include "storage/ledger.h"
#include "storage/migrator.h"
#include "storage/records_file.h"
#include "storage/statement.h"

namespace storage {
namespace {

namespace fs = std::filesystem;
using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Result;

/// A folder beside the one that is asked for, until it is given its name; removed otherwise.
class NewFolder {
public:
    explicit NewFolder(fs::path wanted)
        : wanted_{std::move(wanted)},
          path_{wanted_.parent_path() / (".framewright-" + randomName() + ".partial")} {}
    NewFolder(const NewFolder&) = delete;
    NewFolder& operator=(const NewFolder&) = delete;
    ~NewFolder() {
        std::error_code ignored;
        if (made_) fs::remove_all(path_, ignored);
    }

    Result<Done> make() {
        if (::mkdir(path_.c_str(), 0700) != 0)
            return diskError("cannot make a folder in", wanted_.parent_path());
        made_ = true;
        return Done{};
    }
    Result<Done> name() {
        if (auto forced = forceFolder(path_); !forced) return forced;
        const auto renamed = renameNew(path_, wanted_);
        if (!renamed) return renamed.error();
        if (!*renamed) return taken(wanted_);
        made_ = false;
        return forceFolder(wanted_.parent_path());
    }
    static Error taken(const fs::path& folder) {
        return {ErrorCode::Unusable, folder.string() +
                                         " exists; a backup is restored into a new folder only, so "
                                         "that nothing is overwritten"};
    }

    const fs::path& path() const noexcept { return path_; }

private:
    fs::path wanted_;
    fs::path path_;
    bool made_{false};
};

/// Absolute, without a slash at its end.
Result<fs::path> wantedFolder(const fs::path& folder) {
    if (folder.empty()) return Error{ErrorCode::Unusable, "the path of the new folder is empty"};
    std::error_code failure;
    fs::path wanted = fs::absolute(folder, failure).lexically_normal();
    if (!wanted.has_filename()) wanted = wanted.parent_path();
    if (fs::symlink_status(wanted, failure).type() != fs::file_type::not_found)
        return NewFolder::taken(wanted);
    if (!fs::is_directory(wanted.parent_path(), failure))
        return Error{ErrorCode::Unusable,
                     "there is no folder " + wanted.parent_path().string() + " to restore into"};
    return wanted;
}

Result<Done> knownSchema(const Manifest& manifest, const fs::path& file) {
    const auto steps = migrations(kSqlite);
    if (!steps) return steps.error();
    if (manifest.needs <= steps->back().step) return Done{};
    return Error{ErrorCode::Unavailable,
                 file.string() + " is of schema " + std::to_string(manifest.schema) +
                     ", made by a newer program (" + manifest.program +
                     "); this one knows schema " + std::to_string(steps->back().step) +
                     ": restore it with the newer program"};
}

Result<Done> recent(const Manifest& manifest, const fs::path& file, const KnownHead& known) {
    if (known.entries <= manifest.entries) return Done{};
    return Error{ErrorCode::Refused,
                 file.string() + " is older than what is known: it holds " +
                     std::to_string(manifest.entries) + " entries of the ledger, and " +
                     std::to_string(known.entries) +
                     " are known to have been there; take a newer backup, or restore it without "
                     "that check and enter again what was lost"};
}

/// Part 1 of a backup as a file of its own, forced to the disk.
Result<Done> writeRecords(const BackupFile& backup, const fs::path& to, const Progress& progress) {
    const Descriptor file{::open(to.c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC, 0600)};
    if (!file) return diskError("cannot make", to);
    std::int64_t written = 0;
    auto copied = backup.read([&](std::string_view piece) {
        written += static_cast<std::int64_t>(piece.size());
        if (progress) progress("copying", written, backup.manifest().databaseBytes);
        return appendAll(file, piece, to);
    });
    if (!copied) return copied;
    return forceToDisk(file, to);
}

Error damaged(const fs::path& file, const std::string& problem) {
    return {ErrorCode::Unavailable, file.string() + " cannot be restored: " + problem};
}

/// What was written says what the manifest says, and holds the head that is known.
Result<Done> compare(const fs::path& records, const Manifest& manifest, const fs::path& file,
                     const std::optional<KnownHead>& against) try {
    auto opened = Connection::openCopy(records);
    if (!opened) return opened.error();
    const auto copy = *std::move(opened);
    const auto differences =
        censusDifferences(censusOf(manifest), takeCensus(*copy, CensusDepth::RowsAndSums));
    if (!differences.empty()) return damaged(file, differences.front());
    if (!against || against->entries == 0) return Done{};
    if (const auto hash = hashOfEntry(*copy, against->entries); hash != against->hash)
        return Error{ErrorCode::Refused,
                     file.string() + " is of another history: the hash of its entry " +
                         std::to_string(against->entries) + " is " + hash.value_or("missing") +
                         ", and " + against->hash + " is known"};
    return Done{};
} catch (const SqlFailure& failure) {
    return damaged(file, failure.what());
}

std::optional<LastEntry> lastEntryOf(Connection& records) {
    Statement last{records, "ledger_last"};
    if (!last.run().next()) return {};
    return LastEntry{last.text("subject"), last.text("kind"), last.text("person"),
                     domain::Instant::ofMicroseconds(last.whole("at_us"))};
}

/// Opens the records as they will be worked with, which brings them to the newest schema, and
/// proves them; says what they hold.
Result<Restored> workable(const fs::path& folder, const BackupFile& backup, const fs::path& file,
                          const KeyAccess& keys) try {
    auto opened = Connection::open(folder, Opening::Existing, {}, keys);
    if (!opened)
        return opened.error().code == ErrorCode::Unavailable ? damaged(file, opened.error().message)
                                                             : opened.error();
    const auto records = *std::move(opened);
    const auto problems = problemsIn(*records);
    if (!problems) return damaged(file, problems.error().message);
    if (!problems->empty()) return damaged(file, problems->front());
    return Restored{.folder = {},
                    .manifest = backup.manifest(),
                    .schema = takeCensus(*records, CensusDepth::Rows).schema,
                    .last = lastEntryOf(*records)};
} catch (const SqlFailure& failure) {
    return damaged(file, failure.what());
}

}  // namespace

Result<Restored> restoreBackup(const fs::path& file, const fs::path& folder,
                               const std::optional<KnownHead>& against, const Progress& progress,
                               const KeyAccess& keys) {
    const auto wanted = wantedFolder(folder);
    if (!wanted) return wanted.error();
    const auto backup = BackupFile::open(file);
    if (!backup) return backup.error();
    const Manifest& manifest = backup->manifest();
    NewFolder fresh{*wanted};
    if (auto made = fresh.make(); !made) return made.error();
    const fs::path records = fresh.path() / kRecordsFile;
    // What a manifest says is only believed once the digest has shown that it is whole.
    if (auto done = writeRecords(*backup, records, progress); !done) return done.error();
    if (auto known = knownSchema(manifest, file); !known) return known.error();
    if (against)
        if (auto done = recent(manifest, file, *against); !done) return done.error();
    if (auto same = compare(records, manifest, file, against); !same) return same.error();
    if (progress) progress("proving the records", 0, 1);
    auto restored = workable(fresh.path(), *backup, file, keys);
    if (!restored) return restored;
    if (auto named = fresh.name(); !named) return named.error();
    if (progress) progress("proving the records", 1, 1);
    Restored done = *std::move(restored);
    done.folder = *wanted;
    return done;
}

}  // namespace storage
