/// Changing what a person proves who they are with: kept anew, recorded with a digest of it, and
/// every session of theirs ended.
#pragma once

#include <functional>

#include "apps/actions/sign_in.h"
#include "apps/actions/unit_of_work.h"
#include "domain/workshop/workshop_event.h"
#include "storage/credential_store.h"

namespace actions {

inline constexpr std::size_t kFewestPasswordCharacters = 12;
inline constexpr std::size_t kMostPasswordCharacters = 256;

/// ErrorCode::Unusable says how long a password must be.
domain::Result<domain::Done> checkPassword(const Secret& password);

/// What is changed of a person's credentials; its error leaves them as they were.
using CredentialChange =
    std::function<domain::Result<domain::Done>(storage::KeptCredentials& kept)>;

/// Changes one credential as part of a unit of work. `by`: what let them, where it was neither
/// their session nor their present password.
domain::Result<domain::Done> changeCredential(const Laboratory& laboratory, UnitOfWork& work,
                                              const domain::PersonCode& person,
                                              domain::Credential what,
                                              const CredentialChange& change,
                                              std::optional<domain::GivenBy> by = {});

}  // namespace actions
