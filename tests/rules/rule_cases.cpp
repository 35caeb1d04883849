#include "tests/rules/rule_cases.h"

namespace rule_cases {

std::vector<RuleCase> allCases() {
    std::vector<RuleCase> all;
    for (const auto table :
         {adminCases(), dentitionCases(), claspCases(), frameworkCases(), materialCases()})
        all.insert(all.end(), table.begin(), table.end());
    return all;
}

}  // namespace rule_cases
