/// The verb clock: whether the machine's clock can be believed, and the date confirmed.
#pragma once

#include "apps/cli/verb.h"

namespace cli {

domain::Result<Exit> clock(const Call& call);

}  // namespace cli
