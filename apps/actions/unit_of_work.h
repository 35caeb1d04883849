/// The unit of work: the one way anything is written. One transaction in which the session, the
/// permission and the key are checked, orders are read once, commands are decided, events appended
/// and everything derived from them brought up to date; one commit.
///
/// A clock that cannot be believed is marked first, in a unit of work of its own. A refusal rolls
/// back. A refusal of access is then recorded, in a unit of work of its own.
#pragma once

#include <functional>
#include <map>

#include "apps/actions/laboratory.h"
#include "apps/actions/outcome.h"
#include "apps/actions/who.h"
#include "domain/production/decide.h"
#include "domain/workshop/access_entry.h"
#include "domain/workshop/workshop.h"
#include "storage/event_codec.h"
#include "storage/transaction.h"

namespace actions {

/// What a person asks for, as far as it must be known before it is done.
struct Deed {
    /// nullopt: for who proves otherwise that they may, as by a password.
    std::optional<domain::Permission> permission{};
    /// What is asked, word by word, see commandOf(): by it a key that is used again is known.
    std::string command{};
    /// The order the person looked at, if there is one.
    std::optional<domain::OrderNumber> about{};
    /// For what cannot be undone, and for who may do what: the person proves once more who they
    /// are, so that a session left open is not enough.
    bool asksPassword{};
};

/// The words of a command, each kept apart from the next.
std::string commandOf(const std::vector<std::string>& words);
/// A word of a command that may be absent.
inline std::string wordIfAny(const std::optional<std::string>& word) {
    return word ? '=' + *word : std::string{};
}
template <domain::CodedEnum E>
std::string wordIfAny(const std::optional<E>& value) {
    return value ? '=' + std::string{codeOf(*value)} : std::string{};
}

class UnitOfWork {
public:
    UnitOfWork(const UnitOfWork&) = delete;
    UnitOfWork& operator=(const UnitOfWork&) = delete;

    storage::Transaction& transaction() noexcept { return transaction_; }
    const Who& who() const noexcept { return who_; }
    domain::Instant at() const noexcept { return at_; }
    /// As it stands, with what this unit has recorded so far.
    const domain::Workshop& workshop() const noexcept { return changed_ ? *changed_ : *workshop_; }

    /// Read from the ledger once. ErrorCode::Unusable when there is no such order.
    domain::Result<domain::Order> order(const domain::OrderNumber& number);
    /// The newest event of an order; valid until something is applied to it.
    domain::Result<const domain::Event*> newest(const domain::OrderNumber& number);
    /// Decides a command about an order, or about one that does not exist yet.
    domain::Result<domain::Order> apply(const std::optional<domain::OrderNumber>& number,
                                        const domain::Command& command);
    /// Decides what happens to a thing of the laboratory's own.
    domain::Result<domain::Done> record(const domain::Subject& subject,
                                        domain::WorkshopHappening what);
    /// Writes into the access log what the person did, where they are.
    domain::Result<domain::Done> note(domain::AccessHappening what);
    /// A text kept outside the ledger; nullopt for none or an empty one. One that no event of this
    /// unit takes up is not kept.
    domain::Result<std::optional<domain::SealedText>> seal(const std::optional<std::string>& text);

private:
    friend class Performance;

    UnitOfWork(const Laboratory& laboratory, const Who& who, storage::Transaction transaction,
               const domain::Workshop& workshop, domain::Instant at, std::string key,
               std::string command)
        : laboratory_{laboratory},
          who_{who},
          transaction_{std::move(transaction)},
          workshop_{&workshop},
          at_{at},
          key_{std::move(key)},
          command_{std::move(command)} {}

    /// An order as it was read, with its newest event, and as this unit leaves it.
    struct ReadOrder {
        domain::Order order;
        domain::Event newest;
        bool isTouched{};
    };
    domain::Result<ReadOrder*> read(const domain::OrderNumber& number);
    domain::Result<domain::Done> keep();
    domain::Result<domain::Done> dropUnusedTexts();

    const Laboratory& laboratory_;
    const Who& who_;
    storage::Transaction transaction_;
    const domain::Workshop* workshop_;
    std::optional<domain::Workshop> changed_{};
    domain::Instant at_;
    std::string key_;
    std::string command_;
    std::map<domain::OrderNumber, ReadOrder> orders_{};
    std::vector<storage::LedgerEvent> events_{};
    std::vector<domain::SealedText> sealed_{};
};

/// Does a deed to orders: `body` gives the order it answers with. Refused: who may not (recorded),
/// a key that was used by somebody else or for another command, an order that changed since the
/// person saw it. A command repeated under its key answers with its order as it is now.
domain::Result<Outcome> perform(
    const Laboratory& laboratory, const Who& who, const Deed& deed,
    const std::function<domain::Result<domain::Order>(UnitOfWork&)>& body);
/// Does a deed to the laboratory's own things. That it was recorded before is told, too.
domain::Result<Kept> perform(const Laboratory& laboratory, const Who& who, const Deed& deed,
                             const std::function<domain::Result<domain::Done>(UnitOfWork&)>& body);

/// What somebody is refused with, and what of it is recorded.
struct Denial {
    std::string says;
    std::string recorded;
    bool isOfNobody{};  ///< nobody is signed in who did it: see refusals.h
};
/// Records that somebody was refused, in a unit of work of its own, and returns what to tell them.
/// `command`: the permission they asked, or "sign-in". The one place where that is recorded.
domain::Error refuse(const Laboratory& laboratory, const Who& who, std::string_view command,
                     const Denial& denial);
/// Nobody has been entered yet: how to begin.
domain::Error notSetUp();

}  // namespace actions
