/// The prescription file: our own JSON, one file for one prescription, read strictly.
///
/// Its fields are those of domain/prescription/fields.h; its schema is
/// storage/files/prescription.schema.json. Lengths, angles, shares and times are written with their
/// unit ("0.25 mm", "4.5 deg", "0.1 %", "10 min"), teeth in the notation the file declares. An
/// unknown field, a field given twice, another unit, bad UTF-8, or a value out of range is refused
/// with the file, the line, the field's path, and what was expected.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "domain/base/result.h"
#include "domain/prescription/prescription.h"

namespace storage {

/// The word in the first field of the file; a change of meaning gets a new one.
inline constexpr std::string_view kPrescriptionFormat = "framewright-prescription-1";

/// Larger files are refused unread: a full prescription has about ten thousand bytes.
inline constexpr std::size_t kLargestPrescription = 1'000'000;

/// Reads a file. Refuses a folder, an empty or an oversized file by name. ErrorCode::Unusable.
domain::Result<domain::Prescription> loadPrescription(const std::filesystem::path& file);

/// Reads the text of a file; `fileName` is what messages call it.
domain::Result<domain::Prescription> readPrescription(std::string_view text,
                                                      std::string_view fileName);

/// Canonical text: fixed order, two spaces, open fields left out; the same prescription always
/// gives the same bytes, and reading them gives the same prescription.
std::string writePrescription(const domain::Prescription& prescription);

/// The JSON Schema (draft 2020-12) of the file, from the same description of the fields.
std::string prescriptionSchema();

}  // namespace storage
