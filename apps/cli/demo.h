/// The verb `demo`: an invented laboratory, from eight prescriptions to one delivery.
#pragma once

#include "apps/cli/verb.h"

namespace cli {

/// Works in a folder of its own, which must be new or an earlier demo, and never in anybody's
/// records. Refuses if a prescription that must be refused is not.
domain::Result<Exit> demo(const Call& call);

}  // namespace cli
