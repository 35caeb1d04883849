/// The edges of the rules: just on this side of a limit or a condition, and just on the other. The
/// cases of the rules say what a rule means; these hold it in its place. Each was a branch no test
/// took, or a change of the program no test noticed.
#pragma once

#include <initializer_list>
#include <optional>
#include <span>
#include <string_view>

#include "domain/rules/finding.h"
#include "tests/rules/rule_cases.h"

namespace edges {

struct Edge {
    std::string_view rule;
    std::string_view name;
    domain::Prescription (*start)();
    void (*change)(domain::Prescription&);
    int times;                                      ///< how often the rule then finds something
    std::optional<domain::Severity> severity = {};  ///< of all it finds, where it is not the row's
    std::string_view says = {};                     ///< is part of all it finds
};

std::span<const Edge> adminEdges();      ///< admin to enclosure, appearance
std::span<const Edge> dentitionEdges();  ///< dentition, design, rest
std::span<const Edge> claspEdges();
std::span<const Edge> frameworkEdges();  ///< indirect, connector, minor, survey, guide
std::span<const Edge> materialEdges();   ///< retention, alloy, base, teeth

inline void order(domain::Prescription& prescription, domain::Appliance appliance) {
    prescription.appliance = appliance;
}

inline void chart(domain::Prescription& prescription, std::initializer_list<domain::Tooth> teeth,
                  domain::ToothState state) {
    for (const domain::Tooth tooth : teeth) prescription.dentition.set(tooth, state);
}

}  // namespace edges
