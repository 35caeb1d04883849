#include <gtest/gtest.h>

#include <set>

#include "domain/rules/rule.h"
#include "tests/rules/rule_cases.h"

namespace {

using namespace domain;

std::set<std::string_view> ruleIds() {
    std::set<std::string_view> ids;
    for (const Rule* rule : allRules()) ids.insert(rule->id);
    return ids;
}

/// Lower-case words joined by hyphens, a full stop between the subject and the rest.
bool isWellFormed(std::string_view id) {
    const auto dot = id.find('.');
    if (dot == std::string_view::npos || id.find('.', dot + 1) != std::string_view::npos)
        return false;
    for (const std::string_view word : {id.substr(0, dot), id.substr(dot + 1)}) {
        if (word.empty() || word.front() == '-' || word.back() == '-') return false;
        if (word.find_first_not_of("abcdefghijklmnopqrstuvwxyz-") != std::string_view::npos)
            return false;
    }
    return true;
}

bool asks(std::string_view question) {
    return question.starts_with("Please ") || question.find('?') != std::string_view::npos;
}

TEST(EveryRule, HasACaseThatBreaksItAndOneThatKeepsIt) {
    std::set<std::string_view> broken;
    std::set<std::string_view> kept;
    for (const rule_cases::RuleCase& tried : rule_cases::allCases()) {
        if (tried.breaks) broken.insert(tried.rule);
        if (tried.keeps) kept.insert(tried.rule);
    }
    EXPECT_EQ(broken, ruleIds());
    EXPECT_EQ(kept, ruleIds());
}

TEST(EveryRule, HasAnIdOfItsOwnInLowerCaseWords) {
    EXPECT_EQ(ruleIds().size(), allRules().size());
    for (const Rule* rule : allRules()) EXPECT_TRUE(isWellFormed(rule->id)) << rule->id;
}

TEST(EveryRule, SaysWhatMustHoldWhatToAskAndWhereItComesFrom) {
    for (const Rule* rule : allRules()) {
        EXPECT_TRUE(rule->requirement.ends_with('.')) << rule->id;
        EXPECT_TRUE(asks(rule->question)) << rule->id;
        EXPECT_GE(rule->source.size(), std::string_view{"common practice"}.size()) << rule->id;
        EXPECT_NE(rule->check, nullptr) << rule->id;
    }
}

// A wrong refusal costs a day: what rests on one school or on common practice advises.
TEST(EveryRule, ThatRefusesRestsOnLawSafetyDefinitionOrPublishedWork) {
    for (const Rule* rule : allRules()) {
        if (rule->severity == Severity::Caution) continue;
        EXPECT_TRUE(mayRefuse(rule->ground)) << rule->id;
        if (rule->ground != Ground::Published) continue;
        const auto first = rule->source.substr(0, rule->source.find(';'));
        for (const std::string_view weak : {"common practice", "from memory", "secondary source"})
            EXPECT_EQ(first.find(weak), std::string_view::npos) << rule->id;
    }
}

TEST(EveryRule, ThatTheTradeCannotDoWithoutIsThere) {
    const auto ids = ruleIds();
    for (const std::string_view id :
         {"admin.prescriber",         "admin.registration",   "admin.patient-reference",
          "admin.date-issued",        "admin.date-needed",    "admin.signature",
          "admin.description",        "dentition.notation",   "dentition.arch",
          "dentition.complete",       "dentition.partial",    "dentition.replaced-present",
          "dentition.part-on-absent", "rest.bounded-saddle",  "rest.seat",
          "clasp.reciprocation",      "clasp.undercut-given", "clasp.undercut-material",
          "indirect.required",        "connector.given",      "connector.arch",
          "survey.present",           "survey.path",          "retention.kind",
          "retention.all-resin",      "finish-line.both",     "alloy.nickel",
          "alloy.uncommon",           "sensitivity.stated",   "shade.given"})
        EXPECT_TRUE(ids.contains(id)) << id;
}

}  // namespace
