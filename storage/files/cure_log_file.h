/// A logged cure as a table of comma-separated values: a line "minutes,celsius", then one line a
/// reading, as "12.5,73.8".
///
/// RFC 4180 without quotes: a figure has no comma. Decimal points, at most three decimals, nothing
/// below 0. Whether the times run on is for domain::judgeCure to say.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "domain/base/result.h"
#include "domain/materials/cure_log.h"

namespace storage {

struct CureLogFile {
    std::vector<domain::CureReading> readings;
    std::string digest;  ///< SHA-256 of the file's bytes, 64 hexadecimal digits
};

/// All readings of a file, or none. ErrorCode::Unusable names file, line, and what was expected.
domain::Result<CureLogFile> loadCureLog(const std::filesystem::path& file);
domain::Result<CureLogFile> readCureLog(std::string_view text, std::string_view fileName);

}  // namespace storage
