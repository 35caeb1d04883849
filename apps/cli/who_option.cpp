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

}  // namespace

Result<actions::Who> whoOf(const Call& call) {
    auto code = call.option("as");
    if (!code) code = inherited("FRAMEWRIGHT_AS");
    if (!code) return unusable("who does this? give your code with --as, or set FRAMEWRIGHT_AS");
    const auto person = personOf(*code);
    if (!person) return person.error();
    actions::Who who{.person = *person,
                     .key = call.option("key").value_or(""),
                     .token = tokenOf(call, *person),
                     .station = stationOf(call)};
    if (const auto seen = call.option("seen")) {
        const auto version = wholeOf(*seen, 1, "version of an order");
        if (!version) return version.error();
        who.seen = *version;
    }
    return who;
}

std::string stationOf(const Call& call) {
    if (const auto station = call.option("station")) return *station;
    return inherited("FRAMEWRIGHT_STATION").value_or(std::string{});
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
