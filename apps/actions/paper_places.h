/// Where papers are written, and what stands at their head.
#pragma once

#include <filesystem>

#include "apps/actions/laboratory.h"
#include "apps/actions/who.h"
#include "reports/paper.h"

namespace actions {

/// The letterhead, now, by this person; about no order yet.
domain::Result<reports::PaperHead> paperHead(const Laboratory& laboratory, const Who& who);

/// papers/NAME.pdf in the laboratory's folder, which is made if it is not there.
domain::Result<std::filesystem::path> writePaper(const Laboratory& laboratory,
                                                 const reports::Paper& paper,
                                                 const std::string& name);

}  // namespace actions
