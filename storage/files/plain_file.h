/// Reading a whole file that people hand in.
#pragma once

#include <filesystem>
#include <string>

#include "domain/base/result.h"

namespace storage {

/// What a file should be, for messages, and the most bytes it can have.
struct Expected {
    std::string what;  ///< with its article: "a prescription"
    std::size_t most{};
};

/// Refuses what is missing, a folder, not a plain file, empty, or larger, by the file's name.
/// ErrorCode::Unusable.
domain::Result<std::string> readPlainFile(const std::filesystem::path& file,
                                          const Expected& expected);

}  // namespace storage
