/// Who makes a call, and the session they made before.
#pragma once

#include "apps/actions/who.h"
#include "apps/cli/verb.h"

namespace cli {

/// --as or $FRAMEWRIGHT_AS, or whoever is signed in at this terminal; --key, --station or
/// $FRAMEWRIGHT_STATION, --seen; the session's token from $FRAMEWRIGHT_SESSION or of this terminal.
/// ErrorCode::Unusable when it is nobody.
domain::Result<actions::Who> whoOf(const Call& call);
/// Likewise; asks for their password, see readSecret(): for what asks for it once more.
domain::Result<actions::Who> provenWhoOf(const Call& call);
/// Forgets the session of this terminal where it is theirs.
void forgetSessionOf(const Call& call, const domain::PersonCode& person);
/// --station or $FRAMEWRIGHT_STATION; empty: at none. ErrorCode::Unusable: it is no short code.
domain::Result<std::string> stationOf(const Call& call);

}  // namespace cli
