/// Who makes a call, and the session they made before: the file sessions/CODE of the laboratory's
/// folder, which only its owner may read.
#pragma once

#include "apps/actions/sign_in.h"
#include "apps/cli/verb.h"

namespace cli {

/// --as or $FRAMEWRIGHT_AS, --key, --station or $FRAMEWRIGHT_STATION, --seen; the session's token
/// from $FRAMEWRIGHT_SESSION or from its file. ErrorCode::Unusable when it is nobody.
domain::Result<actions::Who> whoOf(const Call& call);
/// --station or $FRAMEWRIGHT_STATION; empty: at none. ErrorCode::Unusable: it is no short code.
domain::Result<std::string> stationOf(const Call& call);

/// Keeps the token for the calls to come. ErrorCode::Unavailable.
domain::Result<domain::Done> keepSession(const Call& call, const actions::Session& session);
void forgetSession(const Call& call, const domain::PersonCode& person);

}  // namespace cli
