/// The verbs about who works here and what they prove it with.
#pragma once

#include "apps/cli/verb.h"

namespace cli {

domain::Result<Exit> setUp(const Call& call);
domain::Result<Exit> signIn(const Call& call);
domain::Result<Exit> signOut(const Call& call);
domain::Result<Exit> people(const Call& call);
domain::Result<Exit> password(const Call& call);
domain::Result<Exit> badge(const Call& call);
domain::Result<Exit> stations(const Call& call);

}  // namespace cli
