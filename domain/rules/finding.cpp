#include "domain/rules/finding.h"

#include <algorithm>

namespace domain {

bool refuses(const Finding& finding) noexcept {
    return finding.severity != Severity::Caution && !finding.kept;
}

bool blocks(const std::vector<Finding>& findings) { return std::ranges::any_of(findings, refuses); }

}  // namespace domain
