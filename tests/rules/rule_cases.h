/// The cases of the rules: for every rule a change of a textbook design that breaks it, and one
/// that comes close and keeps it.
#pragma once

#include <algorithm>
#include <span>
#include <string_view>
#include <vector>

#include "domain/prescription/prescription.h"
#include "tests/support/designs.h"

namespace rule_cases {

struct RuleCase {
    std::string_view rule;
    std::string_view name;                  ///< what is changed, as a short sentence
    domain::Prescription (*start)();        ///< a clean design
    void (*breaks)(domain::Prescription&);  ///< the rule's id must be among the findings
    void (*keeps)(domain::Prescription&);   ///< it must not be
};

std::span<const RuleCase> adminCases();      ///< admin, enclosure
std::span<const RuleCase> dentitionCases();  ///< dentition, design, rest
std::span<const RuleCase> claspCases();
std::span<const RuleCase> frameworkCases();  ///< indirect, connector, minor, survey, guide
std::span<const RuleCase> materialCases();   ///< retention to occlusion
std::vector<RuleCase> allCases();

/// The part of a list that lies on a tooth; the design must have one.
template <typename Part>
Part& on(domain::Tooth tooth, std::vector<Part>& parts) {
    return *std::ranges::find(parts, tooth, &Part::tooth);
}

template <typename Part>
void remove(domain::Tooth tooth, std::vector<Part>& parts) {
    std::erase_if(parts, [&](const Part& part) { return part.tooth == tooth; });
}

}  // namespace rule_cases
