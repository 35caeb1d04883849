#include "apps/cli/key_verbs.h"

#include <nlohmann/json.hpp>

#include "apps/actions/recovery.h"
#include "apps/cli/lab_option.h"
#include "apps/cli/output.h"
#include "apps/cli/secret_input.h"
#include "apps/cli/typed_words.h"
#include "apps/cli/who_option.h"

namespace cli {
namespace {

using actions::Laboratory;
using domain::Done;
using domain::Result;

Result<Done> changePassphrase(const Call& call, const Laboratory& laboratory) {
    const auto who = whoOf(call);
    if (!who) return who.error();
    if (call.has("no-passphrase")) return actions::lockKeyFile(laboratory, {}, *who);
    const auto passphrase = readNewSecret("new passphrase");
    if (!passphrase) return passphrase.error();
    return actions::lockKeyFile(laboratory, *passphrase, *who);
}

/// Shows where the key lies and what was done.
Result<Exit> show(const Call& call, const Laboratory& laboratory, const Json& more,
                  const Page& told) {
    const auto file = actions::keyFileOf(laboratory);
    if (!file) return file.error();
    if (call.has("json")) {
        Json object = {{"key-file", file->string()}};
        object.update(more);
        print("key-1", object);
    } else {
        print(Page{"identity key   " + file->string()}.add(told));
    }
    return Exit::Done;
}

Result<Exit> newCode(const Call& call, const Laboratory& laboratory) {
    const auto who = provenWhoOf(call);
    if (!who) return who.error();
    const auto code = actions::renewRecoveryCode(laboratory, *who);
    if (!code) return code.error();
    return show(call, laboratory, {{"recovery-code", code->text()}},
                Page{"recovery code  " + code->text()}
                    .line("               told this once: keep it on paper; earlier codes open "
                          "nothing from now on,")
                    .line("               but the backups that were made under them"));
}

}  // namespace

Result<Exit> key(const Call& call) {
    const int asked = int{call.has("passphrase")} + int{call.has("no-passphrase")} +
                      int{call.has("new-recovery-code")};
    if (asked > 1)
        return unusable(
            "one of --passphrase, --no-passphrase and --new-recovery-code was expected");
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    if (call.has("new-recovery-code")) return newCode(call, *laboratory);
    if (asked == 0) return show(call, *laboratory, Json::object(), Page{});
    if (const auto done = changePassphrase(call, *laboratory); !done) return done.error();
    return show(call, *laboratory, Json::object(),
                Page{call.has("passphrase")
                         ? "               locked; its passphrase is asked for at each start"
                         : "               lies there in the open"});
}

Result<Exit> recover(const Call& call) {
    const auto person = personOf(call.arguments().front());
    if (!person) return person.error();
    // Asked for once, by whoever needs it first.
    std::optional<Result<actions::Secret>> typed;
    const auto code = [&] {
        if (!typed) typed.emplace(readSecret("recovery code"));
        return *typed;
    };
    storage::KeyAccess keys = keyAccess();
    keys.recoveryCode = code;
    const auto laboratory = Laboratory::openExisting(labFolder(call), machineClock(), keys);
    if (!laboratory) return laboratory.error();
    if (const auto read = code(); !read) return read.error();
    const auto fresh = readNewSecret("new password");
    if (!fresh) return fresh.error();
    if (const auto done = actions::recover(*laboratory, *person, *code(), *fresh); !done)
        return done.error();
    forgetSessionOf(call, *person);
    return show(
        call, *laboratory, {{"person", person->text()}},
        Page{person->text() + " has a new password; next: framewright sign-in " + person->text()});
}

}  // namespace cli
