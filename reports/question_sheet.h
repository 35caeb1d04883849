/// The question sheet: what the dentist must answer before work goes on, to be filled in by hand.
#pragma once

#include <functional>

#include "domain/prescription/prescription.h"
#include "domain/rules/finding.h"
#include "reports/paper.h"

namespace reports {

/// One question for each open flag of the bench and each finding that blocks; cautions follow to
/// be known. Numbers are those of the flags on the picture. `offersFor`: changes that would clear a
/// finding, in words, to be ticked.
using OffersFor = std::function<std::vector<std::string>(const domain::Finding&)>;
Paper questionSheet(const PaperHead& head, const domain::Prescription& prescription,
                    const std::vector<domain::Finding>& findings,
                    const std::vector<FlagOnPaper>& flags, const OffersFor& offersFor);

/// Whether there is anything to ask.
bool hasQuestions(const std::vector<domain::Finding>& findings,
                  const std::vector<FlagOnPaper>& flags);

}  // namespace reports
