/// The cautions papers carry; each paper frames those that belong on it.
#pragma once

#include <string>
#include <vector>

#include "domain/prescription/prescription.h"
#include "reports/paper.h"

namespace reports {

/// What the device is made of that can harm who makes it or who wears it.
struct Hazards {
    bool metal{};    ///< a cast, milled or printed alloy
    bool cobalt{};   ///< above 0.1 %
    bool nickel{};   ///< above 0.1 %
    bool monomer{};  ///< methacrylate
};
/// What is not said to be free of methacrylate is taken to contain it.
Hazards hazardsOf(const domain::Prescription& prescription);

/// For who works on it.
std::vector<std::string> benchCautions(const Hazards& hazards);
/// For who wears it, and who looks after the wearer.
std::vector<std::string> wearerCautions(const Hazards& hazards);
std::string infectionCaution();
/// That the prescriber decides, and local law and codes hold.
std::string deferenceCaution();

/// The usual cautions on papers about a prescription, and those this one adds.
CautionFrame cautionFrame(const domain::Prescription& prescription);

}  // namespace reports
