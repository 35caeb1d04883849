/// The file that holds the identity key of a laboratory, in a folder of the person who works with
/// the records and never in the records' own: whoever carries the records away has no names.
///
/// "LABORATORY.key", mode 0600, lines of ASCII:
///     framewright-identity-key 1
///     laboratory 32-DIGITS
///     key 64-DIGITS               or:  locked argon2id PASSES BYTES SALT SEALED
/// The second form is locked with a passphrase that is asked for at each start.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>

#include "storage/identity_cipher.h"

namespace storage {

using Cipher = std::shared_ptr<const IdentityCipher>;

/// $FRAMEWRIGHT_KEYS, or framewright-keys/ in the XDG data folder.
std::filesystem::path usualKeyFolder();

/// How the key of records is come by.
struct KeyAccess {
    /// Where key files lie.
    std::filesystem::path folder = usualKeyFolder();
    /// Asked for where the key file is locked; absent: nobody can be asked.
    std::function<domain::Result<Secret>(const std::filesystem::path& file)> passphrase{};
    /// Asked for where there is no key file and the records hold the key locked with the code; the
    /// file is then written anew. Absent: nobody can be asked.
    std::function<domain::Result<Secret>()> recoveryCode{};
    /// A key that is at hand already; no file is looked for where it is the right one.
    Cipher known{};
    /// Open the records all the same when the key is not to be had: names stay unreadable.
    bool mayLack{false};
};

/// The key file of a laboratory.
std::filesystem::path keyFileOf(const std::filesystem::path& folder, const std::string& laboratory);

/// Writes a key file, forced to the disk before it has its name. ErrorCode::Unavailable when there
/// is one already, or the folder lies in `records`, the folder of the records.
domain::Result<domain::Done> writeKeyFile(const std::filesystem::path& folder,
                                          const std::filesystem::path& records,
                                          const std::string& laboratory,
                                          const IdentityCipher& cipher);

/// Locks a key file with a passphrase, or opens it for good where there is none, in one step: the
/// key is in one of the two forms whenever the power fails.
domain::Result<domain::Done> lockKeyFile(const std::filesystem::path& file,
                                         const std::string& laboratory,
                                         const IdentityCipher& cipher,
                                         const std::optional<Secret>& passphrase, HashCost cost);

/// Reads it; nullptr: there is no such file. ErrorCode::Unavailable, with a sentence that names the
/// file: it is no key file of this laboratory, or is locked and the passphrase is not to be had;
/// ErrorCode::Refused: another passphrase.
domain::Result<Cipher> readKeyFile(const KeyAccess& keys, const std::string& laboratory);

}  // namespace storage
