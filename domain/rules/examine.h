/// Runs every rule over a prescription and collects everything; it never stops at the first.
#pragma once

#include "domain/rules/rule.h"

namespace domain {

/// Every finding of every rule, in table order. Pure: the day comes in as an argument.
std::vector<Finding> examine(const Prescription& prescription, Date today,
                             const HouseLimits& limits = {});

}  // namespace domain
