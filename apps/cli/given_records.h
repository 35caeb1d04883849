/// What was recorded, as it is typed: options of the verb record.
#pragma once

#include "apps/actions/work.h"
#include "apps/cli/verb.h"

namespace cli {

/// "Agent; 10 min".
domain::Result<domain::Disinfection> disinfectionIn(const std::string& text);

/// `checklist`: the lines --all-ticked stands for; `notation`: that of the order's teeth.
/// ErrorCode::Unusable names the option and what was expected.
domain::Result<std::vector<actions::GivenRecord>> recordsIn(
    const Call& call, const std::vector<std::string>& checklist, domain::Notation notation);

}  // namespace cli
