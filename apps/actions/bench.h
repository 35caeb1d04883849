/// What the bench hands in to be judged; what it only computes is asked of the domain itself.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "domain/base/result.h"
#include "domain/materials/cure_log.h"
#include "domain/production/stage_record.h"

namespace actions {

/// A judged cure, and which file it was read from.
struct JudgedCure {
    domain::CureReport report;
    std::size_t readings{};
    std::string digest;  ///< SHA-256 of the file's bytes, 64 hexadecimal digits
};

/// Reads a cure log and judges it. ErrorCode::Unusable names file, line and what was expected; a
/// cure that did not keep its cycle is no error but a report with complaints.
domain::Result<JudgedCure> judgeCureLog(const std::filesystem::path& file, domain::CureCycle cycle,
                                        std::optional<domain::Microns> thickest);

/// What is put on record of a judged cure: the log and whether it kept its cycle, and every
/// complaint in its words.
std::vector<domain::StageRecord> recordsOf(const JudgedCure& judged);

}  // namespace actions
