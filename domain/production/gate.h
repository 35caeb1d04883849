/// The gate of a stage: what is still lacking before it counts as done, in the form of findings.
#pragma once

#include "domain/production/order.h"
#include "domain/workshop/workshop.h"

namespace domain {

struct GateView {
    const Order& order;
    Stage stage{};
    const Workshop& workshop;
    PersonCode person;  ///< who wants to pass
    Date today;
    /// What the legal contents of the prescription lack; nullopt: nobody looked.
    const std::optional<std::vector<Finding>>& legal;
};

/// Empty: the gate is open. Each finding says what is lacking, what is required and why.
std::vector<Finding> lackingAt(const GateView& view);

/// "undercuts of tooth 14: not measured; lot of alloy: none recorded": for a refusal.
std::string listed(const std::vector<Finding>& lacking, Notation notation);

}  // namespace domain
