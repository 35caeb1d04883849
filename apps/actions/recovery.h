/// The recovery code, told once when the laboratory is set up: it opens the identity key where its
/// file is lost, and lets a manager back in who cannot sign in. And the passphrase of the key file.
#pragma once

#include <optional>

#include "apps/actions/sign_in.h"
#include "apps/actions/unit_of_work.h"

namespace actions {

/// A new recovery code, with the identity key as it locks it.
struct RecoveryCode {
    Secret code;
    std::string lockedKey;
};

/// Makes one; it opens nothing until it is kept. ErrorCode::Unavailable without the identity key.
domain::Result<RecoveryCode> newRecoveryCode(const Laboratory& laboratory);
/// Keeps it in the records, in the place of any earlier one, and records a digest of the row.
domain::Result<domain::Done> keepRecoveryCode(const Laboratory& laboratory, UnitOfWork& work,
                                              const RecoveryCode& code);

/// Where the identity key of the records lies on this machine. ErrorCode::Unavailable.
domain::Result<std::filesystem::path> keyFileOf(const Laboratory& laboratory);
/// Locks the key file with a passphrase, which is then asked for at each start; none: opens it for
/// good. For who may keep the workshop.
domain::Result<domain::Done> lockKeyFile(const Laboratory& laboratory,
                                         const std::optional<storage::Secret>& passphrase,
                                         const Who& who);

/// A new recovery code in the place of the earlier one, told once and recorded. For who may keep
/// people, with their password given once more: Who::password.
domain::Result<Secret> renewRecoveryCode(const Laboratory& laboratory, const Who& who);
/// A manager who cannot sign in gets a new password by the recovery code, which is recorded.
/// ErrorCode::Refused: not the code, or no manager of this laboratory.
domain::Result<domain::Done> recover(const Laboratory& laboratory, const domain::PersonCode& person,
                                     const Secret& code, const Secret& fresh);

}  // namespace actions
