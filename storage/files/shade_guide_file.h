/// A shade guide as a table of comma-separated values: a line "tab,L*,a*,b*", then one line a tab.
///
/// RFC 4180 without quotes: a tab has no comma in its name. The three figures may be left out
/// together ("A1,,,"): the tab is then not measured.
#pragma once

#include <filesystem>
#include <string_view>

#include "domain/base/result.h"
#include "domain/materials/shade_guide.h"

namespace storage {

/// The tabs of a file. ErrorCode::Unusable names file, line, and what was expected.
domain::Result<std::vector<domain::ShadeTab>> loadShadeTabs(const std::filesystem::path& file);
domain::Result<std::vector<domain::ShadeTab>> readShadeTabs(std::string_view text,
                                                            std::string_view fileName);

}  // namespace storage
