/// Where the records of a laboratory lie on the disk, where they must not, and how they are made.
#pragma once

#include <filesystem>
#include <functional>
#include <string_view>

#include "domain/base/result.h"

namespace storage {

inline constexpr std::string_view kRecordsFile = "records.db";
/// The folder beside it in which the papers of the laboratory lie.
inline constexpr std::string_view kPapersFolder = "papers";

/// Whether records that are not there may be made. Only what sets a laboratory up may make them:
/// whoever works in one must be told that they are gone.
enum class Opening : std::uint8_t { Existing, MakeIfMissing };

/// Whether a file system of this type ("ext4", "nfs4", "fuse.sshfs") lies on another machine or
/// behind a program that copies files: the locks of SQLite cannot be trusted there.
bool isNetworkFileSystem(std::string_view type);

struct RecordsPlace {
    std::filesystem::path file;  ///< its real path
    bool exists{};               ///< false only for Opening::MakeIfMissing
};

/// Looks for the records in a folder; for Opening::MakeIfMissing the folder (0700) is made where it
/// is absent, but not the file.
///
/// Refuses a path that is no folder (ErrorCode::Unusable) and, with ErrorCode::Unavailable: absent
/// records; an empty file, which is what is left of records that were cut off; new records beside
/// what earlier ones left behind; a folder on a network file system; a records file that is no
/// plain file or has a second name (hard link): through two names, two programs would not see each
/// other's journal.
domain::Result<RecordsPlace> findRecords(const std::filesystem::path& folder, Opening opening);

/// Makes the records under another name (0600), has them filled and closed by `fill`, and only then
/// puts them in place, so that a program killed on the way leaves no half-made records: what it
/// leaves under the other name is removed by the next call. Of several programs one makes them; the
/// others find them made, which is no error. ErrorCode::Unavailable.
domain::Result<domain::Done> makeRecords(
    const std::filesystem::path& file,
    const std::function<domain::Result<domain::Done>(const std::filesystem::path& part)>& fill);

}  // namespace storage
