/// The laboratory as it stands: folded from its events in the ledger, and what is left of each lot
/// from the uses of all orders.
#pragma once

#include "domain/workshop/workshop.h"
#include "storage/connection.h"

namespace storage {

/// Kept between calls and brought up to date from the position it has reached: what a call costs
/// does not grow with the ledger.
class WorkshopStore {
public:
    explicit WorkshopStore(Connection& connection) : connection_{&connection} {}

    /// As the records stand now; valid until the next call.
    domain::Result<const domain::Workshop*> current();
    /// How many events were folded so far.
    std::int64_t folded() const noexcept { return folded_; }

private:
    /// What every lot was used for, when nothing was read yet.
    domain::Result<domain::Done> readTotals();
    /// What was used since.
    domain::Result<domain::Done> addUses();

    Connection* connection_;
    domain::Workshop workshop_{};
    bool isRead_{false};
    std::int64_t position_{0};  ///< of the ledger, up to which everything is in
    std::int64_t folded_{0};
};

/// Folded from the first event on.
domain::Result<domain::Workshop> loadWorkshop(Connection& connection);

}  // namespace storage
