/// The ledger: every event that ever happened, in order, never changed, chained by hashes.
///
/// How the hashes are made is told in ledger_chain.h. A head outside the table keeps the count and
/// the newest hash, so that a missing tail shows. The chain does not show a rewrite of everything:
/// note the head elsewhere.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "domain/production/order.h"
#include "storage/event_codec.h"
#include "storage/transaction.h"

namespace storage {

struct LedgerReport {
    std::int64_t entries{};
    std::string head{};                    ///< hash of the newest entry, 64 hexadecimal digits
    std::optional<std::string> problem{};  ///< the first one, with the entry it is in
};

class Ledger {
public:
    explicit Ledger(Connection& connection) : connection_{connection} {}

    /// Refuses an order that has been changed meanwhile, saying who did what and when, and a key
    /// that was used before (ErrorCode::Conflict); an identity in a prescription, and what could
    /// not be read back (ErrorCode::Unusable).
    domain::Result<domain::Done> append(Transaction& transaction,
                                        const std::vector<LedgerEvent>& events) const;
    domain::Result<domain::Done> append(Transaction& transaction,
                                        const std::vector<domain::Event>& events) const;
    domain::Result<domain::Done> append(Transaction& transaction,
                                        const std::vector<domain::WorkshopEvent>& events) const;

    /// From the first to the last; empty when there is no such order.
    domain::Result<std::vector<domain::Event>> eventsOf(const domain::OrderNumber& number) const;
    /// Those below a version.
    domain::Result<std::vector<domain::Event>> eventsBefore(const domain::OrderNumber& number,
                                                            std::int64_t version) const;
    /// What was recorded under an idempotency key; empty when it is new.
    domain::Result<std::vector<LedgerEvent>> withKey(const std::string& key) const;
    /// What happened to the workshop after a position of the ledger, in order; the position of the
    /// last of it, or `after` itself.
    domain::Result<std::int64_t> visitWorkshop(
        std::int64_t after, const std::function<void(domain::WorkshopEvent)>& visitor) const;
    /// What orders recorded at their stages after a position, in order.
    domain::Result<domain::Done> visitRecorded(
        std::int64_t after, const std::function<void(const domain::Event&)>& visitor) const;
    /// The time of the newest entry; nullopt: there is none.
    domain::Result<std::optional<domain::Instant>> newestAt() const;
    /// How many entries there are: the position of the newest.
    domain::Result<std::int64_t> entries() const;
    /// Everything that happened to the workshop, in order.
    domain::Result<std::vector<domain::WorkshopEvent>> workshopEvents() const;
    /// Every event of an order, in order, one at a time.
    domain::Result<domain::Done> visit(
        const std::function<void(const domain::Event&)>& visitor) const;
    /// Everything, in order, one at a time.
    domain::Result<domain::Done> visitAll(
        const std::function<void(const LedgerEvent&)>& visitor) const;
    /// The hash of the newest entry about an order. ErrorCode::Unusable when there is none.
    domain::Result<std::string> newestHash(const domain::OrderNumber& number) const;

    /// No entry is of an earlier time than the one before it, unless it marks the clock; entries of
    /// formats 1 to 3 were written before that was looked at, and may be.
    /// Computes the whole chain anew, reads every entry, and compares every column with what the
    /// bytes say, and the head with the last entry.
    domain::Result<LedgerReport> verify() const;

private:
    Connection& connection_;
};

/// An order folded from all its events, of which there is at least one. ErrorCode::Unavailable
/// where they do not follow one another.
domain::Result<domain::Order> foldOrder(const std::vector<domain::Event>& events);
/// An order folded from its events; nullopt when there is none of that number.
domain::Result<std::optional<domain::Order>> loadOrder(Connection& connection,
                                                       const domain::OrderNumber& number);
/// Why an event cannot come next in the history of an order; nullopt: it can.
std::optional<std::string> unfollowing(const std::optional<domain::Order>& order,
                                       const domain::Event& event);

}  // namespace storage
