#include "storage/workshop_store.h"

#include "storage/ledger.h"
#include "storage/lot_uses.h"

namespace storage {

domain::Result<const domain::Workshop*> WorkshopStore::current() {
    const auto position =
        Ledger{*connection_}.visitWorkshop(position_, [&](const domain::WorkshopEvent& event) {
            workshop_ = domain::evolve(std::move(workshop_), event);
            ++folded_;
        });
    if (!position) return position.error();
    position_ = *position;
    const auto uses = LotUses{*connection_}.totalsAfter(lotsUpTo_);
    if (!uses) return uses.error();
    for (const LotTotal& total : *uses) {
        lotsUpTo_ = total.position;
        if (const auto kept = workshop_.lots.find(total.lot); kept != workshop_.lots.end())
            kept->second.used = total.amount;
    }
    return &workshop_;
}

domain::Result<domain::Workshop> loadWorkshop(Connection& connection) {
    WorkshopStore store{connection};
    const auto workshop = store.current();
    if (!workshop) return workshop.error();
    return **workshop;
}

}  // namespace storage
