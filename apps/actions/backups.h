/// Backups of the laboratory's records, and the drill that shows that they can be come back from.
#pragma once

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "apps/actions/laboratory.h"
#include "storage/backup.h"
#include "storage/restore.h"

namespace actions {

struct BackupWish {
    std::filesystem::path folder{};  ///< empty: backupFolder()
    bool remember{};                 ///< write there from now on
    bool removeSuperseded{};         ///< see storage/backup_keeping.h
};

struct BackupMade {
    storage::Backup backup;
    std::vector<std::filesystem::path> removed{};
};

/// The folder that was remembered; backups/ in the laboratory's folder until there is one.
domain::Result<std::filesystem::path> backupFolder(const Laboratory& laboratory);

/// For who may keep the workshop; see storage::makeBackup().
domain::Result<BackupMade> backUp(const Laboratory& laboratory, const BackupWish& wish,
                                  const Who& who, const storage::Progress& progress = {});

/// storage::restoreBackup(): there are no people yet whose session could be asked for.
domain::Result<storage::Restored> restore(const std::filesystem::path& file,
                                          const std::filesystem::path& folder,
                                          const std::optional<storage::KnownHead>& against = {},
                                          const storage::Progress& progress = {},
                                          const storage::KeyAccess& keys = {});

/// Issued statements printed from two sets of records and compared byte by byte.
struct StatementsCompared {
    std::size_t issued{};
    std::size_t compared{};
    std::vector<std::string> problems{};  ///< one sentence for each that differs
};

/// At most so many, which `seed` chooses; orders that were worked on since are passed over.
inline constexpr std::size_t kStatementsCompared = 10;
domain::Result<StatementsCompared> compareStatements(const Laboratory& original,
                                                     const Laboratory& restored,
                                                     std::uint32_t seed);

/// What a drill found. Times are in microseconds.
struct Drill {
    storage::Manifest manifest{};
    std::int64_t backupTook{};
    std::int64_t writersWaited{};  ///< of that, how long nobody could write
    std::int64_t returnTook{};     ///< from the backup to records that are proved and open (RTO)
    StatementsCompared statements{};
    /// The newest backup in backupFolder(), if any, and the entries recorded since: what would be
    /// lost if the disk failed now (RPO).
    std::optional<domain::Instant> lastBackup{};
    std::int64_t entriesSince{};
    std::vector<std::string> problems{};  ///< empty: what came back is what was there
};

/// Makes a backup, restores it elsewhere and compares the two, all in a folder of its own within
/// `folder` (empty: the laboratory's own), which is removed again. `seed` chooses the statements.
/// For who may keep the workshop.
domain::Result<Drill> drill(const Laboratory& laboratory, const std::filesystem::path& folder,
                            std::uint32_t seed, const Who& who,
                            const storage::Progress& progress = {});

}  // namespace actions
