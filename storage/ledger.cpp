#include "storage/ledger.h"

#include <QUtf8StringView>
#include <algorithm>

#include "domain/production/evolve.h"
#include "storage/event_codec.h"
#include "storage/ledger_chain.h"
#include "storage/ledger_pass.h"
#include "storage/statement.h"

namespace storage {
namespace {

using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Event;
using domain::Order;
using domain::OrderNumber;
using domain::Result;
using domain::WorkshopEvent;

constexpr std::size_t kLongestKey = 200;

Error atEntry(std::int64_t position, const std::string& what) {
    return {ErrorCode::Unavailable,
            "entry " + std::to_string(position) + " of the ledger: " + what};
}

template <typename E>
Result<std::vector<E>> eventsIn(Statement& rows, Result<E> (*decode)(const QByteArray&)) {
    std::vector<E> events;
    rows.run();
    while (rows.next()) {
        auto event = decode(rows.bytes("bytes"));
        if (!event) return atEntry(rows.whole("position"), event.error().message);
        events.push_back(*std::move(event));
    }
    return events;
}

Result<LedgerEvent> decodeAny(const QByteArray& bytes) { return decodeEvent(bytes); }

/// Whether a key can be kept and found again as the text it is.
bool isFitKey(const std::string& key) {
    const auto isControl = [](char c) {
        const auto byte = static_cast<unsigned char>(c);
        return byte < 0x20 || byte == 0x7f;
    };
    return !key.empty() && key.size() <= kLongestKey && std::ranges::none_of(key, isControl) &&
           QUtf8StringView{key.data(), static_cast<qsizetype>(key.size())}.isValidUtf8();
}

const domain::Revision* revisionIn(const WorkshopEvent&) { return nullptr; }

const domain::Revision* revisionIn(const Event& event) {
    if (const auto* received = std::get_if<domain::Received>(&event.what))
        return &received->revision;
    const auto* answered = std::get_if<domain::Answered>(&event.what);
    return answered != nullptr && answered->revision ? &*answered->revision : nullptr;
}

/// What an event is about, in a sentence.
std::string aboutOf(const Event& event) { return "order " + event.order.text(); }
std::string aboutOf(const WorkshopEvent& event) { return event.subject.text(); }

/// Why an event must not enter the ledger, whatever the state of its subject.
template <typename E>
std::optional<Error> unfit(const E& event, const QByteArray& bytes) {
    const std::string about = aboutOf(event) + ": ";
    if (!isFitKey(event.key))
        return Error{ErrorCode::Unusable,
                     about + "an idempotency key of 1 to " + std::to_string(kLongestKey) +
                         " bytes of UTF-8 without control characters was expected"};
    if (const auto* revision = revisionIn(event);
        revision != nullptr && revision->prescription.identity != domain::Identity{})
        return Error{ErrorCode::Unusable,
                     about + "a prescription with names in it must not enter the ledger"};
    if (auto again = decodeEvent(bytes); !again)
        return Error{ErrorCode::Unusable, about + again.error().message};
    return {};
}

/// Why an event does not follow what the ledger holds about its subject.
template <typename E>
std::optional<Error> clash(Connection& connection, const E& event) {
    Statement newest{connection, "ledger_newest_of_subject"};
    newest.bind("subject", stampOf(event).subject).run();
    const bool any = newest.next();
    const std::int64_t version = any ? newest.whole("subject_version") : 0;
    if (version == event.version - 1) return {};
    const std::string about = aboutOf(event);
    if (!any) return Error{ErrorCode::Conflict, about + " does not exist yet"};
    return Error{ErrorCode::Conflict,
                 about + " was changed meanwhile: " + domain::spoken(newest.text("kind")) + " by " +
                     newest.text("person") + ", " +
                     domain::Instant::ofMicroseconds(newest.whole("at_us")).text() + " (version " +
                     std::to_string(version) + "); look at it again"};
}

Result<Done> appendAll(Connection& connection, const std::vector<LedgerEvent>& events) {
    const ChainHead before = ledgerHead(connection);
    ChainHead head = before;
    KeyParts parts;
    for (const LedgerEvent& event : events) {
        const QByteArray bytes = encodeEvent(event);
        if (auto error = std::visit([&](const auto& each) { return unfit(each, bytes); }, event))
            return *std::move(error);
        if (auto error =
                std::visit([&](const auto& each) { return clash(connection, each); }, event))
            return *std::move(error);
        head = {head.entries + 1, chained(kLedgerDomain, head.hash, bytes)};
        const EntryStamp stamp = stampOf(event);
        Statement insert{connection, "ledger_insert"};
        insert.bind(entryCells(stamp, head, parts.next(stamp.key), bytes)).run();
        if (!insert.next())
            return Error{ErrorCode::Conflict, "the key " + stamp.key + " was used before"};
    }
    Statement move{connection, "ledger_head_move"};
    move.bind({{"entries", head.entries},
               {"hash", head.hash},
               {"entries_before", before.entries},
               {"hash_before", before.hash}});
    if (!move.run().next()) return Error{ErrorCode::Conflict, "the ledger was written meanwhile"};
    return Done{};
}

template <typename E>
std::vector<LedgerEvent> anyOf(const std::vector<E>& events) {
    return {events.begin(), events.end()};
}

}  // namespace

Result<Done> Ledger::append(Transaction& transaction, const std::vector<LedgerEvent>& events) const
    try {
    return appendAll(transaction.connection(), events);
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<Done> Ledger::append(Transaction& transaction, const std::vector<Event>& events) const {
    return append(transaction, anyOf(events));
}

Result<Done> Ledger::append(Transaction& transaction,
                            const std::vector<WorkshopEvent>& events) const {
    return append(transaction, anyOf(events));
}

Result<std::vector<Event>> Ledger::eventsOf(const OrderNumber& number) const try {
    Statement rows{connection_, "ledger_of_subject"};
    rows.bind("subject", number.text());
    return eventsIn(rows, &decodeOrderEvent);
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::vector<Event>> Ledger::eventsBefore(const OrderNumber& number,
                                                std::int64_t version) const try {
    Statement rows{connection_, "ledger_of_subject_before"};
    rows.bind({{"subject", number.text()}, {"before", version}});
    return eventsIn(rows, &decodeOrderEvent);
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::vector<LedgerEvent>> Ledger::withKey(const std::string& key) const try {
    Statement rows{connection_, "ledger_of_key"};
    rows.bind("idempotency_key", key);
    return eventsIn(rows, &decodeAny);
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::int64_t> Ledger::visitWorkshop(std::int64_t after,
                                           const std::function<void(WorkshopEvent)>& visitor) const
    try {
    Statement rows{connection_, "ledger_of_workshop"};
    rows.bind("after", after).run();
    std::int64_t position = after;
    while (rows.next()) {
        position = rows.whole("position");
        auto event = decodeWorkshopEvent(rows.bytes("bytes"));
        if (!event) return atEntry(position, event.error().message);
        visitor(*std::move(event));
    }
    return position;
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<Done> Ledger::visitRecorded(std::int64_t after,
                                   const std::function<void(const Event&)>& visitor) const try {
    Statement rows{connection_, "ledger_recorded_since"};
    rows.bind("after", after).run();
    while (rows.next()) {
        const auto event = decodeOrderEvent(rows.bytes("bytes"));
        if (!event) return atEntry(rows.whole("position"), event.error().message);
        visitor(*event);
    }
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::optional<domain::Instant>> Ledger::newestAt() const try {
    Statement last{connection_, "ledger_last"};
    if (!last.run().next()) return std::optional<domain::Instant>{};
    return std::optional{domain::Instant::ofMicroseconds(last.whole("at_us"))};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::int64_t> Ledger::entries() const try {
    return ledgerHead(connection_).entries;
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::vector<WorkshopEvent>> Ledger::workshopEvents() const {
    std::vector<WorkshopEvent> events;
    const auto visited =
        visitWorkshop(0, [&](WorkshopEvent event) { events.push_back(std::move(event)); });
    if (!visited) return visited.error();
    return events;
}

Result<Done> Ledger::visit(const std::function<void(const Event&)>& visitor) const {
    return visitAll([&](const LedgerEvent& event) {
        if (const auto* order = std::get_if<Event>(&event)) visitor(*order);
    });
}

Result<Done> Ledger::visitAll(const std::function<void(const LedgerEvent&)>& visitor) const try {
    Statement rows{connection_, "ledger_all"};
    rows.run();
    while (rows.next()) {
        const auto event = decodeEvent(rows.bytes("bytes"));
        if (!event) return atEntry(rows.whole("position"), event.error().message);
        visitor(*event);
    }
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::string> Ledger::newestHash(const OrderNumber& number) const try {
    Statement newest{connection_, "ledger_newest_of_subject"};
    newest.bind("subject", number.text()).run();
    if (!newest.next()) return Error{ErrorCode::Unusable, "no such order: " + number.text()};
    return newest.text("hash");
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<LedgerReport> Ledger::verify() const { return readLedger(connection_, {}, Chain::Verified); }

std::optional<std::string> unfollowing(const std::optional<Order>& order, const Event& event) {
    const std::int64_t expected = order ? order->version + 1 : 1;
    if (event.version != expected)
        return "version " + std::to_string(expected) + " of order " + event.order.text() +
               " was expected, not " + std::to_string(event.version);
    const bool begins = std::holds_alternative<domain::Received>(event.what);
    if (begins != !order)
        return "order " + event.order.text() +
               (begins ? " was received before" : " was never received");
    return {};
}

Result<Order> foldOrder(const std::vector<Event>& events) {
    std::optional<Order> order;
    for (const Event& event : events) {
        if (const auto wrong = unfollowing(order, event))
            return Error{ErrorCode::Unavailable, "the ledger is damaged: " + *wrong};
        order = domain::evolve(std::move(order), event);
    }
    return *std::move(order);
}

Result<std::optional<Order>> loadOrder(Connection& connection, const OrderNumber& number) {
    const auto events = Ledger{connection}.eventsOf(number);
    if (!events) return events.error();
    if (events->empty()) return std::optional<Order>{};
    auto order = foldOrder(*events);
    if (!order) return order.error();
    return std::optional{*std::move(order)};
}

}  // namespace storage
