#include "apps/cli/terminal_session.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QSaveFile>
#include <cerrno>
#include <csignal>
#include <cstdlib>
#include <fstream>
#include <sstream>

namespace cli {
namespace {

namespace fs = std::filesystem;
using domain::Result;

constexpr mode_t kOfOthers = 077;
constexpr qint64 kMostBytes = 256;

/// Belongs to whoever runs this, and nobody else can read or write it.
bool isPrivate(const struct stat& found) {
    return found.st_uid == geteuid() && (found.st_mode & kOfOthers) == 0;
}

bool isPrivateFolder(const fs::path& path) {
    struct stat found{};
    return ::lstat(path.c_str(), &found) == 0 && S_ISDIR(found.st_mode) && isPrivate(found);
}

std::optional<fs::path> folderIn(const char* variable) {
    const char* value = std::getenv(variable);
    if (value == nullptr || !fs::path{value}.is_absolute()) return {};
    return value;
}

fs::path sessionFolder() {
    const auto runtime = folderIn("XDG_RUNTIME_DIR");
    if (runtime && isPrivateFolder(*runtime)) return *runtime / "framewright";
    const auto state = folderIn("XDG_STATE_HOME");
    const fs::path home{QDir::homePath().toStdString()};
    return state.value_or(home / ".local" / "state") / "framewright" / "sessions";
}

/// When a process began, in the system's own count; 0 where the system does not tell.
std::string beginOf(pid_t process) {
    // The 22nd field of the line, the 20th after the name in brackets (proc(5)).
    constexpr int kAfterTheName = 20;
    std::ifstream file{"/proc/" + std::to_string(process) + "/stat"};
    std::string line;
    std::getline(file, line);
    const auto name = line.rfind(')');
    if (name == std::string::npos) return "0";
    std::istringstream fields{line.substr(name + 1)};
    std::string field;
    for (int i = 0; i < kAfterTheName; ++i) fields >> field;
    return field.empty() ? "0" : field;
}

fs::path sessionFile(const fs::path& records) {
    constexpr qsizetype kEnough = 16;
    // Of a path that leads nowhere the name does: nobody is signed in there.
    std::error_code failure;
    const fs::path whole = fs::absolute(records, failure);
    const fs::path real = fs::weakly_canonical(whole, failure);
    const std::string place = (failure ? whole : real).string();
    const QByteArray digest =
        QCryptographicHash::hash(QByteArray::fromStdString(place), QCryptographicHash::Sha256)
            .toHex()
            .left(kEnough);
    const pid_t terminal = getsid(0);
    return sessionFolder() /
           (digest.toStdString() + '-' + std::to_string(terminal) + '-' + beginOf(terminal));
}

/// Removes the files of terminals that are there no more.
void sweep(const fs::path& folder) {
    std::error_code ignored;
    for (const auto& entry : fs::directory_iterator{folder, ignored}) {
        std::istringstream name{entry.path().filename().string()};
        std::string digest;
        pid_t terminal{};
        char dash{};
        if (!std::getline(name, digest, '-') || !(name >> terminal >> dash) || terminal <= 0)
            continue;
        if (::kill(terminal, 0) != 0 && errno == ESRCH) fs::remove(entry.path(), ignored);
    }
}

domain::Error notKept(const fs::path& path, const std::string& why) {
    return {domain::ErrorCode::Unavailable,
            "signed in, but the session could not be kept in " + path.string() + ": " + why};
}

}  // namespace

std::optional<actions::Session> sessionHere(const fs::path& records) {
    const int opened =
        ::open(sessionFile(records).c_str(), O_RDONLY | O_NOFOLLOW | O_CLOEXEC | O_NONBLOCK);
    if (opened < 0) return {};
    QFile file;
    struct stat found{};
    if (!file.open(opened, QIODevice::ReadOnly, QFileDevice::AutoCloseHandle)) {
        ::close(opened);
        return {};
    }
    if (::fstat(opened, &found) != 0 || !S_ISREG(found.st_mode) || !isPrivate(found)) return {};
    std::istringstream words{file.read(kMostBytes).toStdString()};
    std::string code;
    std::string token;
    words >> code >> token;
    const auto person = domain::PersonCode::parse(code);
    if (!person || token.empty()) return {};
    return actions::Session{*person, token, {}};
}

Result<domain::Done> keepSessionHere(const fs::path& records, const actions::Session& session) {
    const fs::path path = sessionFile(records);
    std::error_code failure;
    fs::create_directories(path.parent_path().parent_path(), failure);
    if (::mkdir(path.parent_path().c_str(), 0700) != 0 && errno != EEXIST)
        return notKept(path, "its folder cannot be made");
    if (!isPrivateFolder(path.parent_path()))
        return notKept(path, "its folder is not yours alone (mode 0700)");
    sweep(path.parent_path());
    QSaveFile file{QString::fromStdString(path.string())};
    const QByteArray line =
        QByteArray::fromStdString(session.person.text() + ' ' + session.token + '\n');
    if (!file.open(QIODevice::WriteOnly) ||
        !file.setPermissions(QFileDevice::ReadOwner | QFileDevice::WriteOwner) ||
        file.write(line) != line.size() || !file.commit())
        return notKept(path, file.errorString().toStdString());
    return domain::Done{};
}

void forgetSessionHere(const fs::path& records) {
    std::error_code ignored;  // a token of an ended session opens nothing
    fs::remove(sessionFile(records), ignored);
}

}  // namespace cli
