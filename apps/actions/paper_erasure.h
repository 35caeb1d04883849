/// The papers of a purged order: what lies in the laboratory's papers/ is erased, what cannot be is
/// listed for erasure by hand.
#pragma once

#include <filesystem>
#include <vector>

#include "apps/actions/laboratory.h"

namespace actions {

/// Overwrites and removes every print of the order in papers/, and gives their places; nothing
/// where there are none any more. ErrorCode::Unavailable names the one that could not be.
domain::Result<std::vector<std::filesystem::path>> erasePapers(const Laboratory& laboratory,
                                                               const domain::OrderNumber& number);

/// Letters in papers/ about lots the order holds: they may name its patient among others. Copies
/// that were printed to other places are not known here.
domain::Result<std::vector<std::filesystem::path>> lettersAbout(const Laboratory& laboratory,
                                                                const domain::OrderNumber& number);

}  // namespace actions
