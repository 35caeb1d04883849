#include "domain/rules/examine.h"

#include <algorithm>

namespace domain {

std::span<const Rule* const> allRules() {
    static const std::vector<const Rule*> kRules = [] {
        std::vector<const Rule*> rules;
        for (const auto table :
             {adminRules(), enclosureRules(), dentitionRules(), restRules(), claspRules(),
              claspArmRules(), indirectRules(), connectorRules(), surveyRules(), retentionRules(),
              materialRules(), appearanceRules()})
            for (const Rule& rule : table) rules.push_back(&rule);
        return rules;
    }();
    return kRules;
}

const Rule* ruleOf(std::string_view id) {
    const auto rules = allRules();
    const auto found = std::ranges::find(rules, id, [](const Rule* rule) { return rule->id; });
    return found == rules.end() ? nullptr : *found;
}

std::vector<Finding> examine(const Prescription& prescription, Date today,
                             const HouseLimits& limits, std::span<const ShadeGuide> guides) {
    const Design design = designOf(prescription);
    const Examination examination{prescription, design, today, limits, guides};
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
