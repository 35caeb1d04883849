/// Transitions at the bench, as the measurements need them: one after the other on the same order.
#pragma once

#include <optional>

#include "apps/actions/laboratory.h"
#include "apps/actions/work.h"

namespace bench {

/// Records everything the gate of the stage in hand asks for.
domain::Result<actions::Outcome> recordAll(const actions::Laboratory& laboratory,
                                           const domain::Order& order, const actions::Who& who);

/// Starts the stage due of one order, records, begins the stage again, and so on without end.
class Turns {
public:
    explicit Turns(domain::OrderNumber number) : number_{std::move(number)} {}

    /// The next transition; the same again after a refusal.
    domain::Result<domain::Done> next(const actions::Laboratory& laboratory,
                                      const actions::Who& who);

private:
    domain::OrderNumber number_;
    std::optional<domain::Order> order_{};  ///< as the last transition left it
    int phase_{};
};

}  // namespace bench
