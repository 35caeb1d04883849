/// The verb `bench`: what the bench computes, one calculation a word.
#pragma once

#include "apps/cli/verb.h"

namespace cli {

domain::Result<Exit> bench(const Call& call);

}  // namespace cli
