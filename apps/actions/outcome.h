/// What an action answers.
#pragma once

#include "domain/production/order.h"

namespace actions {

/// An order after an action. `repeated`: the key had been used for the same, nothing happened this
/// time; `before`: when it was recorded.
struct Outcome {
    domain::Order order;
    bool repeated{};
    std::optional<domain::Instant> before{};
};

/// What came of an action on the laboratory's own things; as of an Outcome.
struct Kept {
    bool repeated{};
    std::optional<domain::Instant> before{};
};

/// "recorded before, at 2026-11-25 08:14 UTC; nothing was done again"
inline std::string recordedBefore(domain::Instant at) {
    return "recorded before, at " + at.text() + "; nothing was done again";
}

}  // namespace actions
