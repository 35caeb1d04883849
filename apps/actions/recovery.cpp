#include "apps/actions/recovery.h"

#include "storage/laboratory_identity.h"
#include "storage/recovery_code.h"

namespace actions {
namespace {

using domain::Error;
using domain::ErrorCode;
using domain::Result;

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
    const storage::Secret code = storage::newRecoveryCode();
    auto locked =
        storage::lockedByRecoveryCode(**cipher, code, identity->laboratory, laboratory.hashCost());
    if (!locked) return locked.error();
    return RecoveryCode{code, *std::move(locked)};
}

Result<domain::Done> keepRecoveryCode(storage::Transaction& work, const RecoveryCode& code) {
    return storage::putLockedKey(work, code.lockedKey);
}

Result<std::filesystem::path> keyFileOf(const Laboratory& laboratory) {
    const auto identity = identityOf(laboratory);
    if (!identity) return identity.error();
    return storage::keyFileOf(laboratory.keyFolder(), identity->laboratory);
}

}  // namespace actions
