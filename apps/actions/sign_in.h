/// Signing in and out: by password, or at a station by badge and PIN.
#pragma once

#include <string>

#include "apps/actions/sessions.h"
#include "storage/secrets.h"

namespace actions {

using Secret = storage::Secret;

/// Proof of having signed in. The token is told once and kept only as its digest.
struct Session {
    domain::PersonCode person;
    std::string token{};
    std::string station{};  ///< empty: at none
};

/// So many failures in a row lock a code, by any proof, for so many minutes of the laboratory's
/// clock. A manager's resetPassword() opens it.
inline constexpr int kFailuresThatLock = 5;
inline constexpr int kLockedMinutes = 15;
/// Signs in by password. The refusal is the same sentence for an unknown person and for a wrong
/// password, takes as long, and is recorded. A password a manager gave is refused until it has
/// been changed, see givePassword(). A station that was not entered is refused once there are any;
/// whoever was signed in at the same station is signed out.
domain::Result<Session> signIn(const Laboratory& laboratory, const domain::PersonCode& person,
                               const Secret& password, const std::string& station);
/// Signs in by a badge and its PIN; likewise, but that a badge nobody has is told from a wrong PIN:
/// its code can be read off it and is no secret, and the tries at the PIN are counted. Where
/// stations have been entered it needs one.
domain::Result<Session> signInAtBench(const Laboratory& laboratory, const Secret& badge,
                                      const Secret& pin, const std::string& station);
/// Ends the session; one that has ended already is no error.
domain::Result<domain::Done> signOut(const Laboratory& laboratory, const Who& who);

}  // namespace actions
