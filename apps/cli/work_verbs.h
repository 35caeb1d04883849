/// The verbs of the bench: scan, start, record, done, return, redo, and work that goes out.
#pragma once

#include "apps/cli/verb.h"

namespace cli {

domain::Result<Exit> scan(const Call& call);
domain::Result<Exit> start(const Call& call);
domain::Result<Exit> done(const Call& call);
domain::Result<Exit> record(const Call& call);
domain::Result<Exit> gate(const Call& call);
domain::Result<Exit> takeReturn(const Call& call);
domain::Result<Exit> redo(const Call& call);
domain::Result<Exit> sendOut(const Call& call);
domain::Result<Exit> takeBack(const Call& call);
domain::Result<Exit> statement(const Call& call);

}  // namespace cli
