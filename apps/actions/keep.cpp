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
using domain::WorkshopEventKind;
using domain::WorkshopHappening;

/// Whether a key was used for the same before; a refusal if for another thing.
Result<bool> isRepeated(const Laboratory& laboratory, const Who& who, const Subject& subject,
                        WorkshopEventKind kind) {
    if (who.key.empty()) return false;
    const auto events = storage::Ledger{laboratory.records()}.withKey(who.key);
    if (!events) return events.error();
    if (events->empty()) return false;
    const auto* event = std::get_if<WorkshopEvent>(&events->front());
    if (event != nullptr && event->subject == subject && kindOf(*event) == kind) return true;
    return Error{ErrorCode::Refused,
                 "this key was used for something else: " +
                     (event != nullptr ? event->subject.text() + ", " + wordsOf(kindOf(*event))
                                       : std::string{"an order"})};
}

using Prepare = std::function<Result<WorkshopHappening>(WorkshopWork&)>;

WorkshopEventKind kindOf(const WorkshopHappening& what) {
    return static_cast<WorkshopEventKind>(what.index());
}

Result<Kept> kept(const Laboratory& laboratory, const Who& who, domain::Permission permission,
                  const Subject& subject, WorkshopEventKind kind, const Prepare& prepare) {
    if (const auto allowed = authorise(laboratory, who, permission); !allowed)
        return allowed.error();
    auto begun = WorkshopWork::begin(laboratory, who);
    if (!begun) return begun.error();
    WorkshopWork work = *std::move(begun);
    const auto before = isRepeated(laboratory, who, subject, kind);
    if (!before) return before.error();
    if (*before) return Kept{true};
    auto what = prepare(work);
    if (!what) return what.error();
    if (auto done = work.record(subject, *std::move(what)); !done) return done.error();
    if (auto committed = work.commit(); !committed) return committed.error();
    return Kept{};
}

}  // namespace

Result<Kept> keep(const Laboratory& laboratory, const Who& who, domain::Permission permission,
                  const Subject& subject, const WorkshopHappening& what) {
    return kept(laboratory, who, permission, subject, kindOf(what),
                [&](WorkshopWork&) -> Result<WorkshopHappening> { return what; });
}

Result<Kept> keepAsItStands(
    const Laboratory& laboratory, const Who& who, domain::Permission permission,
    const Subject& subject, WorkshopEventKind kind,
    const std::function<Result<WorkshopHappening>(const domain::Workshop&)>& what) {
    return kept(laboratory, who, permission, subject, kind,
                [&](WorkshopWork& work) { return what(work.workshop()); });
}

Result<Kept> keepWithWords(
    const Laboratory& laboratory, const Who& who, domain::Permission permission,
    const Subject& subject, const std::string& words,
    const std::function<WorkshopHappening(const domain::SealedText&)>& what) {
    return kept(laboratory, who, permission, subject, kindOf(what({})),
                [&](WorkshopWork& work) -> Result<WorkshopHappening> {
                    const auto sealed =
                        storage::SealedTexts{laboratory.records()}.seal(work.transaction(), words);
                    if (!sealed) return sealed.error();
                    return what(*sealed);
                });
}

}  // namespace actions
