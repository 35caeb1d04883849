/// The HMAC key of the laboratory: its digests of badges, commands and prescriptions say nothing to
/// anybody who does not have it. It lies in the records under the identity key.
#pragma once

#include "apps/actions/laboratory.h"
#include "apps/actions/unit_of_work.h"
#include "storage/secrets.h"

namespace actions {

/// Where refusals of badges nobody has are recorded; no person may have this code.
inline constexpr std::string_view kUnknownBadge = "unknown-badge";

/// What the keys of scans begin with, and those made of a prescription.
inline constexpr std::string_view kScanKey = "scan-";
inline constexpr std::string_view kPrescriptionKey = "prescription-";

/// Makes the key, when the laboratory is set up.
domain::Result<domain::Done> makeLaboratoryKey(const Laboratory& laboratory, UnitOfWork& work);
/// The digest of a badge here. ErrorCode::Unavailable when the key is lost.
domain::Result<std::string> digestOfBadge(const Laboratory& laboratory,
                                          const storage::Secret& badge);
/// The digest of a command here; empty before the laboratory is set up.
domain::Result<std::string> digestOfCommand(const Laboratory& laboratory,
                                            const std::string& command);
/// An idempotency key as it is kept: a UUID or a digest names nobody and stays; of any other a
/// keyed digest. What it begins with of the above stays.
domain::Result<std::string> keptKey(const Laboratory& laboratory, const std::string& key);

}  // namespace actions
