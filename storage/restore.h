/// The way back from a backup to records that can be worked with.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "domain/base/result.h"
#include "storage/backup.h"

namespace storage {

/// A state of the ledger that was noted down elsewhere.
struct KnownHead {
    std::int64_t entries{};
    std::string hash{};
};

/// The newest entry of restored records: what comes after it is lost.
struct LastEntry {
    std::string subject;
    std::string kind;
    std::string person;
    domain::Instant at{};
};

struct Restored {
    std::filesystem::path folder;
    Manifest manifest{};
    std::int64_t schema{};  ///< what it was upgraded to, if that is newer than the manifest's
    std::optional<LastEntry> last{};  ///< none in an empty ledger
};

/// Writes the records of a backup into a new folder, under a name of its own beside it until all
/// is proved: the digest of the file, the counts of its manifest, the known head, the upgrade to
/// this program's schema, problemsIn(). Nothing is left behind when any of it fails.
///
/// Each refusal has its own sentence. ErrorCode::Unusable: no such file, not a backup, cut short,
/// altered, the folder exists. ErrorCode::Refused: `against` names an entry the backup does not
/// have yet, or another hash; not the recovery code. ErrorCode::Unavailable: made by a newer
/// program; the disk; damage; no identity key to read the names with. `keys`: the key file of the
/// laboratory where this machine has it; else the recovery code is asked for, and the file made.
domain::Result<Restored> restoreBackup(const std::filesystem::path& file,
                                       const std::filesystem::path& folder,
                                       const std::optional<KnownHead>& against = {},
                                       const Progress& progress = {}, const KeyAccess& keys = {});

}  // namespace storage
