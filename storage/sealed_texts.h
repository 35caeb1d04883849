/// Texts that may name people, kept outside the ledger, which holds only their salted digests.
///
/// Erasing one removes its words and its salt: the ledger still verifies, and nobody can find the
/// words again by guessing.
#pragma once

#include <memory>
#include <optional>
#include <string>

#include "domain/production/event.h"
#include "storage/ledger_pass.h"
#include "storage/transaction.h"

namespace storage {

class SealedTexts {
public:
    explicit SealedTexts(Connection& connection) : connection_{connection} {}

    /// The digest is SHA-256 of a byte 1, sixteen random bytes of salt, and the text.
    domain::Result<domain::SealedText> seal(Transaction& transaction,
                                            const std::string& text) const;
    /// nullopt: it was erased. ErrorCode::Unavailable when it is missing or was altered.
    domain::Result<std::optional<std::string>> open(const domain::SealedText& sealed) const;
    domain::Result<domain::Done> erase(Transaction& transaction,
                                       const domain::SealedText& sealed) const;

    /// Every text against its digest, and every digest of the ledger against its text.
    std::unique_ptr<TableCheck> check() const;

private:
    Connection& connection_;
};

}  // namespace storage
