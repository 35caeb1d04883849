#include "storage/ledger.h"

#include <QUtf8StringView>
#include <algorithm>
#include <map>

#include "domain/production/evolve.h"
#include "storage/digest.h"
#include "storage/event_codec.h"
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

/// Keeps the hashes of entries apart from the digests of sealed texts.
constexpr char kEntryDomain[] = {0};
const std::string kBeforeTheFirst(64, '0');
constexpr std::size_t kLongestKey = 200;
constexpr std::int64_t kHeadId = 1;
/// What an entry is about: an order, or the workshop.
constexpr std::int64_t kOrderStream = 1;
constexpr std::int64_t kWorkshopStream = 2;

std::string chained(const std::string& previous, const QByteArray& bytes) {
    const QByteArray raw = QByteArray::fromHex(QByteArray::fromStdString(previous));
    return sha256({QByteArrayView{kEntryDomain, sizeof kEntryDomain}, raw, bytes});
}

/// Where the ledger stands: how many entries, and the hash of the newest.
struct Head {
    std::int64_t entries{};
    std::string hash = kBeforeTheFirst;
};

/// What every event says about itself.
struct Stamp {
    std::int64_t stream{};
    std::string subject;
    std::int64_t version{};
    std::string kind;
    std::string key;
    std::int64_t at{};
    std::string person;
};

Stamp stampOf(const Event& event) {
    return {kOrderStream,       event.order.text(),
            event.version,      std::string{codeOf(kindOf(event))},
            event.key,          event.at.microseconds(),
            event.person.text()};
}
Stamp stampOf(const WorkshopEvent& event) {
    return {kWorkshopStream,    event.subject.text(),
            event.version,      std::string{codeOf(kindOf(event))},
            event.key,          event.at.microseconds(),
            event.person.text()};
}
Stamp stampOf(const LedgerEvent& event) {
    return std::visit([](const auto& each) { return stampOf(each); }, event);
}

/// What the columns of an entry must hold: everything but the bytes follows from the bytes.
std::vector<Cell> cellsOf(const Stamp& stamp, const Head& head, std::int64_t part,
                          const QByteArray& bytes) {
    return {{"position", head.entries},
            {"stream", stamp.stream},
            {"subject", stamp.subject},
            {"subject_version", stamp.version},
            {"kind", stamp.kind},
            {"idempotency_key", stamp.key},
            {"part", part},
            {"at_us", stamp.at},
            {"person", stamp.person},
            {"bytes", bytes},
            {"hash", head.hash}};
}

/// Counts the events recorded under one key: 1, 2, 3 ...
class Parts {
public:
    std::int64_t next(const std::string& key) {
        part_ = key == key_ ? part_ + 1 : 1;
        key_ = key;
        return part_;
    }

private:
    std::optional<std::string> key_;
    std::int64_t part_{0};
};

Head headOf(Connection& connection) {
    Statement query{connection, "ledger_head_all"};
    if (!query.run().next())
        throw SqlFailure{"the head of the ledger is missing; verify the records"};
    return {query.whole("entries"), query.text("hash")};
}

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
    const Head before = headOf(connection);
    Head head = before;
    Parts parts;
    for (const LedgerEvent& event : events) {
        const QByteArray bytes = encodeEvent(event);
        if (auto error = std::visit([&](const auto& each) { return unfit(each, bytes); }, event))
            return *std::move(error);
        if (auto error =
                std::visit([&](const auto& each) { return clash(connection, each); }, event))
            return *std::move(error);
        head = {head.entries + 1, chained(head.hash, bytes)};
        const Stamp stamp = stampOf(event);
        Statement insert{connection, "ledger_insert"};
        insert.bind(cellsOf(stamp, head, parts.next(stamp.key), bytes)).run();
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

/// What goes on with an order when an event is read back; refuses a history that cannot be.
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

/// Follows the chain from entry to entry and says where it breaks.
class ChainCheck {
public:
    /// The problem with an entry, if any.
    std::optional<std::string> take(const Statement& row) {
        ++head_.entries;
        const auto bytes = row.value("bytes");
        const auto* recorded = std::get_if<QByteArray>(&bytes);
        if (recorded == nullptr) return "bytes holds " + shown(bytes);
        const auto event = decodeEvent(*recorded);
        if (!event) return event.error().message;
        head_.hash = chained(head_.hash, *recorded);
        const Stamp stamp = stampOf(*event);
        const auto part = parts_.next(stamp.key);
        for (const Cell& cell : cellsOf(stamp, head_, part, *recorded))
            if (const Value found = row.value(cell.column); found != cell.value)
                return std::string{cell.column} + " is " + shown(found) + ", and " +
                       shown(cell.value) + " follows from the bytes";
        return std::visit([this](const auto& each) { return follow(each); }, *event);
    }

    const Head& head() const noexcept { return head_; }

private:
    std::optional<std::string> follow(const Event& event) {
        auto& order = orders_[event.order];
        if (auto wrong = unfollowing(order, event)) return wrong;
        order = domain::evolve(std::move(order), event);
        return {};
    }
    std::optional<std::string> follow(const WorkshopEvent& event) {
        std::int64_t& version = subjects_[event.subject];
        if (event.version != ++version)
            return "version " + std::to_string(version) + " of " + event.subject.text() +
                   " was expected, not " + std::to_string(event.version);
        return {};
    }

    Head head_;
    Parts parts_;
    std::map<OrderNumber, std::optional<Order>> orders_;
    std::map<domain::Subject, std::int64_t> subjects_;
};

/// The problem with the row or rows of the head, if any.
std::optional<std::string> headProblem(Connection& connection, const Head& expected) {
    Statement rows{connection, "ledger_head_all"};
    if (!rows.run().next()) return "the head of the ledger is missing";
    const std::vector<Cell> cells{
        {"ledger_head_id", kHeadId}, {"entries", expected.entries}, {"hash", expected.hash}};
    for (const Cell& cell : cells)
        if (const Value found = rows.value(cell.column); found != cell.value)
            return "the head of the ledger says " + std::string{cell.column} + ' ' + shown(found) +
                   ", and the entries give " + shown(cell.value);
    if (rows.next()) return "the ledger has a second head";
    return {};
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

Result<std::int64_t> Ledger::entries() const try {
    return headOf(connection_).entries;
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

Result<LedgerReport> Ledger::verify() const try {
    const Snapshot snapshot{connection_};
    ChainCheck chain;
    Statement rows{connection_, "ledger_all"};
    rows.run();
    while (rows.next())
        if (const auto problem = chain.take(rows))
            return LedgerReport{.entries = chain.head().entries,
                                .head = chain.head().hash,
                                .problem = "entry " + std::to_string(chain.head().entries) +
                                           " of the ledger: " + *problem};
    return LedgerReport{.entries = chain.head().entries,
                        .head = chain.head().hash,
                        .problem = headProblem(connection_, chain.head())};
} catch (const SqlFailure& failure) {
    return failure.error();
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

Result<std::vector<Order>> loadOrders(Connection& connection) {
    std::map<OrderNumber, std::optional<Order>> folded;
    std::optional<Error> damage;
    const auto visited = Ledger{connection}.visit([&](const Event& event) {
        auto& order = folded[event.order];
        if (damage) return;
        if (const auto wrong = unfollowing(order, event))
            damage = Error{ErrorCode::Unavailable, "the ledger is damaged: " + *wrong};
        else
            order = domain::evolve(std::move(order), event);
    });
    if (!visited) return visited.error();
    if (damage) return *damage;
    std::vector<Order> orders;
    orders.reserve(folded.size());
    for (auto& [number, order] : folded) orders.push_back(*std::move(order));
    return orders;
}

}  // namespace storage
