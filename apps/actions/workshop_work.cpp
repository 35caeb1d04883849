#include "apps/actions/workshop_work.h"

#include "storage/ledger.h"
#include "storage/workshop_store.h"

namespace actions {

using domain::Done;
using domain::Result;

Result<WorkshopWork> WorkshopWork::begin(const Laboratory& laboratory, const Who& who) {
    auto transaction = storage::Transaction::begin(laboratory.records());
    if (!transaction) return transaction.error();
    auto workshop = storage::loadWorkshop(laboratory.records());
    if (!workshop) return workshop.error();
    return WorkshopWork{laboratory,
                        *std::move(transaction),
                        *std::move(workshop),
                        {laboratory.now(), who.person, keyOf(who)}};
}

Result<Done> WorkshopWork::record(const domain::Subject& subject, domain::WorkshopHappening what) {
    auto event = decide(workshop_, subject, std::move(what), occasion_);
    if (!event) return event.error();
    workshop_ = evolve(std::move(workshop_), *event);
    events_.push_back(*std::move(event));
    return Done{};
}

Result<Done> WorkshopWork::commit() {
    const storage::Ledger ledger{laboratory_->records()};
    if (!events_.empty())
        if (auto appended = ledger.append(transaction_, events_); !appended) return appended;
    return transaction_.commit();
}

}  // namespace actions
