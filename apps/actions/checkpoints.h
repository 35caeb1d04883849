/// Checkpoints: a signed sentence about where the records stand, for a file and for the day sheet.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "apps/actions/laboratory.h"
#include "apps/actions/unit_of_work.h"
#include "apps/actions/verification.h"
#include "storage/checkpoint.h"

namespace actions {

/// Makes the key that checkpoints are signed with: when the laboratory is set up, or for older
/// records at their first checkpoint.
domain::Result<domain::Done> makeSigningKey(const Laboratory& laboratory, UnitOfWork& unit);

struct MadeCheckpoint {
    storage::Checkpoint checkpoint{};
    std::filesystem::path file{};
    std::filesystem::path paper{};  ///< the day sheet, with the same as text and QR code
};

/// `file` empty: papers/checkpoint-DAY-ENTRIES.txt in the laboratory's folder, the day sheet beside
/// it. For who may print papers. Nothing is ever written over.
domain::Result<MadeCheckpoint> makeCheckpoint(const Laboratory& laboratory,
                                              const std::filesystem::path& file, const Who& who);

/// The public key that signs for this laboratory; nullopt before there is one.
domain::Result<std::optional<std::string>> signingKeyOf(const Laboratory& laboratory);

/// Verifies the records, and then compares them with a checkpoint. `publicKey`: as it stands on
/// paper, where it is known; the checkpoint must then be signed by it.
domain::Result<Verification> verifyAgainst(const Laboratory& laboratory,
                                           const std::filesystem::path& file,
                                           const std::optional<std::string>& publicKey);

}  // namespace actions
