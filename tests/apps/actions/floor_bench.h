/// A laboratory in which orders are made, with a clock set by hand.
#pragma once

#include "apps/actions/orders.h"
#include "apps/actions/verification.h"
#include "tests/apps/actions/people_bench.h"
#include "tests/support/designs.h"
#include "tests/support/working_laboratory.h"

namespace actions_tests {

class FloorBench : public PeopleBench {
protected:
    FloorBench() : floor_{lab()} {}

    /// The textbook's cast framework of the upper arch, accepted.
    domain::OrderNumber castFramework() { return floor_.accepted(support::upperClassIIIMod1()); }
    domain::Order order(const domain::OrderNumber& number) const { return floor_.order(number); }
    std::int64_t version(const domain::OrderNumber& number) const { return order(number).version; }
    domain::StageStep step(const domain::OrderNumber& number, domain::Stage stage) const {
        const auto steps = order(number).steps;
        return *std::ranges::find(steps, stage, &domain::StageStep::stage);
    }
    std::vector<domain::Event> eventsOf(const domain::OrderNumber& number) const {
        const auto events = storage::Ledger{lab().records()}.eventsOf(number);
        EXPECT_TRUE(events);
        return *events;
    }
    /// What verify finds wrong.
    std::vector<std::string> problems() const {
        const auto verification = actions::verify(lab());
        EXPECT_TRUE(verification);
        return verification->problems;
    }

    support::Floor floor_;
};

}  // namespace actions_tests
