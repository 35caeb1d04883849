#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

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

}  // namespace
