#include "storage/session_store.h"

#include <vector>

#include "storage/access_log.h"
#include "storage/secrets.h"
#include "storage/settings_store.h"
#include "storage/statement.h"
#include "storage/stored_person.h"

namespace storage {
namespace {

using domain::Done;
using domain::Instant;
using domain::Result;
using domain::SignOutReason;

struct Ended {
    std::string token;
    domain::PersonCode person;
    std::string station;
};

/// Runs a statement that ends sessions, writes them into the access log, and says how many.
Result<std::int64_t> endBy(Transaction& transaction, std::string_view query,
                           const std::vector<Cell>& cells, Instant at, SignOutReason why) try {
    std::vector<Ended> all;
    {
        Statement ending{transaction.connection(), query};
        ending.bind(cells).bind("ended_us", at.microseconds()).run();
        while (ending.next())
            all.push_back(
                {ending.text("token_digest"), storedPerson(ending), ending.text("station")});
    }
    const AccessLog log{transaction.connection()};
    for (const Ended& ended : all)
        if (auto noted = log.append(transaction, {.at = at,
                                                  .person = ended.person,
                                                  .station = ended.station,
                                                  .what = domain::SignedOut{ended.token, why}});
            !noted)
            return noted.error();
    return static_cast<std::int64_t>(all.size());
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<Done> doneOf(const Result<std::int64_t>& ended) {
    if (!ended) return ended.error();
    return Done{};
}

/// Under the key as it is; without one, as before the laboratory is set up, nothing is sealed.
std::string sealedBy(Connection& connection, const std::string& tokenDigest, Instant lastUsed) {
    const auto key = hmacKeyOf(connection);
    return key && *key ? lastUsedSeal(**key, tokenDigest, lastUsed) : std::string{};
}

}  // namespace

std::string lastUsedSeal(const std::string& key, const std::string& tokenDigest, Instant lastUsed) {
    return keyedDigest(key,
                       {"last used ", tokenDigest, " ", std::to_string(lastUsed.microseconds())});
}

Result<Done> SessionStore::open(Transaction& transaction, const std::string& tokenDigest,
                                const KeptSession& session) const try {
    Statement{transaction.connection(), "session_insert"}
        .bind(
            {{"token_digest", tokenDigest},
             {"person", session.person.text()},
             {"station", session.station},
             {"opened_us", session.opened.microseconds()},
             {"last_used_us", session.lastUsed.microseconds()},
             {"last_used_seal", sealedBy(transaction.connection(), tokenDigest, session.lastUsed)}})
        .run();
    return AccessLog{transaction.connection()}.append(transaction,
                                                      {.at = session.opened,
                                                       .person = session.person,
                                                       .station = session.station,
                                                       .what = domain::SignedIn{tokenDigest}});
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
        .bind({{"token_digest", tokenDigest},
               {"last_used_us", at.microseconds()},
               {"last_used_seal", sealedBy(transaction.connection(), tokenDigest, at)}})
        .run();
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<Done> SessionStore::end(Transaction& transaction, const std::string& tokenDigest, Instant at,
                               SignOutReason why) const {
    return doneOf(endBy(transaction, "session_end", {{"token_digest", tokenDigest}}, at, why));
}

Result<Done> SessionStore::endAllOf(Transaction& transaction, const domain::PersonCode& person,
                                    Instant at) const {
    return doneOf(endBy(transaction, "session_end_person", {{"person", person.text()}}, at,
                        SignOutReason::CredentialsChanged));
}

Result<Done> SessionStore::endAllAt(Transaction& transaction, const std::string& station,
                                    Instant at) const {
    return doneOf(endBy(transaction, "session_end_station", {{"station", station}}, at,
                        SignOutReason::Replaced));
}

Result<std::int64_t> SessionStore::endIdle(Transaction& transaction, Instant usedBefore,
                                           Instant at) const {
    return endBy(transaction, "session_end_idle", {{"used_before_us", usedBefore.microseconds()}},
                 at, SignOutReason::Rested);
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
