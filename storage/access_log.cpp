#include "storage/access_log.h"

#include "storage/access_fields.h"
#include "storage/ledger_chain.h"
#include "storage/statement.h"
#include "storage/tagged_record.h"

namespace storage {
namespace {

using domain::AccessEntry;
using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Instant;
using domain::Result;

/// Keeps the hashes of this log apart from those of the ledger, and from other digests.
constexpr char kAccessDomain = 4;
constexpr std::int64_t kFormat = 1;
constexpr std::int64_t kHeadId = 1;

/// What every entry holds beside what happened.
struct Envelope {
    std::int64_t at{};
    std::string person{};
    std::optional<std::string> station{};
};

void fields(auto& coder, domain::Is<Envelope> auto& part) {
    coder.field("at", part.at);
    coder.field("person", part.person);
    coder.field("station", part.station);
}

/// What an entry is found by.
struct About {
    std::string operator()(const domain::SignedIn& what) const { return what.session; }
    std::string operator()(const domain::SignedOut& what) const { return what.session; }
    std::string operator()(const domain::SessionFound& what) const { return what.session; }
    std::string operator()(const domain::AttemptsCounted&) const { return {}; }
    std::string operator()(const domain::AccessDenied& what) const { return what.command; }
    std::string operator()(const domain::IdentityViewed& what) const { return what.order; }
    std::string operator()(const domain::PaperPrinted& what) const { return what.about; }
    std::string operator()(const domain::Exported& what) const { return what.what; }
};

/// What the columns of an entry must hold: all of it follows from the bytes.
std::vector<Cell> cellsOf(const AccessEntry& entry, const ChainHead& head,
                          const QByteArray& bytes) {
    return {{"position", head.entries},
            {"at_us", entry.at.microseconds()},
            {"person", entry.person.text()},
            {"station", entry.station},
            {"kind", std::string{codeOf(kindOf(entry))}},
            {"about", std::visit(About{}, entry.what)},
            {"bytes", bytes},
            {"hash", head.hash}};
}

ChainHead headOf(Connection& connection) {
    Statement query{connection, "access_head_all"};
    if (!query.run().next())
        throw SqlFailure{"the head of the access log is missing; verify the records"};
    return {query.whole("entries"), query.text("hash")};
}

AccessEntry readEntry(const QByteArray& bytes) {
    ByteSource source{bytes};
    if (const std::int64_t format = wholeIn(source.piece()); format != kFormat)
        throw Malformed{"format " + std::to_string(format) + " is not known here"};
    TaggedReader reader{source.rest()};
    Envelope envelope;
    fields(reader, envelope);
    if (envelope.station && envelope.station->empty()) throw Malformed{"an empty station"};
    const auto person = domain::PersonCode::parse(envelope.person);
    if (!person) throw Malformed{'"' + envelope.person + "\" is not the code of a person"};
    AccessEntry entry{.at = Instant::ofMicroseconds(envelope.at),
                      .person = *person,
                      .station = envelope.station.value_or(std::string{})};
    reader.field("what", entry.what);
    reader.end();
    return entry;
}

/// The problem with a row, if any; `entry` is what it holds.
std::optional<std::string> problemOf(const Statement& row, ChainHead& head,
                                     std::optional<AccessEntry>& entry) {
    ++head.entries;
    const auto bytes = row.value("bytes");
    const auto* recorded = std::get_if<QByteArray>(&bytes);
    if (recorded == nullptr) return "bytes holds " + shown(bytes);
    auto read = decodeAccess(*recorded);
    if (!read) return read.error().message;
    head.hash = chained(kAccessDomain, head.hash, *recorded);
    for (const Cell& cell : cellsOf(*read, head, *recorded))
        if (const Value found = row.value(cell.column); found != cell.value)
            return std::string{cell.column} + " is " + shown(found) + ", and " + shown(cell.value) +
                   " follows from the bytes";
    entry = *std::move(read);
    return {};
}

std::optional<std::string> accessHeadProblem(Connection& connection, const ChainHead& expected) {
    Statement rows{connection, "access_head_all"};
    if (!rows.run().next()) return "the head of the access log is missing";
    const std::vector<Cell> cells{
        {"access_head_id", kHeadId}, {"entries", expected.entries}, {"hash", expected.hash}};
    for (const Cell& cell : cells)
        if (const Value found = rows.value(cell.column); found != cell.value)
            return "the head of the access log says " + std::string{cell.column} + ' ' +
                   shown(found) + ", and the entries give " + shown(cell.value);
    if (rows.next()) return "the access log has a second head";
    return {};
}

}  // namespace

QByteArray encodeAccess(const AccessEntry& entry) {
    TaggedWriter writer;
    const Envelope envelope{
        .at = entry.at.microseconds(),
        .person = entry.person.text(),
        .station = entry.station.empty() ? std::nullopt : std::optional{entry.station}};
    fields(writer, envelope);
    writer.field("what", entry.what);
    QByteArray bytes;
    appendPiece(bytes, wholeBytes(kFormat));
    return bytes + writer.take();
}

Result<AccessEntry> decodeAccess(const QByteArray& bytes) try {
    return readEntry(bytes);
} catch (const Malformed& malformed) {
    return Error{ErrorCode::Unusable,
                 std::string{"the bytes of an entry cannot be read: "} + malformed.what()};
}

Result<Done> AccessLog::append(Transaction& transaction, const AccessEntry& entry) const try {
    const QByteArray bytes = encodeAccess(entry);
    if (auto again = decodeAccess(bytes); !again) return again.error();
    Connection& connection = transaction.connection();
    const ChainHead before = headOf(connection);
    const ChainHead head{before.entries + 1, chained(kAccessDomain, before.hash, bytes)};
    Statement{connection, "access_log_insert"}.bind(cellsOf(entry, head, bytes)).run();
    Statement move{connection, "access_head_move"};
    move.bind({{"entries", head.entries},
               {"hash", head.hash},
               {"entries_before", before.entries},
               {"hash_before", before.hash}});
    if (!move.run().next())
        return Error{ErrorCode::Conflict, "the access log was written meanwhile"};
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::optional<Instant>> AccessLog::newest(const std::string& about,
                                                 const domain::PersonCode& person,
                                                 domain::AccessKind kind) const try {
    Statement row{connection_, "access_log_newest"};
    row.bind({{"about", about}, {"person", person.text()}, {"kind", std::string{codeOf(kind)}}});
    if (!row.run().next()) return std::optional<Instant>{};
    return std::optional{Instant::ofMicroseconds(row.whole("at_us"))};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<Done> AccessLog::visit(const std::function<void(const AccessEntry&)>& visitor) const try {
    Statement rows{connection_, "access_log_all"};
    rows.run();
    while (rows.next()) {
        const auto entry = decodeAccess(rows.bytes("bytes"));
        if (!entry)
            return Error{ErrorCode::Unavailable,
                         "entry " + std::to_string(rows.whole("position")) +
                             " of the access log: " + entry.error().message};
        visitor(*entry);
    }
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<AccessReport> AccessLog::verify(const std::function<void(const AccessEntry&)>& visitor) const
    try {
    const Snapshot snapshot{connection_};
    ChainHead head;
    Statement rows{connection_, "access_log_all"};
    rows.run();
    while (rows.next()) {
        std::optional<AccessEntry> entry;
        if (const auto problem = problemOf(rows, head, entry))
            return AccessReport{.entries = head.entries,
                                .head = head.hash,
                                .problem = "entry " + std::to_string(head.entries) +
                                           " of the access log: " + *problem};
        if (visitor) visitor(*entry);
    }
    return AccessReport{.entries = head.entries,
                        .head = head.hash,
                        .problem = accessHeadProblem(connection_, head)};
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace storage
