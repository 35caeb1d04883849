#include "storage/ledger_pass.h"

#include <list>
#include <map>

#include "domain/production/evolve.h"
#include "storage/ledger_chain.h"

namespace storage {
namespace {

using domain::Event;
using domain::Order;
using domain::OrderNumber;
using domain::Result;
using domain::WorkshopEvent;

/// What is wrong with an entry.
using Problem = std::optional<std::string>;

/// The orders that were read last, folded as far as they were read.
class OrdersInHand {
public:
    OrdersInHand(Connection& connection, std::span<LedgerListener* const> listeners,
                 std::size_t most)
        : connection_{connection}, listeners_{listeners}, most_{most} {}

    Problem follow(const Event& event) {
        const auto known = places_.find(event.order);
        std::optional<Order> order;
        if (known != places_.end()) {
            order = std::move(*known->second);
            orders_.erase(known->second);
            places_.erase(known);
        } else if (event.version > 1) {
            auto before = readBefore(event);
            if (!before) return before.error().message;
            order = *std::move(before);
        }
        if (auto wrong = unfollowing(order, event)) return wrong;
        order = evolve(std::move(order), event);
        orders_.push_front(*std::move(order));
        places_.emplace(event.order, orders_.begin());
        if (orders_.size() > most_) letOneGo();
        return {};
    }

    /// After the last entry.
    void letAllGo() {
        for (const Order& order : orders_) tell(order);
        orders_.clear();
        places_.clear();
    }

private:
    /// It comes up again if its history goes on.
    void letOneGo() {
        const Order& order = orders_.back();
        Statement newest{connection_, "ledger_newest_of_subject"};
        if (newest.bind("subject", order.number.text()).run().next() &&
            newest.whole("subject_version") <= order.version)
            tell(order);
        places_.erase(order.number);
        orders_.pop_back();
    }
    void tell(const Order& order) {
        for (LedgerListener* listener : listeners_) listener->order(order);
    }

    /// An order that was let go of, as the entries before this one left it.
    Result<std::optional<Order>> readBefore(const Event& event) {
        const auto events = Ledger{connection_}.eventsBefore(event.order, event.version);
        if (!events) return events.error();
        if (events->empty()) return std::optional<Order>{};
        auto order = foldOrder(*events);
        if (!order) return order.error();
        return std::optional{*std::move(order)};
    }

    Connection& connection_;
    std::span<LedgerListener* const> listeners_;
    std::size_t most_;
    std::list<Order> orders_;  ///< what was read last comes first
    std::map<OrderNumber, std::list<Order>::iterator> places_;
};

/// Follows the entries: each must go on where the one before it about the same subject ended.
class Histories {
public:
    Histories(Connection& connection, std::span<LedgerListener* const> listeners,
              std::size_t ordersHeld)
        : orders_{connection, listeners, ordersHeld} {}

    Problem follow(const LedgerEvent& event) {
        return std::visit([this](const auto& each) { return one(each); }, event);
    }
    void end() { orders_.letAllGo(); }

private:
    Problem one(const Event& event) { return orders_.follow(event); }
    Problem one(const WorkshopEvent& event) {
        std::int64_t& version = things_[event.subject];
        if (event.version == ++version) return {};
        return "version " + std::to_string(version) + " of " + event.subject.text() +
               " was expected, not " + std::to_string(event.version);
    }

    OrdersInHand orders_;
    std::map<domain::Subject, std::int64_t> things_;
};

}  // namespace

Result<LedgerReport> readLedger(Connection& connection, std::span<LedgerListener* const> listeners,
                                Chain chain, std::size_t ordersHeld) try {
    const Snapshot snapshot{connection};
    LedgerChain entries;
    Histories histories{connection, listeners, ordersHeld};
    LedgerReport report;
    Statement rows{connection, "ledger_all"};
    rows.run();
    while (rows.next()) {
        const auto event =
            chain == Chain::Verified ? entries.take(rows) : decodeEvent(rows.bytes("bytes"));
        ++report.entries;
        auto wrong = event ? histories.follow(*event) : Problem{event.error().message};
        if (wrong) {
            report.head = entries.head().hash;
            report.problem =
                "entry " + std::to_string(report.entries) + " of the ledger: " + *wrong;
            return report;
        }
        for (LedgerListener* listener : listeners) listener->entry(*event);
    }
    report.head = entries.head().hash;
    if (chain == Chain::Verified) report.problem = headProblem(connection, entries.head());
    if (report.problem) return report;
    histories.end();
    for (LedgerListener* listener : listeners) listener->end();
    return report;
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace storage
