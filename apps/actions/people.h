/// Who works here, and what they prove it with: one function for each thing that happens to them.
///
/// Every one is permitted by Permission::KeepPeople but setUp() and givePassword(), and is recorded
/// in the ledger; secrets never are. What decides who may do what (entering a person or another
/// role, letting one go, and a reset, which opens their account) asks for the password of who does
/// it once more: Who::password. Where somebody's proof is taken away or replaced, all their
/// sessions end at once.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "apps/actions/sign_in.h"
#include "domain/base/date.h"
#include "domain/workshop/person.h"

namespace actions {

/// What a proof must at least be. Length is what counts; nothing else is asked of a password.
inline constexpr std::size_t kFewestPinDigits = 4;
inline constexpr std::size_t kMostPinDigits = 12;
inline constexpr std::size_t kFewestBadgeCharacters = 6;
inline constexpr std::size_t kMostBadgeCharacters = 64;

/// Enters the first person, a manager, with a password, and gives the recovery code, which is told
/// once. Refused once anybody has been entered.
domain::Result<Secret> setUp(const Laboratory& laboratory, const domain::PersonCode& person,
                             const std::vector<domain::Skill>& skills, const Secret& password);

/// Enters a person, or gives one another role and other skills. Refuses the code of somebody who
/// left, one that differs from another's only in capitals, and leaving nobody who manages.
domain::Result<domain::Done> enterPerson(const Laboratory& laboratory,
                                         const domain::PersonCode& person, domain::Role role,
                                         const std::vector<domain::Skill>& skills, const Who& who);
/// The person works here no more: nothing they had opens anything from now on.
domain::Result<domain::Done> personLeaves(const Laboratory& laboratory,
                                          const domain::PersonCode& person, const Who& who);

/// A person replaces their own password, or the one a manager gave them, by proving that one.
/// Wrong ones count as failures to sign in.
domain::Result<domain::Done> givePassword(const Laboratory& laboratory,
                                          const domain::PersonCode& person, const Secret& current,
                                          const Secret& fresh);
/// A new password, told once, that opens nothing until the person has replaced it: nobody else
/// knows the one they work with. Opens a locked code.
domain::Result<Secret> resetPassword(const Laboratory& laboratory, const domain::PersonCode& person,
                                     const Who& who);
/// Gives a badge with its PIN, in the place of any they had. Refuses one that is somebody else's.
domain::Result<domain::Done> giveBadge(const Laboratory& laboratory,
                                       const domain::PersonCode& person, const Secret& badge,
                                       const Secret& pin, const Who& who);
/// A lost badge opens nothing from now on.
domain::Result<domain::Done> revokeBadge(const Laboratory& laboratory,
                                         const domain::PersonCode& person, const Who& who);

/// One person as the manager sees them.
struct PersonLine {
    domain::PersonCode code;
    domain::Person person{};
    bool hasPassword{};
    bool mustChange{};  ///< the password is one a manager gave
    bool hasBadge{};
    std::optional<domain::Instant> lockedUntil{};  ///< locked now
    std::optional<domain::Instant> lastHere{};     ///< when a session of theirs was last used
};
/// Everybody who ever worked here, by code. Anybody may read it: no secret is in it.
domain::Result<std::vector<PersonLine>> people(const Laboratory& laboratory);

}  // namespace actions
