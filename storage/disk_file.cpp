#include "storage/disk_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QRandomGenerator>
#include <QString>
#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <system_error>
#include <vector>

namespace storage {
namespace {

namespace fs = std::filesystem;
using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Result;

constexpr mode_t kOwnerOnlyFolder = 0700;
constexpr std::size_t kPieceBytes = std::size_t{1} << 20;

}  // namespace

Descriptor::~Descriptor() {
    if (number_ >= 0) ::close(number_);
}

Error diskError(const std::string& what, const fs::path& place) {
    return {ErrorCode::Unavailable, what + ' ' + place.string() + ": " +
                                        std::error_code{errno, std::generic_category()}.message()};
}

Result<Done> ensureFolder(const fs::path& folder) {
    if (folder.empty()) return Error{ErrorCode::Unusable, "the path of the folder is empty"};
    std::error_code failure;
    const auto type = fs::status(folder, failure).type();
    if (type == fs::file_type::directory) return Done{};
    if (type != fs::file_type::not_found && type != fs::file_type::none)
        return Error{ErrorCode::Unusable, folder.string() + " is a file; a folder was expected"};
    const fs::path place = folder.has_filename() ? folder : folder.parent_path();
    if (place.has_parent_path()) fs::create_directories(place.parent_path(), failure);
    if (::mkdir(place.c_str(), kOwnerOnlyFolder) != 0 && errno != EEXIST)
        return diskError("cannot make the folder", folder);
    return Done{};
}

std::string randomName() {
    return QStringLiteral("%1")
        .arg(QRandomGenerator::system()->generate64(), 16, 16, QLatin1Char{'0'})
        .toStdString();
}

Result<Done> appendAll(const Descriptor& file, std::string_view bytes, const fs::path& place) {
    while (!bytes.empty()) {
        const ssize_t written = ::write(file.number(), bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR) continue;
        if (written <= 0) return diskError("cannot write", place);
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    return Done{};
}

Result<Done> readRange(const Descriptor& file, std::int64_t offset, std::int64_t count,
                       const fs::path& place,
                       const std::function<Result<Done>(std::string_view)>& piece) {
    std::vector<char> buffer(kPieceBytes);
    while (count > 0) {
        const auto wanted = std::min(buffer.size(), static_cast<std::size_t>(count));
        const ssize_t got = ::pread(file.number(), buffer.data(), wanted, offset);
        if (got < 0 && errno == EINTR) continue;
        if (got < 0) return diskError("cannot read", place);
        if (got == 0) return Error{ErrorCode::Unavailable, place.string() + " became shorter"};
        if (auto taken = piece({buffer.data(), static_cast<std::size_t>(got)}); !taken)
            return taken;
        offset += got;
        count -= got;
    }
    return Done{};
}

Result<Done> forceToDisk(const Descriptor& file, const fs::path& place) {
    if (::fsync(file.number()) != 0) return diskError("cannot force to disk", place);
    ::posix_fadvise(file.number(), 0, 0, POSIX_FADV_DONTNEED);  // advice: it may be ignored
    return Done{};
}

Result<Done> forceFolder(const fs::path& folder) {
    const Descriptor opened{::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)};
    if (!opened) return diskError("cannot open the folder", folder);
    // Some file systems of other machines cannot force a folder, and say so by EINVAL.
    if (::fsync(opened.number()) != 0 && errno != EINVAL)
        return diskError("cannot force to disk the folder", folder);
    return Done{};
}

Result<bool> renameNew(const fs::path& from, const fs::path& to) {
    if (::renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE) == 0)
        return true;
    if (errno == EEXIST) return false;
    if (errno != EINVAL && errno != ENOSYS) return diskError("cannot put in place", to);
    // A file system that cannot promise it; between the two calls nobody else makes this name.
    struct stat found{};
    if (::lstat(to.c_str(), &found) == 0) return false;
    if (::rename(from.c_str(), to.c_str()) != 0) return diskError("cannot put in place", to);
    return true;
}

}  // namespace storage
