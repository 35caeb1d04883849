/// The one way anything happens to orders: one transaction in which the key is looked up, commands
/// are decided, events appended, and everything derived from them brought up to date.
#pragma once

#include <functional>
#include <map>

#include "apps/actions/laboratory.h"
#include "apps/actions/outcome.h"
#include "apps/actions/who.h"
#include "domain/production/decide.h"
#include "storage/transaction.h"

namespace actions {

/// What a deed does within its transaction: several orders may be touched, in turn.
class Work {
public:
    Work(const Laboratory& laboratory, storage::Transaction& transaction, const Who& who,
         std::string key)
        : laboratory_{laboratory}, transaction_{transaction}, who_{who}, key_{std::move(key)} {}

    storage::Transaction& transaction() noexcept { return transaction_; }
    /// ErrorCode::Unusable when there is no such order.
    domain::Result<domain::Order> load(const domain::OrderNumber& number) const;
    /// Decides a command about an order, or about one that does not exist yet; what follows is kept
    /// at the end.
    domain::Result<domain::Order> apply(const std::optional<domain::OrderNumber>& number,
                                        const domain::Command& command);
    /// Appends what was decided, all under one key, and brings what is derived up to date.
    domain::Result<domain::Done> keep();
    /// A text kept outside the ledger; nullopt for none or an empty one.
    domain::Result<std::optional<domain::SealedText>> seal(const std::optional<std::string>& text);

private:
    const Laboratory& laboratory_;
    storage::Transaction& transaction_;
    const Who& who_;
    std::string key_;
    std::vector<domain::Event> events_;
    std::map<domain::OrderNumber, domain::Order> touched_;
};

/// The last order a deed applied something to is its outcome.
using Deed = std::function<domain::Result<domain::Order>(Work&)>;

/// `number` is the order the person looked at, if there is one; `kind` the event the deed causes,
/// by which a repeated key is known. Refused: who may not (every refusal is recorded), a key that
/// was used for something else, an order that changed since the person saw it.
domain::Result<Outcome> carryOut(const Laboratory& laboratory,
                                 const std::optional<domain::OrderNumber>& number,
                                 domain::EventKind kind, domain::Permission permission,
                                 const Who& who, const Deed& deed);

/// What the legal contents of an order's prescription lack, with its names and the letterhead.
domain::Result<std::vector<domain::Finding>> legalLack(const Laboratory& laboratory,
                                                       const domain::Revision& revision);

/// The prescription as it was read, names included; without them where they were erased.
domain::Result<domain::Prescription> inFull(const Laboratory& laboratory,
                                            const domain::Revision& revision);

}  // namespace actions
