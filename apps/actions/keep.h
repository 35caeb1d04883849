/// The one way anything happens to the laboratory's own things: permitted, decided, appended, once.
#pragma once

#include <functional>

#include "apps/actions/laboratory.h"
#include "apps/actions/who.h"
#include "domain/workshop/workshop.h"

namespace actions {

/// What came of it. `repeated`: the key had been used for the same, nothing happened this time.
struct Kept {
    bool repeated{};
};

/// Refused: who may not, a key used for something else, what the laboratory as it stands forbids.
domain::Result<Kept> keep(const Laboratory& laboratory, const Who& who,
                          domain::Permission permission, const domain::Subject& subject,
                          const domain::WorkshopHappening& what);

/// The same where what happens follows from the laboratory as it stands; `kind`: of what happens.
domain::Result<Kept> keepAsItStands(
    const Laboratory& laboratory, const Who& who, domain::Permission permission,
    const domain::Subject& subject, domain::WorkshopEventKind kind,
    const std::function<domain::Result<domain::WorkshopHappening>(const domain::Workshop&)>& what);

/// The same with words that are kept outside the ledger.
domain::Result<Kept> keepWithWords(
    const Laboratory& laboratory, const Who& who, domain::Permission permission,
    const domain::Subject& subject, const std::string& words,
    const std::function<domain::WorkshopHappening(const domain::SealedText&)>& what);

}  // namespace actions
