/// What an action on an order answers.
#pragma once

#include "domain/production/order.h"

namespace actions {

/// An order after an action. `repeated`: the key had been used, nothing happened this time.
struct Outcome {
    domain::Order order;
    bool repeated{};
};

}  // namespace actions
