#include "domain/rules/examine.h"

namespace domain {

std::vector<const Rule*> allRules() {
    std::vector<const Rule*> rules;
    for (const auto table : {adminRules(), enclosureRules(), dentitionRules(), restRules(),
                             claspRules(), indirectRules(), connectorRules(), surveyRules(),
                             retentionRules(), materialRules(), appearanceRules()})
        for (const Rule& rule : table) rules.push_back(&rule);
    return rules;
}

std::vector<Finding> examine(const Prescription& prescription, Date today,
                             const HouseLimits& limits) {
    const Examination examination{prescription, today, limits};
    std::vector<Finding> findings;
    Findings places{notationOf(prescription)};
    for (const Rule* rule : allRules()) {
        rule->check(examination, places);
        for (const Findings::Place& place : places.places())
            findings.push_back({.rule = std::string{rule->id},
                                .severity = place.severity.value_or(rule->severity),
                                .tooth = place.tooth,
                                .found = place.found,
                                .requirement = std::string{rule->requirement},
                                .question = std::string{rule->question},
                                .source = std::string{rule->source}});
        places.clear();
    }
    return findings;
}

}  // namespace domain
