#include "apps/actions/credential_check.h"

#include "apps/actions/refusals.h"

namespace actions {
namespace {

using domain::Credential;
using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Instant;
using domain::Result;
using storage::CredentialStore;
using storage::KeptCredentials;

constexpr std::int64_t kMicrosecondsPerMinute = 60'000'000;

Who attempting(const Attempt& attempt) {
    return {.person = attempt.person, .station = attempt.station};
}

const std::string* hashIn(const KeptCredentials& kept, Credential credential) {
    switch (credential) {
        case Credential::Password:
            return kept.passwordHash ? &*kept.passwordHash : nullptr;
        case Credential::Badge:
            return kept.badge ? &kept.badge->pinHash : nullptr;
    }
    return nullptr;
}

void putHash(KeptCredentials& kept, Credential credential, std::string hash) {
    switch (credential) {
        case Credential::Password:
            kept.passwordHash = std::move(hash);
            return;
        case Credential::Badge:
            kept.badge->pinHash = std::move(hash);
            return;
    }
}

/// The credentials with this attempt counted as a failure, until it succeeds.
KeptCredentials counted(KeptCredentials kept, Instant now) {
    if (kept.lockedUntil) {
        kept.failures = 0;
        kept.lockedUntil.reset();
    }
    ++kept.failures;
    if (kept.failures >= kFailuresThatLock)
        kept.lockedUntil =
            Instant::ofMicroseconds(now.microseconds() + kLockedMinutes * kMicrosecondsPerMinute);
    return kept;
}

std::string lockedSentence(const Attempt& attempt, Instant until) {
    return attempt.named + " is locked until " + until.text() + ", after " +
           std::to_string(kFailuresThatLock) +
           " failures in a row; wait, or ask a manager for a new password";
}

Result<KeptCredentials> count(const Laboratory& laboratory, const Attempt& attempt) {
    std::optional<KeptCredentials> after;
    const auto counting =
        perform(laboratory, attempting(attempt), {.command = commandOf({"count"})},
                [&](UnitOfWork& unit) -> Result<Done> {
                    const CredentialStore store{laboratory.records()};
                    auto kept = store.of(attempt.person);
                    if (!kept) return kept.error();
                    after = *kept;
                    if (isReserved(attempt.person)) {
                        after = KeptCredentials{.person = attempt.person};
                        return Done{};
                    }
                    if (kept->lockedUntil && unit.at() < *kept->lockedUntil) return Done{};
                    after = counted(*std::move(kept), unit.at());
                    if (auto put = store.put(unit.transaction(), *after, unit.at()); !put)
                        return put;
                    // Locked by this very attempt: it is still looked at.
                    after->lockedUntil.reset();
                    return Done{};
                });
    if (!counting) return counting.error();
    return *std::move(after);
}

/// What was wrong, for the records.
std::string failureOf(const KeptCredentials& kept, Credential credential, bool worksHere) {
    std::string what = "wrong " + std::string{credential == Credential::Badge ? "PIN" : "password"};
    if (hashIn(kept, credential) == nullptr) what = "none was ever given";
    if (!worksHere) what = "nobody of this code works here";
    what +=
        ", failure " + std::to_string(kept.failures) + " of " + std::to_string(kFailuresThatLock);
    return kept.failures < kFailuresThatLock ? what : what + ": locked";
}

}  // namespace

std::string denied(const Attempt& attempt) {
    const bool badge = attempt.credential == Credential::Badge;
    return attempt.named +
           (badge ? ": not the right PIN; "
                  : ": no such person here, or not the right password; ") +
           std::to_string(kFailuresThatLock) + " failures in a row lock it for " +
           std::to_string(kLockedMinutes) + " minutes";
}

Result<Proved> prove(const Laboratory& laboratory, const Attempt& attempt, const Secret& secret) {
    const auto workshop = laboratory.workshop();
    if (!workshop) return workshop.error();
    const bool worksHere = (*workshop)->worker(attempt.person) != nullptr;
    auto kept = count(laboratory, attempt);
    if (!kept) return kept.error();
    if (kept->lockedUntil) {
        const std::string sentence = lockedSentence(attempt, *kept->lockedUntil);
        return refuse(laboratory, attempting(attempt), attempt.asked,
                      {sentence, "tried while locked", true});
    }
    const std::string* hash = hashIn(*kept, attempt.credential);
    if (hash == nullptr || !worksHere) {
        // As much work as a comparison, so that the time does not tell who works here.
        if (const auto spent = storage::hashOf(secret, laboratory.hashCost()); !spent)
            return spent.error();
    } else if (storage::isHashOf(*hash, secret)) {
        Proved proved{*kept, *kept};
        proved.after.failures = 0;
        if (storage::needsRehash(*hash, laboratory.hashCost())) {
            auto anew = storage::hashOf(secret, laboratory.hashCost());
            if (!anew) return anew.error();
            putHash(proved.after, attempt.credential, *std::move(anew));
        }
        return proved;
    }
    // What locks somebody who works here is always recorded; it comes a few times an hour at most.
    const bool locks = worksHere && kept->failures >= kFailuresThatLock;
    const bool isOfNobody = attempt.asked == kSignIn && !locks;
    return refuse(laboratory, attempting(attempt), attempt.asked,
                  {denied(attempt), failureOf(*kept, attempt.credential, worksHere), isOfNobody});
}

Error mustChange(const Laboratory& laboratory, const Proved& proved) {
    const auto settled = perform(
        laboratory, {.person = proved.after.person}, {.command = commandOf({"must-change"})},
        [&](UnitOfWork& unit) { return settle(laboratory, unit, proved); });
    if (!settled) return settled.error();
    const std::string code = proved.after.person.text();
    return {ErrorCode::Refused, "this password was given to " + code +
                                    " by somebody else; choose your own first: framewright "
                                    "password " +
                                    code};
}

Result<Done> settle(const Laboratory& laboratory, UnitOfWork& work, const Proved& proved) {
    const CredentialStore store{laboratory.records()};
    const auto now = store.of(proved.before.person);
    if (!now) return now.error();
    if (now->passwordHash != proved.before.passwordHash || now->badge != proved.before.badge)
        return Error{ErrorCode::Conflict, "the password or badge of " +
                                              proved.before.person.text() +
                                              " was changed just now; try again"};
    for (const auto& code : domain::enumCodes<Credential>) {
        // The same secret, hashed anew.
        auto digest = storage::credentialDigest(proved.after, code.value);
        if (!digest || digest == storage::credentialDigest(*now, code.value)) continue;
        const domain::CredentialKept kept{code.value, *std::move(digest)};
        if (auto done = work.record({domain::SubjectKind::Person, now->person.text()}, kept); !done)
            return done;
    }
    return store.put(work.transaction(), proved.after, work.at());
}

}  // namespace actions
