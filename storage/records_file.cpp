#include "storage/records_file.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QStorageInfo>
#include <algorithm>
#include <array>
#include <cerrno>
#include <chrono>
#include <cstdio>
#include <cstring>
#include <system_error>
#include <thread>

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

Error unavailable(std::string sentence) { return {ErrorCode::Unavailable, std::move(sentence)}; }

/// An open file or folder that is closed again, whatever happens; a lock on it ends with it.
class Descriptor {
public:
    Descriptor(const fs::path& path, int flags, mode_t mode = 0)
        : number_{::open(path.c_str(), flags | O_CLOEXEC, mode)} {}
    ~Descriptor() {
        if (number_ >= 0) ::close(number_);
    }
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;

    explicit operator bool() const noexcept { return number_ >= 0; }
    int number() const noexcept { return number_; }

private:
    int number_;
};

/// What was made, renamed or removed in a folder survives a power cut.
Result<Done> keepFolder(const fs::path& folder) {
    const Descriptor opened{folder.empty() ? fs::path{"."} : folder, O_RDONLY | O_DIRECTORY};
    if (opened && ::fsync(opened.number()) == 0) return Done{};
    return unavailable("the folder " + folder.string() +
                       " cannot be forced to disk: " + reason(errno));
}

Result<Done> makeFolder(const fs::path& folder) {
    std::error_code failure;
    if (folder.has_parent_path()) fs::create_directories(folder.parent_path(), failure);
    if (!failure && ::mkdir(folder.c_str(), kOwnerOnlyFolder) != 0 && errno != EEXIST)
        failure = {errno, std::generic_category()};
    if (!failure) return keepFolder(folder.parent_path());
    const bool wrongPath = failure == std::errc::not_a_directory ||
                           failure == std::errc::file_exists ||
                           failure == std::errc::filename_too_long;
    return Error{
        wrongPath ? ErrorCode::Unusable : ErrorCode::Unavailable,
        "the folder " + folder.string() + " for the records cannot be made: " + failure.message()};
}

Error noRecords(const fs::path& folder, std::string_view why) {
    return unavailable("there are no records in " + folder.string() + ": " + std::string{why} +
                       "; name the folder that holds them, restore a backup into it, or, for a new "
                       "laboratory, set it up first");
}

Result<Done> prepareFolder(const fs::path& folder, Opening opening) {
    if (folder.empty())
        return Error{ErrorCode::Unusable, "the path of the records' folder is empty"};
    std::error_code failure;
    const fs::file_status status = fs::status(folder, failure);
    if (status.type() == fs::file_type::not_found) {
        if (opening == Opening::Existing) return noRecords(folder, "there is no such folder");
        return makeFolder(folder);
    }
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
    return unavailable("the folder " + folder.string() + " lies on a network file system (" + type +
                       "), where two programs can damage the records; choose a folder on a disk of "
                       "this machine");
}

bool isThere(const fs::path& file) {
    struct stat found{};
    return ::lstat(file.c_str(), &found) == 0 || errno != ENOENT;
}

/// Not opened: closing it again would drop the locks this process holds on it.
Result<Done> onePlainFile(const fs::path& file) {
    struct stat found{};
    if (::stat(file.c_str(), &found) != 0)
        return unavailable("the records " + file.string() +
                           " cannot be looked at: " + reason(errno));
    if (!S_ISREG(found.st_mode)) return unavailable(file.string() + " is not a plain file");
    if (found.st_nlink > 1)
        return unavailable("the records " + file.string() +
                           " have a second name (hard link), through which another program could "
                           "damage them; remove that name");
    if (found.st_size == 0)
        return unavailable(
            "the records " + file.string() +
            " are empty (0 bytes), and records never are: they were cut off; restore "
            "a backup, or remove the file if there never were any records");
    return Done{};
}

/// What records leave behind beside them. New ones would give numbers out twice that stand on
/// papers, or be rolled back by a journal of the old ones.
constexpr std::array kRemains{"records.db-journal", "papers", "sessions", "backups"};

Result<Done> withoutRemains(const fs::path& folder) {
    for (const char* name : kRemains) {
        std::error_code ignored;
        const fs::path remains = folder / name;
        if (isThere(remains) && !fs::is_empty(remains, ignored))
            return unavailable("there are no records in " + folder.string() + ", but " +
                               remains.string() +
                               " is left of earlier ones; restore a backup of them, or choose "
                               "another folder for a new laboratory");
    }
    return Done{};
}

/// Another program makes the same records just now; it takes a moment.
Result<Done> lockFolder(const Descriptor& folder, const fs::path& path) {
    constexpr int kTries = 100;
    constexpr auto kPause = std::chrono::milliseconds{50};
    for (int i = 0; folder && i < kTries; ++i) {
        if (::flock(folder.number(), LOCK_EX | LOCK_NB) == 0) return Done{};
        if (errno != EWOULDBLOCK && errno != EINTR) break;
        std::this_thread::sleep_for(kPause);
    }
    return unavailable("the folder " + path.string() +
                       " cannot be locked to make the records in it: " + reason(errno));
}

fs::path beside(const fs::path& file, std::string_view ending) {
    fs::path other = file;
    other += ending;
    return other;
}

constexpr std::string_view kPart = ".new";
constexpr std::string_view kJournal = "-journal";

/// What a program left that was killed while it made records: the lock says that none is at it now.
Result<Done> clear(const fs::path& part) {
    for (const fs::path& left : {beside(part, kJournal), part})
        if (::unlink(left.c_str()) != 0 && errno != ENOENT)
            return unavailable(left.string() + " cannot be removed: " + reason(errno));
    return Done{};
}

/// Made here and not by SQLite, so that the file is never readable by others.
Result<Done> begin(const fs::path& part) {
    const Descriptor made{part, O_CREAT | O_EXCL | O_WRONLY | O_NOFOLLOW, kOwnerOnlyFile};
    if (made) return Done{};
    return unavailable("the records " + part.string() + " cannot be made: " + reason(errno));
}

/// Never over a file that has come to lie there meanwhile.
Result<Done> putInPlace(const fs::path& part, const fs::path& file) {
    const auto outcome = [](int code) { return code == 0 ? 0 : errno; };
    int failure =
        outcome(::renameat2(AT_FDCWD, part.c_str(), AT_FDCWD, file.c_str(), RENAME_NOREPLACE));
    // Some file systems do not know that flag.
    if (failure == EINVAL)
        failure = isThere(file) ? EEXIST : outcome(::rename(part.c_str(), file.c_str()));
    if (failure == 0) return keepFolder(file.parent_path());
    return unavailable("the records " + file.string() +
                       " cannot be put in place: " + reason(failure));
}

}  // namespace

bool isNetworkFileSystem(std::string_view type) {
    if (type == kLocalUserSpace) return false;
    return type.starts_with(kUserSpacePrefix) || std::ranges::count(kNetworkTypes, type) > 0;
}

Result<RecordsPlace> findRecords(const fs::path& folder, Opening opening) {
    const fs::path place = folder.has_filename() ? folder : folder.parent_path();
    if (auto ready = prepareFolder(place, opening); !ready) return ready.error();
    if (auto own = onOwnDisk(place); !own) return own.error();
    std::error_code failure;
    const fs::path real = fs::canonical(place, failure);
    if (failure)
        return unavailable("the folder " + place.string() +
                           " cannot be looked at: " + failure.message());
    const fs::path file = real / kRecordsFile;
    if (!isThere(file)) {
        if (opening == Opening::Existing) return noRecords(place, "no file records.db lies there");
        if (auto free = withoutRemains(real); !free) return free.error();
        return RecordsPlace{file, false};
    }
    if (auto plain = onePlainFile(file); !plain) return plain.error();
    return RecordsPlace{file, true};
}

Result<Done> makeRecords(const fs::path& file,
                         const std::function<Result<Done>(const fs::path& part)>& fill) {
    const fs::path folder = file.parent_path();
    const Descriptor opened{folder, O_RDONLY | O_DIRECTORY};
    if (auto locked = lockFolder(opened, folder); !locked) return locked;
    if (isThere(file)) return Done{};
    const fs::path part = beside(file, kPart);
    if (auto cleared = clear(part); !cleared) return cleared;
    if (auto begun = begin(part); !begun) return begun;
    if (auto filled = fill(part); !filled) {
        (void)clear(part);
        return filled;
    }
    // Empty by now; it must not stay behind under a name that nothing belongs to.
    ::unlink(beside(part, kJournal).c_str());
    return putInPlace(part, file);
}

}  // namespace storage
