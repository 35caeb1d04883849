/// Named texts the laboratory sets for itself, as the lines of its letterhead.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "storage/identity_cipher.h"
#include "storage/transaction.h"

namespace storage {

class SettingsStore {
public:
    explicit SettingsStore(Connection& connection) : connection_{connection} {}

    /// nullopt: never set.
    domain::Result<std::optional<std::string>> find(std::string_view name) const;
    domain::Result<domain::Done> put(Transaction& transaction, std::string_view name,
                                     const std::string& value) const;

    /// Likewise for a secret, which lies encrypted under the identity key.
    /// ErrorCode::Unavailable when it was altered or the key is not at hand.
    domain::Result<std::optional<std::string>> findSecret(std::string_view name) const;
    domain::Result<domain::Done> putSecret(Transaction& transaction, std::string_view name,
                                           const std::string& value) const;

private:
    Connection& connection_;
};

/// The setting that holds the HMAC key of badges and commands, a secret.
inline constexpr std::string_view kHmacKeySetting = "access.badge-key";

/// Encrypts the secrets among the settings of records that had no key before.
domain::Result<domain::Done> encryptSettings(Transaction& work, const IdentityCipher& cipher);
/// Its value; nullopt before the laboratory is set up.
domain::Result<std::optional<std::string>> hmacKeyOf(Connection& connection);
/// What the ledger says of a secret setting: SHA-256 of what is stored, 64 hexadecimal digits. The
/// key is 256 random bits, so that nobody finds it by guessing.
std::string settingDigest(std::string_view name, const std::string& stored);

}  // namespace storage
