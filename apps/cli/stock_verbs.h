/// The verbs about what the laboratory keeps: lots and where they went, equipment, sites, routes.
#pragma once

#include "apps/cli/verb.h"

namespace cli {

domain::Result<Exit> lots(const Call& call);
domain::Result<Exit> trace(const Call& call);
domain::Result<Exit> recall(const Call& call);
domain::Result<Exit> equipment(const Call& call);
domain::Result<Exit> sites(const Call& call);
domain::Result<Exit> routes(const Call& call);
domain::Result<Exit> retention(const Call& call);

}  // namespace cli
