/// Looking at one order in full.
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
    std::vector<std::string> keptWords{};  ///< one per finding that is kept, in their order
    std::vector<domain::OrderNumber> companions{};  ///< the other orders of its case
    std::string digest{};  ///< first twelve digits of the hash of its newest ledger entry
};

/// A finding the prescriber keeps as prescribed, with the words opened.
struct KeptView {
    const domain::Finding* finding{};
    std::string words{};
};
/// All of them; they point into the view.
std::vector<KeptView> keptIn(const OrderView& view);

/// ErrorCode::Unusable when there is no such order.
domain::Result<OrderView> order(const Laboratory& laboratory, const domain::OrderNumber& number);

}  // namespace actions
