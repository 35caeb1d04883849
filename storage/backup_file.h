/// A backup: one file that holds the records of a laboratory as they were at one moment, and says
/// what it holds. Its name ends in ".backup"; format 1 is three parts, laid end to end:
///
/// 1. The database: an ordinary SQLite file. Programs that know SQLite open the backup as it is;
///    what follows the last page does not disturb them.
/// 2. The manifest: lines "name value" of ASCII, each ended by a line feed, in this order:
///      framewright-backup 1
///      made 1795594440000000 2026-11-25 08:14 UTC    microseconds since 1970, and the same to read
///      program 0.1.0                                 the version that made it
///      schema 4                                      the newest step taken
///      needs 4                                       the oldest step a program must know
///      entries 123                                   of the ledger
///      head 64-DIGITS                                hash of the newest entry; zeros: none
///      first 64-DIGITS                               hash of entry 1: whose records they are
///      table NAME ROWS SUM                           a line for each table, by name; see census.h
///      database BYTES                                the length of part 1
/// 3. The end, one line of kEndBytes bytes: "sha256 64-DIGITS manifest 8-DIGITS" and a line feed:
///    SHA-256 (FIPS 180-4) of parts 1 and 2, and the length of part 2.
///
/// So any byte that was changed, lost or added shows. The digest is no signature: it shows damage,
/// not forgery; against that the ledger's head is compared with one that was kept elsewhere.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "domain/base/date.h"
#include "domain/base/result.h"
#include "storage/census.h"
#include "storage/disk_file.h"

namespace storage {

struct Manifest {
    domain::Instant made{};
    std::string program{};
    std::int64_t schema{};
    std::int64_t needs{};
    std::int64_t entries{};
    std::string head{};
    std::string first{};
    std::vector<TableCount> tables{};
    std::int64_t databaseBytes{};

    friend bool operator==(const Manifest&, const Manifest&) = default;
};

/// What it says about the records.
Census censusOf(const Manifest& manifest);

inline constexpr std::string_view kBackupEnding = ".backup";
inline constexpr std::int64_t kEndBytes = 90;

std::string writeManifest(const Manifest& manifest);
/// Exactly what writeManifest() writes. ErrorCode::Unusable.
domain::Result<Manifest> readManifest(std::string_view text);

/// Part 3 for a digest of 64 digits and a manifest of so many bytes.
std::string endLine(const std::string& digest, std::size_t manifestBytes);

/// A backup that is open for reading.
class BackupFile {
public:
    /// Reads the manifest and no more. ErrorCode::Unusable, with a sentence of its own each: there
    /// is no such file, it is no backup, it was cut short, its manifest was altered.
    static domain::Result<BackupFile> open(const std::filesystem::path& path);

    const Manifest& manifest() const noexcept { return manifest_; }
    const std::string& digest() const noexcept { return digest_; }

    /// Gives part 1 in pieces while computing the digest of the whole file.
    /// ErrorCode::Unusable when it is another: the file was altered; what `piece` answers.
    domain::Result<domain::Done> read(
        const std::function<domain::Result<domain::Done>(std::string_view)>& piece) const;

private:
    BackupFile(std::filesystem::path path, Descriptor file, Manifest manifest, std::string digest,
               std::int64_t coveredBytes)
        : path_{std::move(path)},
          file_{std::move(file)},
          manifest_{std::move(manifest)},
          digest_{std::move(digest)},
          coveredBytes_{coveredBytes} {}

    std::filesystem::path path_;
    Descriptor file_;
    Manifest manifest_;
    std::string digest_;
    std::int64_t coveredBytes_;  ///< of parts 1 and 2
};

}  // namespace storage
