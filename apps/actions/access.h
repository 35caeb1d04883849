/// Who may act: sessions, and the one question every action asks before it does anything.
#pragma once

#include <cstdint>
#include <string>

#include "apps/actions/laboratory.h"
#include "apps/actions/who.h"
#include "domain/workshop/person.h"
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
/// How long a session may rest before it ends, unless the laboratory sets another limit.
inline constexpr int kUsualIdleMinutes = 15;
inline constexpr int kMostIdleMinutes = 720;

/// Signs in by password. The refusal is the same sentence for an unknown person and for a wrong
/// password, takes as long, and is recorded. A password a manager gave is refused until it has
/// been changed, see givePassword(). A station that was not entered is refused once there are any;
/// whoever was signed in at the same station is signed out.
domain::Result<Session> signIn(const Laboratory& laboratory, const domain::PersonCode& person,
                               const Secret& password, const std::string& station);
/// Signs in by a badge and its PIN; likewise. Where stations have been entered it needs one.
domain::Result<Session> signInAtBench(const Laboratory& laboratory, const Secret& badge,
                                      const Secret& pin, const std::string& station);
/// Ends the session; one that has ended already is no error.
domain::Result<domain::Done> signOut(const Laboratory& laboratory, const Who& who);

/// The person, if they are signed in, work here, and their role may. Counts as use of the session.
/// Every refusal says what to do or which roles may, and is recorded in a transaction of its own:
/// to be called before the caller begins one.
domain::Result<domain::Person> authorise(const Laboratory& laboratory, const Who& who,
                                         domain::Permission permission);
/// Counts as use without doing anything, as when somebody types. Refused when the session ended.
domain::Result<domain::Done> use(const Laboratory& laboratory, const Who& who);

/// Ends every session that rested too long, and says how many.
domain::Result<std::int64_t> lockIdle(const Laboratory& laboratory);
domain::Result<int> idleMinutes(const Laboratory& laboratory);
/// 1 to kMostIdleMinutes; for who may keep the workshop.
domain::Result<domain::Done> writeIdleMinutes(const Laboratory& laboratory, int minutes,
                                              const Who& who);

}  // namespace actions
