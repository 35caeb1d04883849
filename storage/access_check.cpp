#include <map>

#include "storage/credential_store.h"
#include "storage/kept_check.h"
#include "storage/session_store.h"
#include "storage/settings_store.h"
#include "storage/statement.h"

namespace storage {
namespace {

using domain::Credential;
using domain::WorkshopEvent;

class CredentialsCheck : public KeptCheck {
public:
    explicit CredentialsCheck(Connection& connection) : connection_{connection} {}

    void entry(const LedgerEvent& event) override {
        const auto* workshop = std::get_if<WorkshopEvent>(&event);
        if (workshop == nullptr) return;
        const std::string& person = workshop->subject.code;
        if (const auto* given = std::get_if<domain::CredentialGiven>(&workshop->what))
            digests_[{person, given->credential}] = given->digest;
        if (const auto* kept = std::get_if<domain::CredentialKept>(&workshop->what))
            digests_[{person, kept->credential}] = kept->digest;
        if (const auto* taken = std::get_if<domain::CredentialTaken>(&workshop->what))
            digests_.erase({person, taken->credential});
        if (const auto* taken = std::get_if<domain::TakenOver>(&workshop->what)) {
            digests_.clear();
            for (const domain::FoundCredential& known : taken->credentials)
                digests_[{known.person, known.credential}] = known.digest;
        }
    }
    void access(const domain::AccessEntry& entry) override {
        const auto* counted = std::get_if<domain::AttemptsCounted>(&entry.what);
        if (counted == nullptr) return;
        if (*counted == domain::AttemptsCounted{})
            attempts_.erase(entry.person.text());
        else
            attempts_[entry.person.text()] = *counted;
    }
    void compare() override {
        const auto all = CredentialStore{connection_}.all();
        if (!all) {
            found(all.error().message);
            return;
        }
        for (const KeptCredentials& kept : *all) one(kept);
        for (const auto& [key, digest] : digests_)
            found("the " + std::string{codeOf(key.second)} + " of " + key.first + " is missing");
        for (const auto& [person, counted] : attempts_)
            found("the failed attempts of " + person + " are missing");
    }

private:
    using Key = std::pair<std::string, Credential>;

    void one(const KeptCredentials& kept) {
        const std::string person = kept.person.text();
        if (kept == KeptCredentials{.person = kept.person})
            found("the credentials of " + person + " hold nothing");
        if (kept.mustChange && !kept.passwordHash)
            found(person + " must change a password that is not there");
        for (const auto& code : domain::enumCodes<Credential>) {
            const auto digest = credentialDigest(kept, code.value);
            const auto known = digests_.extract(Key{person, code.value});
            if (known ? digest != known.mapped() : digest.has_value())
                found("the " + std::string{code.word} + " of " + person +
                      " is not what the ledger says was given");
        }
        const auto counted = attempts_.extract(person);
        domain::AttemptsCounted now{.failures = kept.failures};
        if (kept.lockedUntil) now.lockedUntil = kept.lockedUntil->microseconds();
        if (now != (counted ? counted.mapped() : domain::AttemptsCounted{}))
            found("the failed attempts of " + person + " are not as they were counted");
    }

    Connection& connection_;
    /// nullopt: given before it was committed to, and never taken over.
    std::map<Key, std::optional<std::string>> digests_;
    std::map<std::string, domain::AttemptsCounted> attempts_;
};

class SessionsCheck : public KeptCheck {
public:
    explicit SessionsCheck(Connection& connection) : connection_{connection} {}

    void access(const domain::AccessEntry& entry) override {
        if (const auto* in = std::get_if<domain::SignedIn>(&entry.what))
            sessions_[in->session] = {
                entry.person.text(), entry.station, entry.at.microseconds(), {}};
        if (const auto* known = std::get_if<domain::SessionFound>(&entry.what))
            sessions_[known->session] = {entry.person.text(), entry.station, known->opened,
                                         known->ended};
        if (const auto* out = std::get_if<domain::SignedOut>(&entry.what))
            if (const auto open = sessions_.find(out->session); open != sessions_.end())
                open->second.ended = entry.at.microseconds();
    }
    void compare() override {
        const auto key = hmacKeyOf(connection_);
        // Without the identity key the seals are not looked at.
        canLook_ = static_cast<bool>(key);
        if (key && *key) key_ = **key;
        Statement rows{connection_, "session_all"};
        rows.run();
        while (rows.next()) {
            const auto known = sessions_.extract(rows.text("token_digest"));
            const auto person = rows.text("person");
            if (!known)
                found("a session of " + person + " was never opened");
            else if (!fits(rows, known.mapped()))
                found("a session of " + person + " is not as the access log says");
            else if (canLook_ && !isSealed(rows, known.key()))
                found("when a session of " + person + " was last used was altered");
        }
        for (const auto& [token, session] : sessions_)
            found("a session of " + session.person + " is missing");
    }

private:
    struct Known {
        std::string person;
        std::string station;
        std::int64_t opened{};
        std::optional<std::int64_t> ended{};
    };

    static bool fits(const Statement& row, const Known& known) {
        return row.value("person") == Value{known.person} &&
               row.value("station") == Value{known.station} &&
               row.value("opened_us") == Value{known.opened} &&
               row.value("ended_us") == orNull(known.ended);
    }
    bool isSealed(const Statement& row, const std::string& token) const {
        const auto used = domain::Instant::ofMicroseconds(row.whole("last_used_us"));
        return row.value("last_used_seal") ==
               Value{key_ ? lastUsedSeal(*key_, token, used) : std::string{}};
    }

    Connection& connection_;
    std::map<std::string, Known> sessions_;
    std::optional<std::string> key_;
    bool canLook_{};
};

}  // namespace

std::unique_ptr<KeptCheck> credentialsCheck(Connection& connection) {
    return std::make_unique<CredentialsCheck>(connection);
}
std::unique_ptr<KeptCheck> sessionsCheck(Connection& connection) {
    return std::make_unique<SessionsCheck>(connection);
}

}  // namespace storage
