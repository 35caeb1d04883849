/// What papers that leave with a parcel share: what is in it, and how it was disinfected.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "domain/prescription/enclosure.h"
#include "reports/paper.h"

namespace reports {

/// A box to tick for each thing, by whoever opens the parcel.
Block parcelBlock(const std::vector<std::string>& things);

/// Done: a sentence with what and for how long; else a line to write it on.
Block disinfectionBlock(const std::optional<domain::Disinfection>& done);

}  // namespace reports
