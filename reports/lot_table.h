/// Which material of which lot is in a device; shared by the papers that name lots.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "reports/paper.h"

namespace reports {

struct LotLine {
    std::string part{};      ///< "framework"
    std::string material{};  ///< by its trade description
    std::string maker{};
    std::string lot{};
    std::optional<std::string> composition{};  ///< shares of the ingredients, or the certificate
};

/// A table, or a sentence where no lot is recorded.
Block lotBlock(const std::vector<LotLine>& lots);

}  // namespace reports
