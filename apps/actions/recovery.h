/// The recovery code: printed once when the laboratory is set up, it opens the identity key where
/// its file is lost.
#pragma once

#include "apps/actions/laboratory.h"
#include "storage/secrets.h"
#include "storage/transaction.h"

namespace actions {

/// A new recovery code, with the identity key as it locks it.
struct RecoveryCode {
    storage::Secret code;
    std::string lockedKey;
};

/// Makes one; it opens nothing until it is kept. ErrorCode::Unavailable without the identity key.
domain::Result<RecoveryCode> newRecoveryCode(const Laboratory& laboratory);
/// Keeps it in the records, in the place of any earlier one.
domain::Result<domain::Done> keepRecoveryCode(storage::Transaction& work, const RecoveryCode& code);

/// Where the identity key of the records lies on this machine. ErrorCode::Unavailable.
domain::Result<std::filesystem::path> keyFileOf(const Laboratory& laboratory);

}  // namespace actions
