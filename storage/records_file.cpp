#include "storage/records_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QStorageInfo>
#include <algorithm>
#include <array>
#include <cerrno>
#include <cstring>
#include <system_error>

namespace storage {
namespace {

namespace fs = std::filesystem;
using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Result;

constexpr mode_t kOwnerOnlyFolder = 0700;
constexpr mode_t kOwnerOnlyFile = 0600;

/// Types of file systems that lie on another machine. From memory of the kernel's names.
constexpr std::array<std::string_view, 14> kNetworkTypes{
    "nfs",   "nfs4", "cifs",      "smb",  "smb2",   "smb3", "smbfs",
    "ncpfs", "afs",  "glusterfs", "ceph", "lustre", "9p",   "davfs"};
constexpr std::string_view kUserSpacePrefix = "fuse.";
/// The one file system in user space that lies on this machine's own disk: of a container's root.
constexpr std::string_view kLocalUserSpace = "fuse.fuse-overlayfs";

std::string reason(int error) { return std::strerror(error); }

Result<Done> makeFolder(const fs::path& folder) {
    std::error_code failure;
    if (folder.has_parent_path()) fs::create_directories(folder.parent_path(), failure);
    if (!failure && ::mkdir(folder.c_str(), kOwnerOnlyFolder) != 0 && errno != EEXIST)
        failure = {errno, std::generic_category()};
    if (!failure) return Done{};
    const bool wrongPath = failure == std::errc::not_a_directory ||
                           failure == std::errc::file_exists ||
                           failure == std::errc::filename_too_long;
    return Error{
        wrongPath ? ErrorCode::Unusable : ErrorCode::Unavailable,
        "the folder " + folder.string() + " for the records cannot be made: " + failure.message()};
}

Result<Done> prepareFolder(const fs::path& folder) {
    if (folder.empty())
        return Error{ErrorCode::Unusable, "the path of the records' folder is empty"};
    std::error_code failure;
    const fs::file_status status = fs::status(folder, failure);
    if (status.type() == fs::file_type::not_found) return makeFolder(folder);
    if (failure)
        return Error{
            failure == std::errc::not_a_directory ? ErrorCode::Unusable : ErrorCode::Unavailable,
            "the folder " + folder.string() + " cannot be looked at: " + failure.message()};
    if (status.type() != fs::file_type::directory)
        return Error{ErrorCode::Unusable, folder.string() +
                                              " is a file; the folder that holds the records was "
                                              "expected"};
    return Done{};
}

Result<Done> onOwnDisk(const fs::path& folder) {
    const std::string type =
        QStorageInfo{QString::fromStdString(folder.string())}.fileSystemType().toStdString();
    if (!isNetworkFileSystem(type)) return Done{};
    return Error{ErrorCode::Unavailable,
                 "the folder " + folder.string() + " lies on a network file system (" + type +
                     "), where two programs can damage the records; choose a folder on a disk of "
                     "this machine"};
}

/// Made here and not by SQLite, so that the file is never readable by others. An existing file is
/// not opened: closing it again would drop the locks this process holds on it.
Result<Done> makeFile(const fs::path& file) {
    const int made = ::open(file.c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC, kOwnerOnlyFile);
    if (made >= 0) {
        ::close(made);
        return Done{};
    }
    if (errno == EEXIST) return Done{};
    return Error{ErrorCode::Unavailable,
                 "the records " + file.string() + " cannot be made: " + reason(errno)};
}

Result<Done> onePlainFile(const fs::path& file) {
    struct stat found {};
    if (::stat(file.c_str(), &found) != 0)
        return Error{ErrorCode::Unavailable,
                     "the records " + file.string() + " cannot be looked at: " + reason(errno)};
    if (!S_ISREG(found.st_mode))
        return Error{ErrorCode::Unavailable, file.string() + " is not a plain file"};
    if (found.st_nlink > 1)
        return Error{ErrorCode::Unavailable,
                     "the records " + file.string() +
                         " have a second name (hard link), through which another program could "
                         "damage them; remove that name"};
    return Done{};
}

}  // namespace

bool isNetworkFileSystem(std::string_view type) {
    if (type == kLocalUserSpace) return false;
    return type.starts_with(kUserSpacePrefix) || std::ranges::count(kNetworkTypes, type) > 0;
}

Result<fs::path> prepareRecordsFile(const fs::path& folder) {
    const fs::path place = folder.has_filename() ? folder : folder.parent_path();
    if (auto ready = prepareFolder(place); !ready) return ready.error();
    if (auto own = onOwnDisk(place); !own) return own.error();
    std::error_code failure;
    const fs::path real = fs::canonical(place, failure);
    if (failure)
        return Error{ErrorCode::Unavailable,
                     "the folder " + place.string() + " cannot be looked at: " + failure.message()};
    const fs::path file = real / kRecordsFile;
    if (auto made = makeFile(file); !made) return made.error();
    if (auto plain = onePlainFile(file); !plain) return plain.error();
    return file;
}

}  // namespace storage
