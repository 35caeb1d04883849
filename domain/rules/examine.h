/// Runs every rule over a prescription and collects everything; it never stops at the first.
#pragma once

#include "domain/rules/rule.h"

namespace domain {

/// Every finding of every rule, in table order. Pure: the day, the limits of the laboratory and its
/// shade guides come in as arguments.
std::vector<Finding> examine(const Prescription& prescription, Date today,
                             const HouseLimits& limits = {},
                             std::span<const ShadeGuide> guides = shippedGuides());

}  // namespace domain
