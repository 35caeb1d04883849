/// The prescription sheet: all that was prescribed, drawn and in words, and what is still open.
#pragma once

#include "domain/prescription/prescription.h"
#include "domain/rules/finding.h"
#include "reports/paper.h"

namespace reports {

/// `prescription` with its identity; findings that block are numbered before cautions, by the same
/// numbers on the picture and in the checklist.
Paper prescriptionSheet(const PaperHead& head, const domain::Prescription& prescription,
                        const std::vector<domain::Finding>& findings,
                        const std::vector<FlagOnPaper>& flags,
                        const std::vector<TakenCautions>& taken,
                        const std::vector<KeptOnPaper>& kept);

}  // namespace reports
