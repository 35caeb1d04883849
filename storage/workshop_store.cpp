#include "storage/workshop_store.h"

#include "storage/ledger.h"
#include "storage/lot_uses.h"
#include "storage/transaction.h"

namespace storage {

using domain::Done;
using domain::Result;

Result<Done> WorkshopStore::readTotals() {
    const auto totals = LotUses{*connection_}.totals();
    if (!totals) return totals.error();
    for (const auto& [lot, amount] : *totals)
        if (const auto kept = workshop_.lots.find(lot); kept != workshop_.lots.end())
            kept->second.used = amount;
    return Done{};
}

Result<Done> WorkshopStore::addUses() {
    return Ledger{*connection_}.visitRecorded(position_, [&](const domain::Event& event) {
        for (const LotUse& use : usesIn(event))
            if (const auto kept = workshop_.lots.find(use.lot); kept != workshop_.lots.end())
                kept->second.used += use.amount;
    });
}

Result<const domain::Workshop*> WorkshopStore::current() try {
    const Snapshot snapshot{*connection_};
    const Ledger ledger{*connection_};
    const auto head = ledger.entries();
    if (!head) return head.error();
    if (isRead_ && *head == position_) return &workshop_;
    const auto folded = ledger.visitWorkshop(position_, [&](const domain::WorkshopEvent& event) {
        workshop_ = domain::evolve(std::move(workshop_), event);
        ++folded_;
    });
    auto used = !folded ? Result<Done>{folded.error()} : isRead_ ? addUses() : readTotals();
    if (!used) {
        // What was half folded is read anew the next time.
        *this = WorkshopStore{*connection_};
        return used.error();
    }
    isRead_ = true;
    position_ = *head;
    return &workshop_;
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<domain::Workshop> loadWorkshop(Connection& connection) {
    WorkshopStore store{connection};
    const auto workshop = store.current();
    if (!workshop) return workshop.error();
    return **workshop;
}

}  // namespace storage
