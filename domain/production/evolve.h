/// What an event makes of an order.
#pragma once

#include "domain/production/order.h"

namespace domain {

/// `order` is nullopt before the first event, which must be Received. Never fails: what could not
/// happen was refused by decide().
Order evolve(std::optional<Order> order, const Event& event);

/// The first stage whose work a changed prescription undoes; nullopt if it undoes none.
std::optional<Stage> firstUndone(const Prescription& before, const Prescription& after);

}  // namespace domain
