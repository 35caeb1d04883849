/// Where the records of a laboratory lie on the disk, and where they must not.
#pragma once

#include <filesystem>
#include <string_view>

#include "domain/base/result.h"

namespace storage {

inline constexpr std::string_view kRecordsFile = "records.db";

/// Whether a file system of this type ("ext4", "nfs4", "fuse.sshfs") lies on another machine or
/// behind a program that copies files: the locks of SQLite cannot be trusted there.
bool isNetworkFileSystem(std::string_view type);

/// Makes the folder (0700) and the file (0600) where they are absent and gives the file's path.
///
/// Refuses a path that is no folder (ErrorCode::Unusable), a folder on a network file system, and
/// a records file that is no plain file or has a second name (hard link): through two names, two
/// programs would not see each other's journal.
domain::Result<std::filesystem::path> prepareRecordsFile(const std::filesystem::path& folder);

}  // namespace storage
