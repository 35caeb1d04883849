/// The floor: orders with their labels and where they stand, a page at a time, and searches.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "apps/actions/laboratory.h"
#include "domain/production/order.h"

namespace actions {

/// One line of the floor.
struct FloorLine {
    domain::OrderNumber number;
    std::string description{};  ///< "upper, III mod 1, Co-Cr"
    domain::OrderStatus status{};
    std::optional<domain::Stage> stage{};  ///< the one due or in hand
    std::optional<domain::StageStatus> stageStatus{};
    domain::WaitsFor waitsFor{};
    std::string holdUp{};  ///< "2 questions", "survey: in hand"
    std::optional<domain::Date> due{};
    domain::Instant receivedAt{};
    domain::Instant changedAt{};
    std::string patient{};     ///< reference or name; the code where the identity was erased
    std::string prescriber{};  ///< likewise
    std::optional<domain::OrderNumber> caseLeader{};
    domain::Instant waitingSince{};
    std::int64_t laboratoryTime{};  ///< microseconds the laboratory had it so far
};

/// So many lines make a page.
inline constexpr std::size_t kFloorPage = 100;

/// A page of open orders, what is due first at the top: those that come after one that was seen, or
/// the first. Fewer than `most`: there are no more. ErrorCode::Unusable when there is no such
/// order.
domain::Result<std::vector<FloorLine>> floorPage(
    const Laboratory& laboratory, const std::optional<domain::OrderNumber>& after = {},
    std::size_t most = kFloorPage);
/// A page of closed orders, the newest number first: those below one, or the newest.
domain::Result<std::vector<FloorLine>> closedPage(
    const Laboratory& laboratory, const std::optional<domain::OrderNumber>& before = {},
    std::size_t most = kFloorPage);
/// Every open order, what is due first at the top.
domain::Result<std::vector<FloorLine>> floor(const Laboratory& laboratory);

/// Open and closed orders that have every word in their labels, or have this number; newest first,
/// those below one, or the newest. Words are whole, whatever their case and accents; none finds
/// nothing.
domain::Result<std::vector<FloorLine>> findOrders(
    const Laboratory& laboratory, const std::string& words,
    const std::optional<domain::OrderNumber>& before = {}, std::size_t most = kFloorPage);

/// How many entries the ledger has: while it stays the same, so does everything that is shown.
domain::Result<std::int64_t> entries(const Laboratory& laboratory);

}  // namespace actions
