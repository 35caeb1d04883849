/// Puts bytes into a file on a path that a person chose, so that nothing else is lost by it.
#pragma once

#include <filesystem>
#include <functional>
#include <string>
#include <string_view>

#include "domain/base/result.h"

namespace reports {

struct Placement {
    /// Nothing is written into this folder or below it; empty: anywhere.
    std::filesystem::path keepOut{};
    /// But here, below it, something may be.
    std::filesystem::path butFor{};
    /// Whether what lies there may give way; unset: nothing may.
    std::function<bool(std::string_view there)> mayReplace{};
    /// What may, in words for a person: "an earlier print of this paper".
    std::string replaceable{};
    /// Asked last, when nothing but the disk can still refuse: an error leaves everything as it
    /// was. Unset: nobody is asked.
    std::function<domain::Result<domain::Done>()> beforeItAppears{};
};

/// The file is whole or not there: a temporary file beside it, of a name nobody can foresee, forced
/// to disk, then renamed. Only its owner may read it. A file that holds the very bytes already is
/// left alone. Temporary files of programs that were killed on the way are removed.
///
/// Refused: the folder to keep out of; a symbolic link, a device, a folder, or a file with a second
/// name (hard link) where the file is to be (ErrorCode::Refused); a file that may not be replaced
/// (ErrorCode::Conflict). ErrorCode::Unusable for a path without a file's name, ErrorCode::
/// Unavailable when the disk will not; every error names the path.
domain::Result<domain::Done> placeFile(const std::filesystem::path& file, std::string_view bytes,
                                       const Placement& placement);

}  // namespace reports
