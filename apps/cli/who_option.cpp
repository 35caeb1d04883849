#include "apps/cli/who_option.h"

#include <cstdlib>

#include "apps/cli/lab_option.h"
#include "apps/cli/secret_input.h"
#include "apps/cli/terminal_session.h"
#include "apps/cli/typed_words.h"

namespace cli {
namespace {

using domain::Result;

std::optional<std::string> inherited(const char* name) {
    const char* value = std::getenv(name);
    return value == nullptr || *value == '\0' ? std::nullopt : std::optional<std::string>{value};
}

/// A key stands in the ledger for good, so it is a code and no text.
bool isKey(std::string_view text) {
    constexpr std::size_t kLongest = 64;
    constexpr std::string_view kLetters =
        "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_.:";
    return !text.empty() && text.size() <= kLongest &&
           text.find_first_not_of(kLetters) == std::string_view::npos;
}

/// Empty: none is given, and the action makes one.
Result<std::string> keyOf(const Call& call) {
    const auto given = call.option("key");
    if (!given) return std::string{};
    if (isKey(*given)) return *given;
    return unusable("--key \"" + *given +
                    "\" is no idempotency key; expected 1 to 64 letters, digits, '-', '_', '.' "
                    "or ':'");
}

}  // namespace

Result<actions::Who> whoOf(const Call& call) {
    const auto here = sessionHere(labFolder(call));
    auto code = call.option("as");
    if (!code) code = inherited("FRAMEWRIGHT_AS");
    if (!code && here) code = here->person.text();
    if (!code)
        return unusable(
            "who does this? nobody is signed in at this terminal: framewright sign-in "
            "CODE (or give your code with --as, or set FRAMEWRIGHT_AS)");
    const auto person = personOf(*code);
    if (!person) return person.error();
    const auto key = keyOf(call);
    if (!key) return key.error();
    const auto station = stationOf(call);
    if (!station) return station.error();
    // Without a token the action says that they are not signed in.
    std::string token = inherited("FRAMEWRIGHT_SESSION").value_or(std::string{});
    if (token.empty() && here && here->person == *person) token = here->token;
    actions::Who who{
        .person = *person, .key = *key, .token = std::move(token), .station = *station};
    if (const auto seen = call.option("seen")) {
        const auto version = wholeOf(*seen, 1, "version of an order");
        if (!version) return version.error();
        who.seen = *version;
    }
    return who;
}

Result<actions::Who> provenWhoOf(const Call& call) {
    auto who = whoOf(call);
    if (!who) return who;
    const auto password = readSecret("password of " + who->person.text() + ", once more");
    if (!password) return password.error();
    return actions::proving(*who, *password);
}

void forgetSessionOf(const Call& call, const domain::PersonCode& person) {
    const auto here = sessionHere(labFolder(call));
    if (here && here->person == person) forgetSessionHere(labFolder(call));
}

Result<std::string> stationOf(const Call& call) {
    const auto given = call.option("station");
    const auto text = given ? given : inherited("FRAMEWRIGHT_STATION");
    if (!text || text->empty()) return std::string{};
    if (domain::ThingCode::parse(*text)) return *text;
    return unusable(std::string{given ? "--station" : "$FRAMEWRIGHT_STATION"} + " \"" + *text +
                    "\" is no station's code; expected " + std::string{domain::kShortCodeForm});
}

}  // namespace cli
