/// The records of years: many orders with about 14 events each, made by the real decisions. Same
/// count and seed, same orders.
///
/// Three quarters are interim dentures on a short route, one in sixteen a cast framework through
/// all of its stages, some were never accepted, and the newest are in work. Up to 40 are on the
/// benches at a time, so that their entries lie mixed in the ledger as they do in life.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "apps/actions/laboratory.h"
#include "tests/support/hand_clock.h"

namespace bench {

/// What was made, in short: kept in a file beside the records.
struct Made {
    std::int64_t orders{};
    std::int64_t entries{};                        ///< of the ledger, about orders
    std::vector<domain::OrderNumber> inWork{};     ///< each has a stage of the bench due
    std::vector<domain::OrderNumber> delivered{};  ///< some of them
    std::string patient{};                         ///< the name of one, without a reference
};

/// Furnishes the laboratory and makes its orders. `clock`: of the laboratory; left at its today.
domain::Result<Made> makeOrders(const actions::Laboratory& laboratory, support::HandClock& clock,
                                int count, std::uint64_t seed);

/// The last day of the records, on which everything is measured.
domain::Date lastDay();

void write(const Made& made, const std::filesystem::path& folder);
Made readMade(const std::filesystem::path& folder);

}  // namespace bench
