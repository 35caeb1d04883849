/// The verbs about the trade itself: a prescription file, the rules, the limits, the shade guides.
#pragma once

#include "apps/cli/verb.h"

namespace cli {

domain::Result<Exit> check(const Call& call);
domain::Result<Exit> describeDesign(const Call& call);
domain::Result<Exit> rules(const Call& call);
domain::Result<Exit> limits(const Call& call);
domain::Result<Exit> shades(const Call& call);

}  // namespace cli
