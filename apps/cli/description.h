/// A derived design on a page, and as JSON.
#pragma once

#include "apps/actions/examination.h"
#include "apps/cli/output.h"

namespace cli {

Page page(const actions::Described& described);
Json json(const actions::Described& described);

/// A figure with so many decimals: "3.10".
std::string fixed(double value, int decimals);

}  // namespace cli
