#include <gtest/gtest.h>

#include "domain/rules/examine.h"
#include "tests/rules/rule_cases.h"

namespace {

using namespace domain;
using rule_cases::RuleCase;

std::vector<std::string> idsAfter(const RuleCase& tried, void (*change)(Prescription&)) {
    Prescription prescription = tried.start();
    change(prescription);
    std::vector<std::string> ids;
    for (const Finding& finding : examine(prescription, support::examinationDay()))
        ids.push_back(finding.rule);
    return ids;
}

bool has(const std::vector<std::string>& ids, std::string_view rule) {
    return std::ranges::count(ids, rule) > 0;
}

class EveryRuleCase : public testing::TestWithParam<RuleCase> {};

TEST_P(EveryRuleCase, StartsCleanIsFoundWhenBrokenAndNotWhenKept) {
    const RuleCase& tried = GetParam();
    EXPECT_FALSE(has(idsAfter(tried, [](Prescription&) {}), tried.rule));
    EXPECT_TRUE(has(idsAfter(tried, tried.breaks), tried.rule)) << "not found when broken";
    EXPECT_FALSE(has(idsAfter(tried, tried.keeps), tried.rule)) << "found when kept";
}

std::string testName(const testing::TestParamInfo<RuleCase>& tried) {
    std::string name = std::string{tried.param.rule} + "_" + std::string{tried.param.name};
    for (char& letter : name)
        if (!std::isalnum(static_cast<unsigned char>(letter))) letter = '_';
    return name;
}

INSTANTIATE_TEST_SUITE_P(Rules, EveryRuleCase, testing::ValuesIn(rule_cases::allCases()), testName);

}  // namespace
