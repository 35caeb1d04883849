#include "storage/take_over.h"

#include <set>

#include "storage/access_log.h"
#include "storage/counted_code.h"
#include "storage/credential_store.h"
#include "storage/laboratory_identity.h"
#include "storage/ledger.h"
#include "storage/session_store.h"
#include "storage/settings_store.h"
#include "storage/shade_guide_store.h"
#include "storage/statement.h"
#include "storage/stored_person.h"

namespace storage {
namespace {

using domain::Done;
using domain::Instant;
using domain::Result;

const domain::PersonCode& nobody() {
    static const domain::PersonCode kUpgrade = *domain::PersonCode::parse("upgrade");
    return kUpgrade;
}

bool hasKind(Connection& connection, domain::WorkshopEventKind kind) {
    Statement row{connection, "ledger_of_kind"};
    return row.bind("kind", std::string{codeOf(kind)}).run().next();
}

/// When the newest entry was made; nullopt: there is none.
std::optional<Instant> newestOf(Connection& connection) {
    Statement newest{connection, "ledger_last"};
    if (!newest.run().next()) return {};
    return Instant::ofMicroseconds(newest.whole("at_us"));
}

std::vector<domain::SettingSet> settingsIn(Connection& connection) {
    std::vector<domain::SettingSet> all;
    Statement rows{connection, "setting_all"};
    rows.run();
    while (rows.next()) {
        domain::SettingSet set{.name = rows.text("name"), .now = rows.text("content")};
        set.isSecret = set.name == kHmacKeySetting;
        if (set.isSecret) set.now = settingDigest(set.name, set.now);
        all.push_back(std::move(set));
    }
    if (const auto identity = identityOf(connection); identity && *identity)
        all.push_back({.name = std::string{kIdentitySetting},
                       .now = identityDigest(**identity),
                       .isSecret = true});
    return all;
}

/// Texts that no event took up.
Result<std::vector<domain::SealedText>> strayTexts(Connection& connection) {
    std::set<std::string> takenUp;
    const auto read = Ledger{connection}.visitAll([&](const LedgerEvent& event) {
        for (const domain::SealedText& sealed : sealedTextsIn(event)) takenUp.insert(sealed.code);
    });
    if (!read) return read.error();
    std::vector<domain::SealedText> stray;
    Statement rows{connection, "sealed_text_digests"};
    rows.run();
    while (rows.next()) {
        std::string code = countedCode(kSealedTextCode, rows.whole("sealed_text_id"));
        if (!takenUp.contains(code)) stray.push_back({std::move(code), rows.text("digest")});
    }
    return stray;
}

Result<Done> takeSessions(Transaction& transaction, Instant at) {
    struct Found {
        domain::AccessEntry entry;
        Instant lastUsed{};
    };
    Connection& connection = transaction.connection();
    std::vector<Found> all;
    {
        Statement rows{connection, "session_all"};
        rows.run();
        while (rows.next())
            all.push_back(
                {{.at = at,
                  .person = storedPerson(rows),
                  .station = rows.text("station"),
                  .what = domain::SessionFound{rows.text("token_digest"), rows.whole("opened_us"),
                                               rows.wholeIfAny("ended_us")}},
                 Instant::ofMicroseconds(rows.whole("last_used_us"))});
    }
    const auto key = hmacKeyOf(connection);
    if (!key) return key.error();
    for (const Found& found : all) {
        if (auto noted = AccessLog{connection}.append(transaction, found.entry); !noted)
            return noted;
        if (!*key) continue;
        const std::string& token = std::get<domain::SessionFound>(found.entry.what).session;
        Statement{connection, "session_seal"}
            .bind({{"token_digest", token},
                   {"last_used_seal", lastUsedSeal(**key, token, found.lastUsed)}})
            .run();
    }
    return Done{};
}

/// Passwords and badges into the event, failures into the access log.
Result<Done> takeCredentials(Transaction& transaction, Instant at, domain::TakenOver& taken) {
    const CredentialStore store{transaction.connection()};
    const auto all = store.all();
    if (!all) return all.error();
    for (const KeptCredentials& kept : *all) {
        for (const auto& code : domain::enumCodes<domain::Credential>)
            if (auto digest = credentialDigest(kept, code.value))
                taken.credentials.push_back({kept.person.text(), code.value, *std::move(digest)});
        if (kept == KeptCredentials{.person = kept.person}) {
            if (auto removed = store.remove(transaction, kept.person, at); !removed) return removed;
            continue;
        }
        domain::AttemptsCounted counted{.failures = kept.failures};
        if (kept.lockedUntil) counted.lockedUntil = kept.lockedUntil->microseconds();
        if (counted == domain::AttemptsCounted{}) continue;
        if (auto noted = AccessLog{transaction.connection()}.append(
                transaction, {.at = at, .person = kept.person, .what = counted});
            !noted)
            return noted;
    }
    return Done{};
}

domain::WorkshopEvent eventOf(domain::TakenOver taken, Instant at) {
    return {.subject = {domain::SubjectKind::Records, "tables"},
            .version = 1,
            .at = at,
            .person = nobody(),
            .key = "taken-over",
            .what = std::move(taken)};
}

}  // namespace

Result<Done> takeOver(Transaction& transaction) try {
    Connection& connection = transaction.connection();
    const auto at = newestOf(connection);
    if (!at || hasKind(connection, domain::WorkshopEventKind::TakenOver) ||
        hasKind(connection, domain::WorkshopEventKind::SettingSet))
        return Done{};
    auto guides = ShadeGuideStore{connection}.all();
    if (!guides) return guides.error();
    auto texts = strayTexts(connection);
    if (!texts) return texts.error();
    domain::TakenOver taken{.settings = settingsIn(connection),
                            .guides = *std::move(guides),
                            .texts = *std::move(texts)};
    if (auto done = takeCredentials(transaction, *at, taken); !done) return done;
    if (auto done = takeSessions(transaction, *at); !done) return done;
    return Ledger{connection}.append(transaction, std::vector{eventOf(std::move(taken), *at)});
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace storage
