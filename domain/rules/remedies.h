/// Changes of a design that would clear a finding, each tried before it is offered.
///
/// They are offers to the prescriber, who decides: nothing is ever changed by itself.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "domain/rules/rule.h"

namespace domain {

struct Remedy {
    std::string says{};      ///< the change in words, as "relief over the torus"
    Prescription changed{};  ///< the whole prescription, so changed
};

/// How many are offered for one finding.
inline constexpr std::size_t kMostRemedies = 3;

/// Changes that clear the finding and bring no refusal that was not there; none where no change is
/// known. Pure: each is tried on a copy, and the whole examined again. `findings`: all that the
/// examination of the prescription found.
std::vector<Remedy> remediesFor(const Examination& examination,
                                const std::vector<Finding>& findings, const Finding& finding);

}  // namespace domain
