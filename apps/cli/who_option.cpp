#include "apps/cli/who_option.h"

#include <QFile>
#include <QSaveFile>
#include <cstdlib>

#include "apps/cli/lab_option.h"
#include "apps/cli/typed_words.h"

namespace cli {
namespace {

using domain::Result;

constexpr qint64 kMostTokenBytes = 256;

std::optional<std::string> inherited(const char* name) {
    const char* value = std::getenv(name);
    return value == nullptr || *value == '\0' ? std::nullopt : std::optional<std::string>{value};
}

std::filesystem::path sessionFile(const Call& call, const domain::PersonCode& person) {
    return labFolder(call) / "sessions" / person.text();
}

/// Empty when there is none: the action says that they are not signed in.
std::string tokenOf(const Call& call, const domain::PersonCode& person) {
    if (auto given = inherited("FRAMEWRIGHT_SESSION")) return *given;
    QFile file{QString::fromStdString(sessionFile(call, person).string())};
    if (!file.open(QIODevice::ReadOnly)) return {};
    return file.read(kMostTokenBytes).trimmed().toStdString();
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
    auto code = call.option("as");
    if (!code) code = inherited("FRAMEWRIGHT_AS");
    if (!code) return unusable("who does this? give your code with --as, or set FRAMEWRIGHT_AS");
    const auto person = personOf(*code);
    if (!person) return person.error();
    const auto key = keyOf(call);
    if (!key) return key.error();
    const auto station = stationOf(call);
    if (!station) return station.error();
    actions::Who who{
        .person = *person, .key = *key, .token = tokenOf(call, *person), .station = *station};
    if (const auto seen = call.option("seen")) {
        const auto version = wholeOf(*seen, 1, "version of an order");
        if (!version) return version.error();
        who.seen = *version;
    }
    return who;
}

Result<std::string> stationOf(const Call& call) {
    const auto given = call.option("station");
    const auto text = given ? given : inherited("FRAMEWRIGHT_STATION");
    if (!text || text->empty()) return std::string{};
    if (domain::ThingCode::parse(*text)) return *text;
    return unusable(std::string{given ? "--station" : "$FRAMEWRIGHT_STATION"} + " \"" + *text +
                    "\" is no station's code; expected " + std::string{domain::kShortCodeForm});
}

Result<domain::Done> keepSession(const Call& call, const actions::Session& session) {
    const auto path = sessionFile(call, session.person);
    std::error_code failure;
    std::filesystem::create_directories(path.parent_path(), failure);
    if (!failure)
        std::filesystem::permissions(path.parent_path(), std::filesystem::perms::owner_all,
                                     failure);
    const auto kind = std::filesystem::symlink_status(path, failure).type();
    if (kind != std::filesystem::file_type::regular &&
        kind != std::filesystem::file_type::not_found)
        return domain::Error{domain::ErrorCode::Unavailable,
                             "signed in, but the session could not be kept: " + path.string() +
                                 " is no plain file; remove it"};
    failure.clear();
    QSaveFile file{QString::fromStdString(path.string())};
    const QByteArray line = QByteArray::fromStdString(session.token) + '\n';
    if (failure || !file.open(QIODevice::WriteOnly) ||
        !file.setPermissions(QFileDevice::ReadOwner | QFileDevice::WriteOwner) ||
        file.write(line) != line.size() || !file.commit())
        return domain::Error{domain::ErrorCode::Unavailable,
                             "signed in, but the session could not be kept in " + path.string() +
                                 ": " +
                                 (failure ? failure.message() : file.errorString().toStdString())};
    return domain::Done{};
}

void forgetSession(const Call& call, const domain::PersonCode& person) {
    std::error_code ignored;  // a token of an ended session opens nothing
    std::filesystem::remove(sessionFile(call, person), ignored);
}

}  // namespace cli
