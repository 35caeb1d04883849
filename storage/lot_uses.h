/// What each order used of each lot: derived from the ledger in the transaction that appends, and
/// rebuildable at any time. The way from a lot to every mouth it is in.
#pragma once

#include <map>
#include <memory>
#include <vector>

#include "domain/production/order.h"
#include "storage/ledger_pass.h"
#include "storage/order_labels.h"
#include "storage/transaction.h"

namespace storage {

struct LotUse {
    domain::OrderNumber order;
    std::int64_t version{};  ///< of the order, at the event that recorded it
    std::int64_t part{};     ///< 1, 2, 3 ... within that event
    domain::ThingCode lot;
    domain::LotKind kind{};
    std::int64_t amount{};  ///< milligrams, or pieces of teeth
    domain::Stage stage{};
    friend bool operator==(const LotUse&, const LotUse&) = default;
};

/// For each use of a lot by an order, in the order they were recorded: whether the device as it
/// stands holds it, which it does not when its stage was done again.
std::vector<bool> inDevice(const domain::Order& order);

/// What an event says about lots.
std::vector<LotUse> usesIn(const domain::Event& event);

/// A use with what a trace tells of the order.
struct TracedUse {
    domain::OrderNumber order;
    std::int64_t amount{};
    domain::Stage stage{};
    bool isInDevice{};  ///< false: the attempt it went into was done again
    domain::OrderStatus status{};
    std::string description{};
    std::string patientCode{};
    std::string prescriberCode{};
    std::optional<domain::Date> delivered{};
    std::optional<OrderLabel> label{};  ///< nullopt: its names were erased
};

class LotUses {
public:
    explicit LotUses(Connection& connection) : connection_{connection} {}

    /// After the ledger has taken the events, which leave the order like this.
    domain::Result<domain::Done> put(Transaction& transaction, const domain::Order& order,
                                     const std::vector<domain::Event>& events) const;
    domain::Result<std::vector<LotUse>> ofLot(const domain::ThingCode& lot) const;
    /// Every use of a lot, by order.
    domain::Result<std::vector<TracedUse>> trace(const domain::ThingCode& lot) const;
    /// How much of each lot all orders used so far.
    domain::Result<std::map<domain::ThingCode, std::int64_t>> totals() const;

    /// Empties the tables; what it listens to then writes every row anew. Throws SqlFailure.
    std::unique_ptr<LedgerListener> rebuild(Transaction& transaction) const;
    /// Finds where the rows say something else than the ledger.
    std::unique_ptr<TableCheck> check() const;

private:
    Connection& connection_;
};

}  // namespace storage
