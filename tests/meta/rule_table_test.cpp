#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "domain/rules/rule.h"

namespace {

using namespace domain;

std::string contentOf(const std::filesystem::path& file) {
    std::ostringstream content;
    content << std::ifstream{file, std::ios::binary}.rdbuf();
    return content.str();
}

// Whether a finding stops an order is decided once, and an id never changes. A new rule is a new
// line; any other difference wants a reason. The new text is put beside, to look at and to copy.
TEST(TheTableOfRules, HasTheIdsAndSeveritiesOfTheGoldenFileInItsOrder) {
    std::string table;
    for (const Rule* rule : allRules())
        table += std::string{rule->id} + ' ' + std::string{codeOf(rule->severity)} + '\n';
    if (table == contentOf(GOLDEN_RULES)) return;
    const auto beside = std::filesystem::temp_directory_path() / "rules.txt";
    std::ofstream{beside, std::ios::binary} << table;
    ADD_FAILURE() << GOLDEN_RULES << " says something else; if that is meant, replace it by "
                  << beside;
}

TEST(Findings, AreTheSameOnlyIfEverythingOfThemIs) {
    const Finding one{.rule = "clasp.rest",
                      .severity = Severity::Conflict,
                      .tooth = 16_fdi,
                      .found = "no rest",
                      .requirement = "A rest.",
                      .question = "Where?",
                      .source = "common practice"};
    EXPECT_EQ(one, Finding{one});
    std::vector<Finding> others(7, one);
    others[0].rule = "clasp.count";
    others[1].severity = Severity::Caution;
    others[2].tooth = {};
    others[3].found = "two rests";
    others[4].requirement = "Two rests.";
    others[5].question = "Which?";
    others[6].source = "by definition";
    for (const Finding& other : others) EXPECT_NE(one, other) << other.rule;
}

}  // namespace
