/// The state of a thing, told by a shape that always stands beside its word.
#pragma once

#include <QString>

#include "apps/actions/floor.h"
#include "apps/actions/orders.h"

namespace models {

enum class Mark : std::uint8_t { ToDo, InHand, Done, Waiting, Asked, Away, Refused, Caution };

struct Marked {
    Mark mark{};
    QString word;
};

/// What an order is doing: "survey: in hand", "2 questions", "delivered".
Marked markOf(const actions::FloorLine& line);

Marked markOf(const domain::Order& order);

/// How far a stage of an order is. A stage whose work is in hand at a machine waits, one at the
/// practice is away.
Marked markOf(domain::Stage stage, domain::StageStatus status);

/// "asked 3 d", "away 2 d", "since 4 h": how long somebody is waited for, in the words of what they
/// are waited for; `mark` is the order's own. Empty when nobody is.
QString waitedFor(domain::WaitsFor whom, Mark mark, const QString& length);

/// "waits for the bench, since 3 h · with the laboratory 2 d 4 h"; empty when nobody waits.
QString waitingWords(const domain::Order& order, Mark mark, domain::Instant now);

/// What a finding asks for: an answer (missing), a change (conflict), or a name (caution).
Marked markOf(domain::Severity severity);

}  // namespace models

/// The word of each mark where nothing more exact can be said.
template <>
inline constexpr std::array<domain::EnumCode<models::Mark>, 8> domain::enumCodes<models::Mark>{{
    {models::Mark::ToDo, "to-do"},
    {models::Mark::InHand, "in-hand"},
    {models::Mark::Done, "done"},
    {models::Mark::Waiting, "waiting"},
    {models::Mark::Asked, "asked"},
    {models::Mark::Away, "at-the-practice"},
    {models::Mark::Refused, "refused"},
    {models::Mark::Caution, "caution"},
}};
