/// What may happen: decide() answers a command with the events it causes, or a refusal.
///
/// All rules of the workflow are here and nowhere else. Pure: the time, the person and the
/// idempotency key come in with the occasion, findings and sealed texts with the command.
#pragma once

#include <vector>

#include "domain/base/result.h"
#include "domain/production/order.h"

namespace domain {

struct Receive {
    OrderNumber number;
    Revision revision{};
};
/// Cautions are taken only with a reason, which is kept and printed.
struct Accept {
    std::optional<SealedText> reason{};
};
/// Without a stage: the one that is due.
struct Start {
    std::optional<Stage> stage{};
};
/// Without a stage: the one in hand.
struct Finish {
    std::optional<Stage> stage{};
};
struct Flag {
    FlagReason reason{};
    std::optional<SealedText> note{};
};
struct Answer {
    std::optional<SealedText> words{};
    std::optional<Revision> revision{};
};
using Command = std::variant<Receive, Accept, Start, Finish, Flag, Answer>;

struct Occasion {
    Instant at{};
    PersonCode person;
    std::string key{};
};

/// `order` is nullopt for a command about an order that does not exist yet. Refusals come back as
/// ErrorCode::Refused with a sentence that names the order and says what would be needed.
Result<std::vector<Event>> decide(const std::optional<Order>& order, const Command& command,
                                  const Occasion& occasion);

}  // namespace domain
