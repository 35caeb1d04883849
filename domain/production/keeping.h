/// What the prescriber keeps as prescribed: the signed answer that opens a finding which refuses.
///
/// It opens what rests on published work. What rests on law, on the patient's safety or on what the
/// words mean can only be answered otherwise.
#pragma once

#include "domain/base/result.h"
#include "domain/rules/finding.h"

namespace domain {

/// One line of the answer.
struct Keep {
    std::string rule{};
    std::optional<Tooth> tooth{};  ///< nullopt: wherever the rule found something
    SealedText words{};            ///< why, as the prescriber wrote
};

/// The findings, those marked that are kept. ErrorCode::Refused where a line names no finding, a
/// caution, or one that cannot be kept; it says which and why.
Result<std::vector<Finding>> keptAsPrescribed(std::vector<Finding> findings,
                                              const std::vector<Keep>& keeps,
                                              const PersonCode& recordedBy, Date day,
                                              Notation notation);

/// What was kept before stays so where exactly the same is found again.
std::vector<Finding> stillKept(std::vector<Finding> found, const std::vector<Finding>& before);

}  // namespace domain
