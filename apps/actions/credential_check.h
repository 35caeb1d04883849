/// Proving who one is: one attempt at a password or a PIN, counted before it is looked at.
#pragma once

#include "apps/actions/sign_in.h"
#include "apps/actions/unit_of_work.h"
#include "domain/workshop/workshop_event.h"
#include "storage/credential_store.h"

namespace actions {

/// What an attempt is for, as refusals are recorded: this, or a permission.
inline constexpr std::string_view kSignIn = "sign-in";

/// An attempt at a secret.
struct Attempt {
    domain::PersonCode person;
    domain::Credential credential{};  ///< Badge: the PIN of theirs
    std::string named{};              ///< how refusals call what was tried: "JT", "this badge"
    std::string station{};
    std::string asked{kSignIn};
};

/// An attempt that succeeded: the credentials it was made against, and what they are to be now:
/// without failures, and with a hash at today's cost.
struct Proved {
    storage::KeptCredentials before;
    storage::KeptCredentials after;
};

/// Counts the attempt first, so that however many are made at once, no more than five are free.
domain::Result<Proved> prove(const Laboratory& laboratory, const Attempt& attempt,
                             const Secret& secret);
/// Keeps what a successful attempt leads to. ErrorCode::Conflict when the credentials were changed
/// while it was looked at.
domain::Result<domain::Done> settle(const Laboratory& laboratory, UnitOfWork& work,
                                    const Proved& proved);
/// The right password, but one that somebody else gave: the failures are forgotten, and it opens
/// nothing before they have chosen their own.
domain::Error mustChange(const Laboratory& laboratory, const Proved& proved);
/// The sentence for what was wrong, whatever it was.
std::string denied(const Attempt& attempt);

}  // namespace actions
