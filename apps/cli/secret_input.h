/// Secrets typed by a person: never an argument, which other programs of the machine can read.
#pragma once

#include <string_view>

#include "apps/actions/sign_in.h"

namespace cli {

/// At a terminal it asks, and what is typed is not shown; else the next line of standard input.
/// ErrorCode::Unusable when there is none.
domain::Result<actions::Secret> readSecret(std::string_view what);
/// One that was not there before: at a terminal it is typed twice, and must be the same.
domain::Result<actions::Secret> readNewSecret(std::string_view what);

}  // namespace cli
