#include "storage/session_store.h"

#include "storage/statement.h"
#include "storage/stored_person.h"

namespace storage {
namespace {

using domain::Done;
using domain::Instant;
using domain::Result;

/// Ends the open sessions that a statement names by one cell.
Result<Done> endBy(Transaction& transaction, std::string_view query, const Cell& which,
                   Instant at) try {
    Statement{transaction.connection(), query}.bind({which, {"ended_us", at.microseconds()}}).run();
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace

Result<Done> SessionStore::open(Transaction& transaction, const std::string& tokenDigest,
                                const KeptSession& session) const try {
    Statement{transaction.connection(), "session_insert"}
        .bind({{"token_digest", tokenDigest},
               {"person", session.person.text()},
               {"station", session.station},
               {"opened_us", session.opened.microseconds()},
               {"last_used_us", session.lastUsed.microseconds()}})
        .run();
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::optional<KeptSession>> SessionStore::find(const std::string& tokenDigest) const try {
    Statement row{connection_, "session_find"};
    row.bind("token_digest", tokenDigest).run();
    if (!row.next()) return std::optional<KeptSession>{};
    KeptSession session{.person = storedPerson(row),
                        .station = row.text("station"),
                        .opened = Instant::ofMicroseconds(row.whole("opened_us")),
                        .lastUsed = Instant::ofMicroseconds(row.whole("last_used_us"))};
    if (const auto ended = row.wholeIfAny("ended_us"))
        session.ended = Instant::ofMicroseconds(*ended);
    return std::optional{std::move(session)};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<Done> SessionStore::touch(Transaction& transaction, const std::string& tokenDigest,
                                 Instant at) const try {
    Statement{transaction.connection(), "session_touch"}
        .bind({{"token_digest", tokenDigest}, {"last_used_us", at.microseconds()}})
        .run();
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<Done> SessionStore::end(Transaction& transaction, const std::string& tokenDigest,
                               Instant at) const {
    return endBy(transaction, "session_end", {"token_digest", tokenDigest}, at);
}

Result<Done> SessionStore::endAllOf(Transaction& transaction, const domain::PersonCode& person,
                                    Instant at) const {
    return endBy(transaction, "session_end_person", {"person", person.text()}, at);
}

Result<Done> SessionStore::endAllAt(Transaction& transaction, const std::string& station,
                                    Instant at) const {
    return endBy(transaction, "session_end_station", {"station", station}, at);
}

Result<std::int64_t> SessionStore::endIdle(Transaction& transaction, Instant usedBefore,
                                           Instant at) const try {
    Statement ended{transaction.connection(), "session_end_idle"};
    ended.bind({{"used_before_us", usedBefore.microseconds()}, {"ended_us", at.microseconds()}})
        .run();
    std::int64_t count = 0;
    while (ended.next()) ++count;
    return count;
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::map<domain::PersonCode, Instant>> SessionStore::lastUsed() const try {
    Statement row{connection_, "session_last_used"};
    row.run();
    std::map<domain::PersonCode, Instant> used;
    while (row.next())
        used.insert_or_assign(storedPerson(row),
                              Instant::ofMicroseconds(row.whole("last_used_us")));
    return used;
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace storage
