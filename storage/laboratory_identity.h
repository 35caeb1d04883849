/// Whose records these are, and their identity key: made with the records, known by a check value,
/// kept in them as the recovery code locks it, so that a backup carries it.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "storage/connection.h"
#include "storage/identity_key_file.h"
#include "storage/transaction.h"

namespace storage {

/// The step of the schema from which on names lie encrypted; its rows are encrypted by
/// beginIdentity().
inline constexpr std::int64_t kIdentityStep = 8;

struct LaboratoryIdentity {
    std::string laboratory{};  ///< 32 random hexadecimal digits
    std::string checkValue{};
    std::optional<std::string> lockedKey{};  ///< none before a recovery code was made
};

/// Under which name the ledger commits to this row, as if it were a secret setting.
inline constexpr std::string_view kIdentitySetting = "identity.key";
/// What it says: SHA-256 over all of it, 64 hexadecimal digits.
std::string identityDigest(const LaboratoryIdentity& identity);

/// nullopt: the records are older than that. ErrorCode::Unavailable when the row is lost.
domain::Result<std::optional<LaboratoryIdentity>> identityOf(Connection& records);

/// Gives records a key, writes its file and encrypts what lies there in clear: sealed texts, what
/// parties are matched by, the key of the badges. Part of the step of the schema that makes room
/// for it.
domain::Result<Cipher> beginIdentity(Transaction& work, const std::filesystem::path& records,
                                     const KeyAccess& keys);

/// The key of records: one at hand, the key file, or by the recovery code, which writes the file
/// anew. ErrorCode::Unavailable, with a sentence that names the file, when there is none or it is
/// another; whatever asking for secrets answers.
domain::Result<Cipher> keyOf(const LaboratoryIdentity& identity,
                             const std::filesystem::path& records, const KeyAccess& keys);

/// Replaces the key as the recovery code locks it; an earlier code opens nothing any more.
domain::Result<domain::Done> putLockedKey(Transaction& work, const std::string& lockedKey);

/// The key locked with a recovery code.
domain::Result<std::string> lockedByRecoveryCode(const IdentityCipher& cipher, const Secret& code,
                                                 const std::string& laboratory, HashCost cost);
/// Whether a code as it was typed is the recovery code: the key it opens, or ErrorCode::Refused;
/// ErrorCode::Unusable when it is none.
domain::Result<Cipher> openedByRecoveryCode(const LaboratoryIdentity& identity,
                                            const Secret& typed);

}  // namespace storage
