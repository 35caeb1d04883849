#include "domain/rules/finding.h"

#include <algorithm>

namespace domain {

bool blocks(const std::vector<Finding>& findings) {
    return std::ranges::any_of(
        findings, [](const Finding& finding) { return finding.severity != Severity::Caution; });
}

}  // namespace domain
