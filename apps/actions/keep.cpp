#include "apps/actions/keep.h"

#include "apps/actions/access.h"
#include "apps/actions/workshop_work.h"
#include "storage/ledger.h"
#include "storage/sealed_texts.h"

namespace actions {
namespace {

using domain::Error;
using domain::ErrorCode;
using domain::Result;
using domain::Subject;
using domain::WorkshopEvent;
using domain::WorkshopHappening;

/// Whether a key was used for the same before; a refusal if for another thing.
Result<bool> isRepeated(const Laboratory& laboratory, const Who& who, const Subject& subject) {
    if (who.key.empty()) return false;
    const auto events = storage::Ledger{laboratory.records()}.withKey(who.key);
    if (!events) return events.error();
    if (events->empty()) return false;
    const auto* event = std::get_if<WorkshopEvent>(&events->front());
    if (event != nullptr && event->subject == subject) return true;
    return Error{ErrorCode::Refused,
                 "this key was used for something else: " +
                     (event != nullptr ? event->subject.text() : std::string{"an order"})};
}

using Prepare = std::function<Result<WorkshopHappening>(storage::Transaction&)>;

Result<Kept> kept(const Laboratory& laboratory, const Who& who, domain::Permission permission,
                  const Subject& subject, const Prepare& prepare) {
    if (const auto allowed = authorise(laboratory, who, permission); !allowed)
        return allowed.error();
    auto begun = WorkshopWork::begin(laboratory, who);
    if (!begun) return begun.error();
    WorkshopWork work = *std::move(begun);
    const auto before = isRepeated(laboratory, who, subject);
    if (!before) return before.error();
    if (*before) return Kept{true};
    auto what = prepare(work.transaction());
    if (!what) return what.error();
    if (auto done = work.record(subject, *std::move(what)); !done) return done.error();
    if (auto committed = work.commit(); !committed) return committed.error();
    return Kept{};
}

}  // namespace

Result<Kept> keep(const Laboratory& laboratory, const Who& who, domain::Permission permission,
                  const Subject& subject, const WorkshopHappening& what) {
    return kept(laboratory, who, permission, subject,
                [&](storage::Transaction&) -> Result<WorkshopHappening> { return what; });
}

Result<Kept> keepWithWords(
    const Laboratory& laboratory, const Who& who, domain::Permission permission,
    const Subject& subject, const std::string& words,
    const std::function<WorkshopHappening(const domain::SealedText&)>& what) {
    return kept(laboratory, who, permission, subject,
                [&](storage::Transaction& transaction) -> Result<WorkshopHappening> {
                    const auto sealed =
                        storage::SealedTexts{laboratory.records()}.seal(transaction, words);
                    if (!sealed) return sealed.error();
                    return what(*sealed);
                });
}

}  // namespace actions
