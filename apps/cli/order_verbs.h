/// The verbs that read or change the records of a laboratory.
#pragma once

#include "apps/cli/verb.h"

namespace cli {

domain::Result<Exit> log(const Call& call);
domain::Result<Exit> accept(const Call& call);
domain::Result<Exit> flag(const Call& call);
domain::Result<Exit> answer(const Call& call);
domain::Result<Exit> order(const Call& call);
domain::Result<Exit> floor(const Call& call);
domain::Result<Exit> print(const Call& call);
domain::Result<Exit> verify(const Call& call);
domain::Result<Exit> checkpoint(const Call& call);
domain::Result<Exit> letterhead(const Call& call);

domain::Result<Exit> withdraw(const Call& call);
domain::Result<Exit> joinCase(const Call& call);
domain::Result<Exit> remake(const Call& call);
domain::Result<Exit> purge(const Call& call);

}  // namespace cli
