/// Looking at orders: one in full, and the floor with all of them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "apps/actions/laboratory.h"
#include "domain/production/order.h"

namespace actions {

/// One line of an order's history, with its sealed words opened.
struct HistoryLine {
    domain::Event event;
    std::string says{};   ///< "survey done", "flagged: cast damaged"
    std::string words{};  ///< the reason, note or answer; empty if there are none
};

/// Everything about one order, names included.
struct OrderView {
    domain::Order order;
    domain::Prescription prescription{};  ///< with identity, unless that was erased
    std::vector<HistoryLine> history{};
    std::vector<std::string> flagNotes{};  ///< one per open flag, in their order
    std::vector<std::string> cautionReasons{};
    std::vector<domain::OrderNumber> companions{};  ///< the other orders of its case
    std::string digest{};  ///< first twelve digits of the hash of its newest ledger entry
};

/// ErrorCode::Unusable when there is no such order.
domain::Result<OrderView> order(const Laboratory& laboratory, const domain::OrderNumber& number);

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

/// Every order, what is due first at the top, delivered ones last.
domain::Result<std::vector<FloorLine>> floor(const Laboratory& laboratory);

}  // namespace actions
