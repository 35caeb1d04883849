/// What may happen: decide() answers a command with the events it causes, or a refusal.
///
/// All rules of the workflow are behind it and nowhere else. Pure: the time, the person, the
/// idempotency key and the laboratory as it stands come in with the occasion; findings and sealed
/// texts with the command.
#pragma once

#include <vector>

#include "domain/base/result.h"
#include "domain/production/gate.h"
#include "domain/production/keeping.h"
#include "domain/production/retention.h"

namespace domain {

struct Receive {
    OrderNumber number;
    Revision revision{};
    std::optional<OrderNumber> replaces{};  ///< the order this one makes again
};
/// Cautions are taken only with a reason, which is kept and printed.
struct Accept {
    std::optional<SealedText> reason{};
};
/// Without a stage: the one that is due. A stage at the practice starts when the work leaves.
struct Start {
    std::optional<Stage> stage{};
};
/// Without a stage: the one in hand. Refused while its gate lacks anything.
struct Finish {
    std::optional<Stage> stage{};
};
struct Flag {
    FlagReason reason{};
    std::optional<SealedText> note{};
};
struct Answer {
    std::optional<SealedText> words{};
    std::optional<Revision> revision{};  ///< asked where anything is kept as prescribed
    std::vector<Keep> keeps{};
};
/// For the stage in hand, or the one about to leave for the practice.
struct Record {
    std::optional<Stage> stage{};
    std::vector<StageRecord> records{};
};
/// Back from a try-in.
struct TakeReturn {
    ReturnVerdict verdict{};
    std::optional<Stage> backTo{};  ///< asked with ReturnVerdict::GoBack and only then
    std::optional<SealedText> findings{};
    Disinfection disinfection{};
};
/// Work begins again at `from`; the fault lay at `fault`, or there.
struct Redo {
    RedoReason reason{};
    Stage from{};
    std::optional<Stage> fault{};
    std::optional<SealedText> note{};
};
/// The order is made again as another one.
struct OrderRemake {
    OrderNumber replacement;
    RemakeReason reason{};
    std::optional<Stage> fault{};
    std::optional<SealedText> note{};
};
/// To travel with the case another order leads.
struct JoinCase {
    OrderNumber leader;
    Parties parties{};                               ///< of the leader
    std::optional<std::vector<Finding>> findings{};  ///< with what came for the leader
};
/// The stage that is due is worked at another site.
struct SendWork {
    ThingCode site;
};
struct TakeWorkBack {
    bool passed{};  ///< the inspection of what came back
    std::optional<SealedText> note{};
};
struct Withdraw {
    std::optional<SealedText> reason{};
};
/// Names and words are erased, if the longest of the terms that apply has run out.
struct Purge {
    std::vector<RetentionTerm> terms{};
};
using Command = std::variant<Receive, Accept, Start, Finish, Flag, Answer, Record, TakeReturn, Redo,
                             OrderRemake, JoinCase, SendWork, TakeWorkBack, Withdraw, Purge>;

struct Occasion {
    Instant at{};
    PersonCode person;
    std::string key{};
    const Workshop& workshop;
    std::string station{};
    /// What the legal contents of the prescription lack; nullopt: nobody looked.
    std::optional<std::vector<Finding>> legal{};
    std::string command{};  ///< digest of the command
};

/// `order` is nullopt for a command about an order that does not exist yet. Refusals come back as
/// ErrorCode::Refused with a sentence that names the order and says what would be needed.
Result<std::vector<Event>> decide(const std::optional<Order>& order, const Command& command,
                                  const Occasion& occasion);

}  // namespace domain
