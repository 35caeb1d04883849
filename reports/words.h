/// A prescription in readable words, subject by subject; private to this folder.
#pragma once

#include "domain/prescription/prescription.h"
#include "domain/rules/finding.h"
#include "reports/paper.h"
#include "reports/phrases.h"

namespace reports {

/// "14, 15" in the prescription's own notation.
std::string teethText(const std::vector<domain::Tooth>& teeth, domain::Notation notation);
/// "nickel, latex", "none known", or that it is not given.
std::string sensitivityText(const domain::Sensitivities& sensitivities);
/// "Tooth 14", or "Whole denture".
std::string placeText(const domain::Finding& finding, domain::Notation notation);
/// "III mod 1 (upper), tooth supported, cobalt-chromium framework": the case in one line.
std::string caseText(const domain::Prescription& prescription);

std::vector<Block> partyBlocks(const domain::Prescription& prescription);
std::vector<Block> designBlocks(const domain::Prescription& prescription);
std::vector<Block> materialBlocks(const domain::Prescription& prescription);
std::vector<Block> surveyBlocks(const domain::Prescription& prescription);
std::vector<Block> enclosureBlocks(const domain::Prescription& prescription);

/// Missing first, then conflicts, then cautions, each in the order of the rules; without what is
/// kept as prescribed.
std::vector<domain::Finding> inSheetOrder(const std::vector<domain::Finding>& findings);

}  // namespace reports
