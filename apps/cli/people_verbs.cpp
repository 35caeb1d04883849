#include "apps/cli/people_verbs.h"

#include <QStringList>
#include <algorithm>
#include <nlohmann/json.hpp>

#include "apps/actions/people.h"
#include "apps/actions/recovery.h"
#include "apps/actions/workshop.h"
#include "apps/cli/lab_option.h"
#include "apps/cli/output.h"
#include "apps/cli/secret_input.h"
#include "apps/cli/terminal_session.h"
#include "apps/cli/typed_words.h"
#include "apps/cli/who_option.h"

namespace cli {
namespace {

using actions::Laboratory;
using actions::PersonLine;
using actions::Secret;
using actions::Who;
using domain::Done;
using domain::PersonCode;
using domain::Result;
using Skills = std::vector<domain::Skill>;

/// "waxing,casting"; empty when the option is not given.
Result<Skills> skillsOf(const Call& call) {
    Skills skills;
    const auto words =
        QString::fromStdString(call.option("skills").value_or("")).split(',', Qt::SkipEmptyParts);
    for (const QString& word : words) {
        const auto skill = wordOf<domain::Skill>(word.trimmed().toStdString(), "skill");
        if (!skill) return skill.error();
        if (std::ranges::count(skills, *skill) == 0) skills.push_back(*skill);
    }
    return skills;
}

template <domain::CodedEnum E>
Json words(const std::vector<E>& values) {
    Json list = Json::array();
    for (const E value : values) list.push_back(std::string{codeOf(value)});
    return list;
}

Json timeOrNull(const std::optional<domain::Instant>& time) {
    return time ? Json(time->text()) : Json();
}

Json json(const PersonLine& line) {
    return {{"person", line.code.text()},
            {"role", std::string{codeOf(line.person.role)}},
            {"skills", words(line.person.skills)},
            {"left", line.person.left},
            {"password", line.hasPassword},
            {"must-change", line.mustChange},
            {"badge", line.hasBadge},
            {"locked-until", timeOrNull(line.lockedUntil)},
            {"last-here", timeOrNull(line.lastHere)}};
}

std::string proofsOf(const PersonLine& line) {
    if (line.person.left) return "left";
    std::string text = line.hasPassword ? "password" : "none";
    if (line.mustChange) text = "one-time password";
    if (line.hasBadge) text = line.hasPassword ? text + ", badge" : "badge";
    return line.lockedUntil ? text + "; LOCKED until " + line.lockedUntil->text() : text;
}

Exit show(const Call& call, const std::vector<PersonLine>& lines) {
    if (call.has("json")) {
        Json list = Json::array();
        for (const PersonLine& line : lines) list.push_back(json(line));
        print("people-1", {{"people", std::move(list)}});
        return Exit::Done;
    }
    std::vector<std::vector<std::string>> rows;
    for (const PersonLine& line : lines) {
        std::string skills;
        for (const domain::Skill skill : line.person.skills)
            skills += (skills.empty() ? "" : ",") + std::string{codeOf(skill)};
        rows.push_back({line.code.text(), std::string{codeOf(line.person.role)}, skills,
                        proofsOf(line), line.lastHere ? line.lastHere->text() : "never"});
    }
    print(rows.empty() ? Page{"nobody yet; framewright set-up CODE enters the first manager"}
                       : table({"person", "role", "skills", "signs in with", "last here"}, rows));
    return Exit::Done;
}

/// Everybody, or one of them.
Result<Exit> showPeople(const Call& call, const Laboratory& laboratory,
                        const std::optional<PersonCode>& only) {
    auto lines = actions::people(laboratory);
    if (!lines) return lines.error();
    std::vector<PersonLine> shown = *std::move(lines);
    if (only) {
        std::erase_if(shown, [&](const PersonLine& line) { return line.code != *only; });
        if (shown.empty()) return unusable("no such person: " + only->text());
    }
    return show(call, shown);
}

/// What was not said stays as it is.
Result<Done> enter(const Call& call, const Laboratory& laboratory, const PersonCode& person,
                   const Who& who) {
    auto skills = skillsOf(call);
    if (!skills) return skills.error();
    const auto lines = actions::people(laboratory);
    if (!lines) return lines.error();
    const auto known = std::ranges::find(*lines, person, &PersonLine::code);
    std::optional<domain::Role> role;
    if (known != lines->end()) role = known->person.role;
    if (const auto word = call.option("role")) {
        const auto given = wordOf<domain::Role>(*word, "role");
        if (!given) return given.error();
        role = *given;
    }
    if (!role)
        return unusable("what is " + person.text() +
                        " to be? give --role: " + domain::allWords<domain::Role>());
    if (!call.has("skills") && known != lines->end()) skills = known->person.skills;
    return actions::enterPerson(laboratory, person, *role, *skills, who);
}

/// Prints a page, or for programs an object about a person.
Exit say(const Call& call, std::string_view schema, const Json& object, const Page& page) {
    if (call.has("json"))
        print(schema, object);
    else
        print(page);
    return Exit::Done;
}

/// One session lives at a terminal: whoever was signed in there is signed out.
Result<Done> keepSession(const Call& call, const Laboratory& laboratory,
                         const actions::Session& session) {
    const auto former = sessionHere(labFolder(call));
    auto kept = keepSessionHere(labFolder(call), session);
    const actions::Session* ended = kept ? nullptr : &session;
    if (kept && former) ended = &*former;
    if (ended != nullptr)
        if (auto out =
                actions::signOut(laboratory, {.person = ended->person, .token = ended->token});
            !out)
            return out;
    return kept;
}

Result<Exit> changeOwnPassword(const Call& call, const Laboratory& laboratory,
                               const PersonCode& person) {
    const auto current = readSecret("present password");
    if (!current) return current.error();
    const auto fresh = readNewSecret("new password");
    if (!fresh) return fresh.error();
    if (const auto given = actions::givePassword(laboratory, person, *current, *fresh); !given)
        return given.error();
    forgetSessionOf(call, person);
    return say(call, "password-1", {{"person", person.text()}},
               Page{person.text() + " has a new password; sign in with it"});
}

Result<Exit> showStations(const Call& call, const Laboratory& laboratory) {
    const auto stations = actions::stations(laboratory);
    if (!stations) return stations.error();
    const auto minutes = actions::idleMinutes(laboratory);
    if (!minutes) return minutes.error();
    Json list = Json::array();
    std::vector<std::vector<std::string>> rows;
    for (const auto& [code, kind] : *stations) {
        list.push_back({{"station", code.text()}, {"kind", std::string{codeOf(kind)}}});
        rows.push_back({code.text(), wordsOf(kind)});
    }
    Page page = rows.empty() ? Page{"no stations yet: people sign in wherever they are"}
                             : table({"station", "is"}, rows);
    page.line("signed out after " + std::to_string(*minutes) + " minutes without work");
    return say(call, "stations-1", {{"idle-minutes", *minutes}, {"stations", std::move(list)}},
               page);
}

}  // namespace

Result<Exit> setUp(const Call& call) {
    const auto person = personOf(call.arguments().front());
    if (!person) return person.error();
    const auto skills = skillsOf(call);
    if (!skills) return skills.error();
    const auto laboratory = newLaboratoryOf(call);
    if (!laboratory) return laboratory.error();
    const auto password = readNewSecret("new password");
    if (!password) return password.error();
    const auto keyFile = actions::keyFileOf(*laboratory);
    if (!keyFile) return keyFile.error();
    const auto code = actions::setUp(*laboratory, *person, *skills, *password);
    if (!code) return code.error();
    return say(call, "set-up-1",
               {{"person", person->text()},
                {"key-file", keyFile->string()},
                {"recovery-code", code->text()}},
               Page{person->text() + " manages this laboratory; next: framewright sign-in " +
                    person->text()}
                   .line("identity key   " + keyFile->string())
                   .line("               names in the records are read with it alone; it is in no "
                         "backup in the open")
                   .line("recovery code  " + code->text())
                   .line("               told this once: keep it on paper, away from this machine; "
                         "it opens a backup elsewhere"));
}

Result<Exit> signIn(const Call& call) {
    if (call.has("badge") != call.arguments().empty())
        return unusable("a person's code or --badge was expected");
    const auto station = stationOf(call);
    if (!station) return station.error();
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    const auto session = [&]() -> Result<actions::Session> {
        const auto first = readSecret(call.has("badge") ? "badge" : "password");
        if (!first) return first.error();
        if (!call.has("badge")) {
            const auto person = personOf(call.arguments().front());
            if (!person) return person.error();
            return actions::signIn(*laboratory, *person, *first, *station);
        }
        const auto pin = readSecret("PIN");
        if (!pin) return pin.error();
        return actions::signInAtBench(*laboratory, *first, *pin, *station);
    }();
    if (!session) return session.error();
    if (const auto kept = keepSession(call, *laboratory, *session); !kept) return kept.error();
    const std::string code = session->person.text();
    const std::string at = session->station.empty() ? "" : " at " + session->station;
    return say(
        call, "session-1", {{"person", code}, {"station", session->station}},
        Page{code + " is signed in at this terminal" + at + "; framewright sign-out ends it"});
}

Result<Exit> signOut(const Call& call) {
    const auto who = whoOf(call);
    if (!who) return who.error();
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    if (const auto done = actions::signOut(*laboratory, *who); !done) return done.error();
    forgetSessionOf(call, who->person);
    return say(call, "signed-out-1", {{"person", who->person.text()}},
               Page{who->person.text() + " is signed out"});
}

Result<Exit> people(const Call& call) {
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    if (call.arguments().empty()) {
        if (call.has("role") || call.has("skills") || call.has("left"))
            return unusable("whose? a person's code was expected");
        return showPeople(call, *laboratory, {});
    }
    const auto person = personOf(call.arguments().front());
    if (!person) return person.error();
    const bool leaves = call.has("left");
    if (leaves && (call.has("role") || call.has("skills")))
        return unusable("--left or --role and --skills were expected, not both");
    if (leaves || call.has("role") || call.has("skills")) {
        const auto who = provenWhoOf(call);
        if (!who) return who.error();
        const auto done = leaves ? actions::personLeaves(*laboratory, *person, *who)
                                 : enter(call, *laboratory, *person, *who);
        if (!done) return done.error();
    }
    return showPeople(call, *laboratory, *person);
}

Result<Exit> password(const Call& call) {
    const auto person = personOf(call.arguments().front());
    if (!person) return person.error();
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    if (!call.has("reset")) return changeOwnPassword(call, *laboratory, *person);
    const auto who = provenWhoOf(call);
    if (!who) return who.error();
    const auto secret = actions::resetPassword(*laboratory, *person, *who);
    if (!secret) return secret.error();
    return say(call, "password-1", {{"person", person->text()}, {"once", secret->text()}},
               Page{"tell " + person->text() +
                    " this password, which opens nothing before they have "
                    "chosen their own (framewright password " +
                    person->text() + "):"}
                   .line(secret->text()));
}

Result<Exit> badge(const Call& call) {
    const auto person = personOf(call.arguments().front());
    if (!person) return person.error();
    const auto who = whoOf(call);
    if (!who) return who.error();
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    const std::string code = person->text();
    if (call.has("revoke")) {
        const auto done = actions::revokeBadge(*laboratory, *person, *who);
        if (!done) return done.error();
        return say(call, "badge-1", {{"person", code}, {"badge", false}},
                   Page{"the badge of " + code + " opens nothing any more"});
    }
    const auto scanned = readSecret("badge");
    if (!scanned) return scanned.error();
    const auto pin = readNewSecret("PIN");
    if (!pin) return pin.error();
    const auto done = actions::giveBadge(*laboratory, *person, *scanned, *pin, *who);
    if (!done) return done.error();
    return say(call, "badge-1", {{"person", code}, {"badge", true}},
               Page{code + " has a new badge and PIN"});
}

Result<Exit> stations(const Call& call) {
    const auto& arguments = call.arguments();
    if (arguments.size() == 1) return unusable("a station's code and its kind were expected");
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    if (!arguments.empty()) {
        const auto station = domain::ThingCode::parse(arguments.front());
        if (!station)
            return unusable("\"" + arguments.front() + "\" is no station's code; expected " +
                            std::string{domain::kShortCodeForm});
        const auto kind = wordOf<domain::StationKind>(arguments[1], "kind of station");
        if (!kind) return kind.error();
        const auto who = whoOf(call);
        if (!who) return who.error();
        if (const auto done = actions::enterStation(*laboratory, *station, *kind, *who); !done)
            return done.error();
    }
    if (const auto text = call.option("idle-minutes")) {
        const auto minutes = wholeOf(*text, 1, "number of minutes");
        if (!minutes) return minutes.error();
        const auto who = whoOf(call);
        if (!who) return who.error();
        const int most = static_cast<int>(std::min<std::int64_t>(*minutes, 1'000'000));
        if (const auto done = actions::writeIdleMinutes(*laboratory, most, *who); !done)
            return done.error();
    }
    return showStations(call, *laboratory);
}

}  // namespace cli
