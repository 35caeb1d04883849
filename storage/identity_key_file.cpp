#include "storage/identity_key_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QStandardPaths>
#include <cerrno>
#include <cstdio>
#include <fstream>
#include <iterator>

#include "storage/disk_file.h"

namespace storage {
namespace {

namespace fs = std::filesystem;
using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Result;

constexpr const char* kPlaceVariable = "FRAMEWRIGHT_KEYS";
constexpr std::string_view kHeading = "framewright-identity-key 1\nlaboratory ";
constexpr std::string_view kKey = "\nkey ";
constexpr std::string_view kLocked = "\nlocked ";
constexpr std::string_view kPassphrase = "passphrase";
/// Ours have less than 400 bytes.
constexpr std::uintmax_t kMostFileBytes = 4096;

Error unavailable(std::string sentence) { return {ErrorCode::Unavailable, std::move(sentence)}; }

/// Whether a folder is another one or lies in it, links followed as far as they exist.
bool isWithin(const fs::path& folder, const fs::path& outer) {
    std::error_code failure;
    const fs::path inner = fs::weakly_canonical(fs::absolute(folder), failure);
    const fs::path around = fs::weakly_canonical(fs::absolute(outer), failure);
    const fs::path way = inner.lexically_relative(around);
    return !way.empty() && *way.begin() != "..";
}

Result<Done> makeKeyFolder(const fs::path& folder) {
    if (auto made = ensureFolder(folder); !made) return made;
    return forceFolder(folder.has_parent_path() ? folder.parent_path() : fs::path{"."});
}

/// Text under a name that is nobody's, forced to the disk.
Result<fs::path> written(const fs::path& file, const std::string& text) {
    fs::path part = file.parent_path() / (".framewright-" + randomName() + ".partial");
    const Descriptor opened{
        ::open(part.c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC | O_NOFOLLOW, 0600)};
    if (!opened)
        return diskError("cannot write the identity key into the folder", file.parent_path());
    Result<Done> done = appendAll(opened, text, part);
    if (done) done = forceToDisk(opened, part);
    if (done) return part;
    ::unlink(part.c_str());
    return done.error();
}

std::string clearText(const std::string& laboratory, const IdentityCipher& cipher) {
    std::string text{kHeading};
    text.append(laboratory).append(kKey).append(cipher.digits().text()).append("\n");
    return text;
}

/// What follows the first lines of a key file of this laboratory, without its line feed.
std::optional<std::string> bodyOf(std::string text, const std::string& laboratory) {
    const std::string heading = std::string{kHeading} + laboratory;
    if (!text.starts_with(heading) || !text.ends_with('\n')) return {};
    text.pop_back();
    return text.substr(heading.size());
}

Result<Cipher> unlockedFile(const fs::path& file, const std::string& locked,
                            const std::string& laboratory, const KeyAccess& keys) {
    if (!keys.passphrase)
        return unavailable("the identity key in " + file.string() +
                           " is locked with a passphrase, and nobody can be asked for it here");
    const auto passphrase = keys.passphrase(file);
    if (!passphrase) return passphrase.error();
    auto cipher = IdentityCipher::unlocked(locked, *passphrase, kPassphrase, laboratory);
    if (!cipher) return Error{cipher.error().code, file.string() + ": " + cipher.error().message};
    if (*cipher == nullptr)
        return Error{ErrorCode::Refused,
                     "this is not the passphrase of the identity key in " + file.string()};
    return cipher;
}

}  // namespace

fs::path usualKeyFolder() {
    const QByteArray given = qgetenv(kPlaceVariable);
    if (!given.isEmpty()) return given.toStdString();
    const QString data = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation);
    return fs::path{data.toStdString()} / "framewright-keys";
}

fs::path keyFileOf(const fs::path& folder, const std::string& laboratory) {
    return folder / (laboratory + ".key");
}

Result<Done> writeKeyFile(const fs::path& folder, const fs::path& records,
                          const std::string& laboratory, const IdentityCipher& cipher) {
    if (folder.empty()) return unavailable("the path of the folder for the identity key is empty");
    if (isWithin(folder, records))
        return unavailable("the identity key must not lie with the records, as " + folder.string() +
                           " does: name another folder in $" + kPlaceVariable);
    if (auto made = makeKeyFolder(folder); !made) return made;
    const fs::path file = keyFileOf(folder, laboratory);
    const auto part = written(file, clearText(laboratory, cipher));
    if (!part) return part.error();
    const auto named = renameNew(*part, file);
    if (!named || !*named) ::unlink(part->c_str());
    if (!named) return named.error();
    if (!*named)
        return unavailable("there is an identity key in " + file.string() +
                           " already, and it is never overwritten");
    return forceFolder(folder);
}

Result<Done> lockKeyFile(const fs::path& file, const std::string& laboratory,
                         const IdentityCipher& cipher, const std::optional<Secret>& passphrase,
                         HashCost cost) {
    std::string text = clearText(laboratory, cipher);
    if (passphrase) {
        const auto locked = cipher.lockedBy(*passphrase, kPassphrase, laboratory, cost);
        if (!locked) return locked.error();
        text = std::string{kHeading} + laboratory + std::string{kLocked} + *locked + '\n';
    }
    const auto part = written(file, text);
    if (!part) return part.error();
    if (std::rename(part->c_str(), file.c_str()) != 0) {
        const Error failed = diskError("cannot replace", file);
        ::unlink(part->c_str());
        return failed;
    }
    return forceFolder(file.parent_path());
}

Result<Cipher> readKeyFile(const KeyAccess& keys, const std::string& laboratory) {
    const fs::path file = keyFileOf(keys.folder, laboratory);
    struct stat found{};
    if (::stat(file.c_str(), &found) != 0) {
        if (errno == ENOENT || errno == ENOTDIR) return Cipher{};
        return diskError("the identity key cannot be looked at,", file);
    }
    const Error strange = unavailable(file.string() +
                                      " is no identity key of this laboratory; put the right key "
                                      "file there, or move it away and use the recovery code: "
                                      "framewright recover");
    if (!S_ISREG(found.st_mode) || static_cast<std::uintmax_t>(found.st_size) > kMostFileBytes)
        return strange;
    std::ifstream stream{file, std::ios::binary};
    if (!stream) return diskError("the identity key cannot be read,", file);
    const auto body = bodyOf(std::string{std::istreambuf_iterator<char>{stream}, {}}, laboratory);
    if (!body) return strange;
    if (body->starts_with(kLocked))
        return unlockedFile(file, body->substr(kLocked.size()), laboratory, keys);
    if (!body->starts_with(kKey)) return strange;
    Cipher cipher = IdentityCipher::ofDigits(body->substr(kKey.size()));
    if (cipher == nullptr) return strange;
    return cipher;
}

}  // namespace storage
