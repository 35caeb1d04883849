/// Something that happens in the laboratory itself: to its people, stations, equipment or lots.
#pragma once

#include "apps/actions/laboratory.h"
#include "apps/actions/who.h"
#include "domain/workshop/workshop.h"
#include "storage/transaction.h"

namespace actions {

/// One transaction, in which happenings are decided against the laboratory as it stands, and
/// appended under one key. Nothing is kept unless it is committed.
class WorkshopWork {
public:
    static domain::Result<WorkshopWork> begin(const Laboratory& laboratory, const Who& who);

    /// As it stands, with what this work has recorded so far.
    const domain::Workshop& workshop() const noexcept { return workshop_; }
    /// For what goes with it outside the ledger.
    storage::Transaction& transaction() noexcept { return transaction_; }
    domain::Instant at() const noexcept { return occasion_.at; }

    /// Refuses what the laboratory as it stands does not allow.
    domain::Result<domain::Done> record(const domain::Subject& subject,
                                        domain::WorkshopHappening what);
    domain::Result<domain::Done> commit();

private:
    WorkshopWork(const Laboratory& laboratory, storage::Transaction transaction,
                 domain::Workshop workshop, domain::WorkshopOccasion occasion)
        : laboratory_{&laboratory},
          transaction_{std::move(transaction)},
          workshop_{std::move(workshop)},
          occasion_{std::move(occasion)} {}

    const Laboratory* laboratory_;
    storage::Transaction transaction_;
    domain::Workshop workshop_;
    domain::WorkshopOccasion occasion_;
    std::vector<domain::WorkshopEvent> events_{};
};

}  // namespace actions
