/// Backups of the records while they are in use, and the way back; backup_file.h says what a
/// backup is.
///
/// The pages are copied by the backup functions of SQLite within one read transaction: programs
/// that write wait meanwhile. Without it the copy begins again at every write of another program,
/// and may never end; VACUUM INTO takes several times as long, cannot share the transaction in
/// which the tables are counted, and does not force what it wrote to the disk.
#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "domain/base/date.h"
#include "domain/base/result.h"
#include "storage/backup_file.h"
#include "storage/connection.h"

namespace storage {

/// How far a long piece of work has come: "copying", 3 of 12.
using Progress = std::function<void(std::string_view doing, std::int64_t done, std::int64_t all)>;

struct Backup {
    std::filesystem::path file;
    Manifest manifest{};
    std::string digest{};          ///< SHA-256 of the file but for its last line
    bool onTheSameDisk{};          ///< as the records
    bool readableByOthers{};       ///< the file system does not keep the rights 0600
    std::int64_t writersWaited{};  ///< microseconds during which nobody could write
};

/// Writes a backup into a folder, which is made where it is absent, as
/// "framewright-20261125T081400Z-000123.backup": date, time and entries of the ledger. It is
/// written under a name of its own that begins with a dot, forced to the disk, read back, proved
/// (problemsIn, and equal to the records in every count), and only then named.
/// ErrorCode::Unavailable and nothing left behind when anything of that fails; records that are
/// damaged are not backed up.
/// `compared`: what is counted in the records while nobody can write; the manifest has the sums of
/// the copy.
domain::Result<Backup> makeBackup(Connection& records, const std::filesystem::path& folder,
                                  domain::Instant now, const Progress& progress = {},
                                  CensusDepth compared = CensusDepth::Rows);

/// A backup that lies in a folder.
struct FoundBackup {
    std::filesystem::path file;
    Manifest manifest{};
};

/// The backups in a folder of the records whose first entry has this hash, oldest first; files
/// that are something else, or another laboratory's, are passed over. None where there is no
/// folder.
std::vector<FoundBackup> backupsIn(const std::filesystem::path& folder, const std::string& first);

/// Removes the backups that are superseded by the one just made (see backup_keeping.h) and lie in
/// its folder under a name makeBackup() gives, and says which.
domain::Result<std::vector<std::filesystem::path>> removeSuperseded(const Backup& justMade);

/// The folder beside records in which they are backed up when no other is given.
std::filesystem::path usualBackupFolder(const std::filesystem::path& records);

/// To be given to Connection::open(): makes a backup beside the records before they are upgraded,
/// and removes those that are superseded.
BeforeUpgrade backupBeforeUpgrade(domain::Instant now);

}  // namespace storage
