/// Texts that may name people, kept encrypted outside the ledger, which holds only their salted
/// digests.
///
/// Salt and words lie under the identity key, so that nobody who has the records alone can find the
/// words by guessing. Erasing one removes both: the ledger still verifies, and nobody can find the
/// words again at all.
#pragma once

#include <memory>
#include <optional>
#include <string>

#include "domain/production/event.h"
#include "storage/identity_cipher.h"
#include "storage/ledger_pass.h"
#include "storage/transaction.h"

namespace storage {

class SealedTexts {
public:
    explicit SealedTexts(Connection& connection) : connection_{connection} {}

    /// The digest is SHA-256 of a byte 1, sixteen random bytes of salt, and the text.
    domain::Result<domain::SealedText> seal(Transaction& transaction,
                                            const std::string& text) const;
    /// nullopt: it was erased. ErrorCode::Unavailable when it is missing or was altered, or the
    /// identity key is not at hand.
    domain::Result<std::optional<std::string>> open(const domain::SealedText& sealed) const;
    /// Its words go; that it was there remains.
    domain::Result<domain::Done> erase(Transaction& transaction,
                                       const domain::SealedText& sealed) const;
    /// As if it had never been sealed: for one that no event took up.
    domain::Result<domain::Done> remove(Transaction& transaction,
                                        const domain::SealedText& sealed) const;

    /// Every text against its digest, and every digest of the ledger against its text. Without the
    /// identity key the words are not looked at.
    std::unique_ptr<TableCheck> check() const;

private:
    Connection& connection_;
};

/// Encrypts the texts of records that had no key before, and overwrites them.
domain::Result<domain::Done> encryptTexts(Transaction& work, const IdentityCipher& cipher);

}  // namespace storage
