#include "apps/actions/recovery.h"

#include "apps/actions/credential_change.h"
#include "apps/actions/sessions.h"
#include "storage/laboratory_identity.h"
#include "storage/recovery_code.h"

namespace actions {
namespace {

using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::PersonCode;
using domain::Result;

constexpr std::string_view kRecover = "recover";

bool manages(const domain::Workshop& workshop, const PersonCode& person) {
    const auto known = workshop.people.find(person);
    return known != workshop.people.end() && !known->second.left &&
           known->second.role == domain::Role::Manager;
}

Result<storage::LaboratoryIdentity> identityOf(const Laboratory& laboratory) {
    auto identity = storage::identityOf(laboratory.records());
    if (!identity) return identity.error();
    if (*identity) return **std::move(identity);
    return Error{ErrorCode::Unavailable, "these records have no identity key"};
}

}  // namespace

Result<RecoveryCode> newRecoveryCode(const Laboratory& laboratory) {
    const auto identity = identityOf(laboratory);
    if (!identity) return identity.error();
    const auto cipher = laboratory.records().identity();
    if (!cipher) return cipher.error();
    const Secret code = storage::newRecoveryCode();
    auto locked =
        storage::lockedByRecoveryCode(**cipher, code, identity->laboratory, laboratory.hashCost());
    if (!locked) return locked.error();
    return RecoveryCode{code, *std::move(locked)};
}

Result<Done> keepRecoveryCode(const Laboratory& laboratory, UnitOfWork& work,
                              const RecoveryCode& code) {
    if (auto done = storage::putLockedKey(work.transaction(), code.lockedKey); !done) return done;
    const auto identity = identityOf(laboratory);
    if (!identity) return identity.error();
    const std::string name{storage::kIdentitySetting};
    return work.record(
        {domain::SubjectKind::Setting, name.substr(0, name.find('.'))},
        domain::SettingSet{
            .name = name, .now = storage::identityDigest(*identity), .isSecret = true});
}

Result<std::filesystem::path> keyFileOf(const Laboratory& laboratory) {
    const auto identity = identityOf(laboratory);
    if (!identity) return identity.error();
    return storage::keyFileOf(laboratory.keyFolder(), identity->laboratory);
}

Result<Done> lockKeyFile(const Laboratory& laboratory, const std::optional<Secret>& passphrase,
                         const Who& who) {
    if (const auto allowed = authorise(laboratory, who, domain::Permission::KeepWorkshop); !allowed)
        return allowed.error();
    if (passphrase)
        if (auto fit = checkPassword(*passphrase); !fit) return fit;
    const auto identity = identityOf(laboratory);
    if (!identity) return identity.error();
    const auto cipher = laboratory.records().identity();
    if (!cipher) return cipher.error();
    return storage::lockKeyFile(storage::keyFileOf(laboratory.keyFolder(), identity->laboratory),
                                identity->laboratory, **cipher, passphrase, laboratory.hashCost());
}

Result<Secret> renewRecoveryCode(const Laboratory& laboratory, const Who& who) {
    const auto fresh = newRecoveryCode(laboratory);
    if (!fresh) return fresh.error();
    const auto kept = perform(
        laboratory, who, {domain::Permission::KeepPeople, commandOf({"recovery-code"}), {}, true},
        [&](UnitOfWork& work) { return keepRecoveryCode(laboratory, work, *fresh); });
    if (!kept) return kept.error();
    if (kept->repeated)
        return Error{ErrorCode::Refused, "this was done before, " + kept->before->text() +
                                             ": the code was told then; take another key for a "
                                             "new one"};
    return fresh->code;
}

Result<Done> recover(const Laboratory& laboratory, const PersonCode& person, const Secret& code,
                     const Secret& fresh) {
    if (auto fit = checkPassword(fresh); !fit) return fit;
    const auto workshop = laboratory.workshop();
    if (!workshop) return workshop.error();
    if ((*workshop)->people.empty()) return notSetUp();
    const auto identity = identityOf(laboratory);
    if (!identity) return identity.error();
    if (const auto opened = storage::openedByRecoveryCode(*identity, code); !opened) {
        if (opened.error().code != ErrorCode::Refused) return opened.error();
        return refuse(laboratory, {.person = person}, kRecover,
                      {opened.error().message, "not the recovery code"});
    }
    if (!manages(**workshop, person))
        return refuse(laboratory, {.person = person}, kRecover,
                      {person.text() + " is no manager of this laboratory, and the recovery code "
                                       "lets managers in",
                       "no manager"});
    const auto hash = storage::hashOf(fresh, laboratory.hashCost());
    if (!hash) return hash.error();
    const auto kept =
        perform(laboratory, {.person = person}, {.command = commandOf({std::string{kRecover}})},
                [&](UnitOfWork& work) {
                    return changeCredential(
                        laboratory, work, person, domain::Credential::Password,
                        [&](storage::KeptCredentials& next) -> Result<Done> {
                            next.passwordHash = *hash;
                            next.mustChange = false;
                            next.failures = 0;
                            next.lockedUntil.reset();
                            return Done{};
                        },
                        domain::GivenBy::RecoveryCode);
                });
    if (!kept) return kept.error();
    return Done{};
}

}  // namespace actions
