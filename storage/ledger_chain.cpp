#include "storage/ledger_chain.h"

#include <utility>

#include "storage/digest.h"

namespace storage {
namespace {

using domain::Error;
using domain::ErrorCode;
using domain::Result;

constexpr std::int64_t kHeadId = 1;

/// Where a column holds something else than it should.
std::optional<std::string> differing(const Statement& row, const std::vector<Cell>& expected) {
    for (const Cell& cell : expected)
        if (const Value found = row.value(cell.column); found != cell.value)
            return std::string{cell.column} + " is " + shown(found) + ", and " + shown(cell.value) +
                   " follows from the bytes";
    return {};
}

/// The first format in which entries are in the order of their times.
constexpr std::int64_t kInOrderOfTime = 4;

bool marksClock(const LedgerEvent& event) {
    const auto* own = std::get_if<domain::WorkshopEvent>(&event);
    return own != nullptr && std::holds_alternative<domain::ClockMarked>(own->what);
}

}  // namespace

std::string chained(char domain, const std::string& previous, const QByteArray& bytes) {
    const QByteArray raw = QByteArray::fromHex(QByteArray::fromStdString(previous));
    return sha256({QByteArrayView{&domain, 1}, raw, bytes});
}

EntryStamp stampOf(const domain::Event& event) {
    return {Stream::Orders,     event.order.text(),
            event.version,      std::string{codeOf(kindOf(event))},
            event.key,          event.at.microseconds(),
            event.person.text()};
}

EntryStamp stampOf(const domain::WorkshopEvent& event) {
    return {Stream::Workshop,   event.subject.text(),
            event.version,      std::string{codeOf(kindOf(event))},
            event.key,          event.at.microseconds(),
            event.person.text()};
}

EntryStamp stampOf(const LedgerEvent& event) {
    return std::visit([](const auto& each) { return stampOf(each); }, event);
}

std::vector<Cell> entryCells(const EntryStamp& stamp, const ChainHead& head, std::int64_t part,
                             const QByteArray& bytes) {
    return {{"position", head.entries},
            {"stream", static_cast<std::int64_t>(stamp.stream)},
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

ChainHead ledgerHead(Connection& connection) {
    Statement query{connection, "ledger_head_all"};
    if (!query.run().next())
        throw SqlFailure{"the head of the ledger is missing; verify the records"};
    return {query.whole("entries"), query.text("hash")};
}

std::optional<std::string> headProblem(Connection& connection, const ChainHead& expected) {
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

Result<LedgerEvent> LedgerChain::take(const Statement& row) {
    ++head_.entries;
    const auto bytes = row.value("bytes");
    const auto* recorded = std::get_if<QByteArray>(&bytes);
    if (recorded == nullptr) return Error{ErrorCode::Unavailable, "bytes holds " + shown(bytes)};
    auto event = decodeEvent(*recorded);
    if (!event) return event;
    head_.hash = chained(kLedgerDomain, head_.hash, *recorded);
    const EntryStamp stamp = stampOf(*event);
    if (auto wrong = differing(row, entryCells(stamp, head_, parts_.next(stamp.key), *recorded)))
        return Error{ErrorCode::Unavailable, *std::move(wrong)};
    if (stamp.at < std::exchange(newestAt_, stamp.at) && !marksClock(*event) &&
        formatOf(*recorded) >= kInOrderOfTime)
        return Error{ErrorCode::Unavailable,
                     "its time is before that of the entry before it, and nothing marks the clock"};
    return event;
}

}  // namespace storage
