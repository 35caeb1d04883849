/// The verbs about the identity key: where it lies, its passphrase, the recovery code, and the way
/// back in by that code.
#pragma once

#include "apps/cli/verb.h"

namespace cli {

domain::Result<Exit> key(const Call& call);
domain::Result<Exit> recover(const Call& call);

}  // namespace cli
