/// Drawing a composed paper, and putting it safely into a file.
#pragma once

#include <filesystem>
#include <string>

#include "domain/base/result.h"
#include "reports/paper.h"

namespace reports {

/// The paper as the bytes of a PDF file; the same paper always gives the same bytes.
/// ErrorCode::Unavailable if the fonts are missing.
domain::Result<std::string> pdfOf(const Paper& paper);

/// Writes the paper so that the file is whole or not there: a temporary file beside it, forced to
/// disk, then renamed. Only its owner may read it. ErrorCode::Unavailable says what failed.
domain::Result<domain::Done> write(const Paper& paper, const std::filesystem::path& file);

}  // namespace reports
