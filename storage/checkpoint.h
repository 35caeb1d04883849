/// Checkpoints: where the ledger and the access log stood at a time, signed, to be kept where
/// nobody who can change the records can change it. Later records that do not hold what it says are
/// not the same.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "domain/base/date.h"
#include "storage/ledger_chain.h"
#include "storage/transaction.h"

namespace storage {

struct Checkpoint {
    domain::Instant at{};
    ChainHead ledger{};
    ChainHead access{};
    std::string publicKey{};  ///< that checks the signature, 64 hexadecimal digits
    friend bool operator==(const Checkpoint&, const Checkpoint&) = default;
};

/// Where the records stand; the key is left empty.
domain::Result<Checkpoint> checkpointNow(Connection& connection, domain::Instant at);

/// Six lines, "framewright checkpoint 1", "at", "ledger", "access", "key" and "signature", which is
/// Ed25519 over the five before it. `seed`: see signature.h.
std::string writeCheckpoint(const Checkpoint& checkpoint, const std::string& seed);
/// ErrorCode::Unusable where it is none, or was altered since it was signed.
domain::Result<Checkpoint> readCheckpoint(const std::string& text);

/// What records that hold true by themselves say otherwise than a checkpoint, one sentence each:
/// another history, a tail that was cut, an older state that was put back, another key.
/// `ownKey`: the public key of the records; nullopt: they have none.
domain::Result<std::vector<std::string>> checkpointDifferences(
    Connection& connection, const Checkpoint& checkpoint, const std::optional<std::string>& ownKey);

}  // namespace storage
