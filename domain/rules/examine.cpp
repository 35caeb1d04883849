#include "domain/rules/examine.h"

#include <algorithm>
#include <array>

namespace domain {

namespace {

/// Every table, in the order of the prescription.
std::array<std::span<const Rule>, 12> tables() {
    return {adminRules(),  enclosureRules(), dentitionRules(), restRules(),
            claspRules(),  claspArmRules(),  indirectRules(),  connectorRules(),
            surveyRules(), retentionRules(), materialRules(),  appearanceRules()};
}

Finding findingOf(const Rule& rule, const Findings::Place& place) {
    return {.rule = std::string{rule.id},
            .severity = place.severity.value_or(rule.severity),
            .tooth = place.tooth,
            .found = place.found,
            .requirement = std::string{rule.requirement},
            .question = std::string{rule.question},
            .source = std::string{rule.source}};
}

}  // namespace

std::vector<const Rule*> allRules() {
    std::vector<const Rule*> rules;
    for (const auto table : tables())
        for (const Rule& rule : table) rules.push_back(&rule);
    return rules;
}

const Rule* ruleOf(std::string_view id) {
    const auto rules = allRules();
    const auto found = std::ranges::find(rules, id, &Rule::id);
    return found == rules.end() ? nullptr : *found;
}

bool mayBeKept(const Finding& finding) {
    return finding.severity != Severity::Caution && whyNotKept(finding).empty();
}

std::string_view whyNotKept(const Finding& finding) {
    const Rule* rule = ruleOf(finding.rule);
    // A rule that is gone was none to refuse by.
    if (rule == nullptr) return {};
    switch (rule->ground) {
        case Ground::Law:
            return "the law asks it";
        case Ground::Safety:
            return "it is for the patient's safety";
        case Ground::Definition:
            return "it contradicts itself, or leaves open what is to be made";
        case Ground::Published:
        case Ground::School:
        case Ground::Practice:
            return {};
    }
    return {};
}

std::vector<Finding> examine(const Prescription& prescription, Date today,
                             const HouseLimits& limits, std::span<const ShadeGuide> guides) {
    const Design design = designOf(prescription);
    const Examination examination{prescription, design, today, limits, guides};
    std::vector<Finding> findings;
    Findings places{notationOf(prescription)};
    for (const auto table : tables())
        for (const Rule& rule : table) {
            rule.check(examination, places);
            for (const Findings::Place& place : places.places())
                findings.push_back(findingOf(rule, place));
            places.clear();
        }
    return findings;
}

}  // namespace domain
