/// Puts events that were decided already into the records, many in one transaction: the one file of
/// the benchmarks that writes by storage itself, and so the one to adapt when storage changes.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "apps/actions/laboratory.h"
#include "domain/production/order.h"
#include "domain/workshop/workshop_event.h"
#include "storage/transaction.h"

namespace bench {

class BulkRecords {
public:
    /// The connection of the laboratory writes without syncs and with much memory from now on.
    explicit BulkRecords(const actions::Laboratory& laboratory);

    /// The codes of a prescription's people, and the whole of it sealed outside the ledger.
    domain::Result<domain::Parties> partiesOf(const domain::Prescription& prescription);
    domain::Result<domain::SealedText> seal(const std::string& text);
    /// Appends the events of one command.
    domain::Result<domain::Done> append(const std::vector<domain::Event>& events);
    domain::Result<domain::Done> append(const std::vector<domain::WorkshopEvent>& events);
    /// What follows from the events of an order that goes no further; commits now and then.
    domain::Result<domain::Done> close(const domain::Order& order,
                                       const std::vector<domain::Event>& events);
    domain::Result<domain::Done> commit();

private:
    domain::Result<storage::Transaction*> work();

    const actions::Laboratory& laboratory_;
    std::optional<storage::Transaction> work_{};
    int closed_{};
};

/// Writes everything derived from the ledger anew, in one transaction.
domain::Result<domain::Done> rebuild(const actions::Laboratory& laboratory);

}  // namespace bench
