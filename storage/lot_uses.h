/// What each order used of each lot: derived from the ledger in the transaction that appends, and
/// rebuildable at any time. The way from a lot to every mouth it is in.
#pragma once

#include <map>
#include <memory>
#include <vector>

#include "domain/production/event.h"
#include "storage/ledger_pass.h"
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

/// What an event says about lots.
std::vector<LotUse> usesIn(const domain::Event& event);

class LotUses {
public:
    explicit LotUses(Connection& connection) : connection_{connection} {}

    /// After the ledger has taken the events.
    domain::Result<domain::Done> put(Transaction& transaction,
                                     const std::vector<domain::Event>& events) const;
    domain::Result<std::vector<LotUse>> ofLot(const domain::ThingCode& lot) const;
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
