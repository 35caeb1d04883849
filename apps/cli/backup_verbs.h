/// The verbs about backups: make one, come back from one, and show by a drill that it works.
#pragma once

#include "apps/cli/verb.h"

namespace cli {

domain::Result<Exit> backup(const Call& call);
domain::Result<Exit> restore(const Call& call);
domain::Result<Exit> drill(const Call& call);

}  // namespace cli
