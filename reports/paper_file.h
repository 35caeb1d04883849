/// Drawing a composed paper, and putting it safely into a file.
#pragma once

#include <filesystem>
#include <functional>
#include <string>
#include <string_view>

#include "domain/base/result.h"
#include "reports/paper.h"

namespace reports {

/// The paper as the bytes of a PDF file; the same paper always gives the same bytes.
/// ErrorCode::Unavailable if the fonts are missing.
domain::Result<std::string> pdfOf(const Paper& paper);

/// Where papers must not go, and whether one may be printed over.
struct PaperPlace {
    std::filesystem::path records{};  ///< folder of the records: no paper lies in it ...
    std::filesystem::path papers{};   ///< ... but in this folder below it
    /// A paper that was issued: not even an earlier print of it gives way to other bytes.
    bool isIssued{};
    /// Told the bytes before they are to be seen there, also where they are already; with an error
    /// nothing is written.
    std::function<domain::Result<domain::Done>(std::string_view pdf)> beforeItAppears{};
};

/// Writes the paper under a new name, or over an earlier print of the same paper about the same
/// order, which a PDF file names in its information. See placeFile() for what is refused.
domain::Result<domain::Done> write(const Paper& paper, const std::filesystem::path& file,
                                   const PaperPlace& place = {});

}  // namespace reports
