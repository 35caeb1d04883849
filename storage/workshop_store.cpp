#include "storage/workshop_store.h"

#include "storage/ledger.h"
#include "storage/lot_uses.h"

namespace storage {

domain::Result<domain::Workshop> loadWorkshop(Connection& connection) {
    const auto events = Ledger{connection}.workshopEvents();
    if (!events) return events.error();
    domain::Workshop workshop;
    for (const domain::WorkshopEvent& event : *events)
        workshop = domain::evolve(std::move(workshop), event);
    const auto sums = LotUses{connection}.sums();
    if (!sums) return sums.error();
    for (const auto& [lot, amount] : *sums)
        if (const auto kept = workshop.lots.find(lot); kept != workshop.lots.end())
            kept->second.used = amount;
    return workshop;
}

}  // namespace storage
