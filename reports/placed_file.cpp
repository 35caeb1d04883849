#include "reports/placed_file.h"

#include <dirent.h>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/random.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <optional>
#include <system_error>
#include <utility>

namespace reports {
namespace {

namespace fs = std::filesystem;
using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Result;

constexpr std::string_view kPartBegins = ".framewright-";
constexpr std::string_view kPartEnds = ".part";
constexpr mode_t kOwnerOnly = 0600;
/// Nothing we write comes near it.
constexpr off_t kLargest = off_t{64} * 1024 * 1024;

Error failed(const std::string& what, const fs::path& where) {
    return {ErrorCode::Unavailable, what + ' ' + where.string() + ": " +
                                        std::error_code{errno, std::generic_category()}.message()};
}

/// An open file or folder that is closed again, whatever happens.
class Descriptor {
public:
    explicit Descriptor(int number = -1) : number_{number} {}
    ~Descriptor() { close(); }
    Descriptor(Descriptor&& other) noexcept : number_{std::exchange(other.number_, -1)} {}
    Descriptor& operator=(Descriptor&& other) noexcept {
        std::swap(number_, other.number_);
        return *this;
    }

    explicit operator bool() const noexcept { return number_ >= 0; }
    int number() const noexcept { return number_; }
    /// Closing may be where a full disk is told.
    bool close() noexcept {
        const int number = std::exchange(number_, -1);
        return number < 0 || ::close(number) == 0;
    }

private:
    int number_;
};

/// A folder that is open, and its real path: what is done in it cannot be led elsewhere.
struct OpenFolder {
    fs::path path;
    Descriptor descriptor;
    int number() const noexcept { return descriptor.number(); }
};

bool isWithin(const fs::path& inner, const fs::path& outer) {
    const auto [rest, end] = std::mismatch(outer.begin(), outer.end(), inner.begin(), inner.end());
    return rest == outer.end();
}

Result<Done> checkFolder(const fs::path& real, const Placement& placement) {
    std::error_code failure;
    if (placement.keepOut.empty()) return Done{};
    const fs::path out = fs::canonical(placement.keepOut, failure);
    if (failure)
        return Error{ErrorCode::Unavailable, "the folder " + placement.keepOut.string() +
                                                 " cannot be looked at: " + failure.message()};
    const fs::path but = out / placement.butFor.lexically_relative(placement.keepOut);
    const bool allowed = !placement.butFor.empty() && isWithin(real, but);
    if (!isWithin(real, out) || allowed) return Done{};
    return Error{
        ErrorCode::Refused,
        real.string() + " is the folder of the records, where nothing else is written" +
            (placement.butFor.empty() ? std::string{} : " but in " + placement.butFor.string()) +
            "; choose another folder"};
}

/// Step by step along the real path, so that no link put there meanwhile is followed.
Result<OpenFolder> openFolder(const fs::path& real) {
    constexpr int kFolder = O_DIRECTORY | O_NOFOLLOW | O_CLOEXEC;
    Descriptor at{::open("/", O_PATH | O_DIRECTORY | O_CLOEXEC)};
    for (const fs::path& step : real.relative_path()) {
        if (!at) break;
        at = Descriptor{::openat(at.number(), step.c_str(), O_PATH | kFolder)};
    }
    if (at) at = Descriptor{::openat(at.number(), ".", O_RDONLY | kFolder)};
    if (!at) return failed("cannot open the folder", real);
    return OpenFolder{real, std::move(at)};
}

Result<OpenFolder> folderOf(const fs::path& file, const Placement& placement) {
    const fs::path folder = file.has_parent_path() ? file.parent_path() : fs::path{"."};
    std::error_code failure;
    const fs::path real = fs::canonical(folder, failure);
    if (failure)
        return Error{ErrorCode::Unavailable,
                     "cannot open the folder " + folder.string() + ": " + failure.message()};
    if (auto fit = checkFolder(real, placement); !fit) return fit.error();
    return openFolder(real);
}

bool readAll(int file, std::string& bytes) {
    std::size_t from = 0;
    while (from < bytes.size()) {
        const ssize_t read = ::read(file, bytes.data() + from, bytes.size() - from);
        if (read < 0 && errno == EINTR) continue;
        if (read <= 0) return false;
        from += static_cast<std::size_t>(read);
    }
    return true;
}

bool writeAll(int file, std::string_view bytes) {
    while (!bytes.empty()) {
        const ssize_t written = ::write(file, bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR) continue;
        if (written <= 0) return false;
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
}

/// Why a file of this kind is never written over; nullopt where it may hold something of ours.
std::optional<std::string> strangeKind(const struct stat& found) {
    if (S_ISLNK(found.st_mode)) return "is a symbolic link";
    if (S_ISDIR(found.st_mode)) return "is a folder";
    if (!S_ISREG(found.st_mode)) return "is no plain file";
    if (found.st_nlink > 1) return "has a second name (hard link)";
    return {};
}

enum class There : std::uint8_t { Nothing, TheSame, Replaceable };

/// What lies where the file is to be.
Result<There> lookThere(const OpenFolder& folder, const fs::path& file, std::string_view bytes,
                        const Placement& placement) {
    const std::string name = file.filename().string();
    struct stat found{};
    if (::fstatat(folder.number(), name.c_str(), &found, AT_SYMLINK_NOFOLLOW) != 0) {
        if (errno == ENOENT) return There::Nothing;
        return failed("cannot look at", file);
    }
    const std::string wanted = placement.replaceable.empty()
                                   ? "; a new name was expected"
                                   : "; a new name or " + placement.replaceable + " was expected";
    if (const auto kind = strangeKind(found))
        return Error{ErrorCode::Refused, file.string() + ' ' + *kind + wanted};
    const Error taken{ErrorCode::Conflict, file.string() + " holds something else" + wanted};
    if (found.st_size > kLargest) return taken;
    const Descriptor opened{
        ::openat(folder.number(), name.c_str(), O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC)};
    std::string there(static_cast<std::size_t>(found.st_size), '\0');
    if (!opened || !readAll(opened.number(), there)) return failed("cannot read", file);
    if (there == bytes) return There::TheSame;
    if (placement.mayReplace && placement.mayReplace(there)) return There::Replaceable;
    return taken;
}

bool isPart(std::string_view name) {
    return name.starts_with(kPartBegins) && name.ends_with(kPartEnds);
}

/// A temporary file whose writer lives is locked by it.
void removeIfAbandoned(const OpenFolder& folder, const char* name) {
    const Descriptor opened{
        ::openat(folder.number(), name, O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC)};
    struct stat found{};
    if (!opened || ::fstat(opened.number(), &found) != 0 || strangeKind(found) ||
        found.st_uid != ::geteuid())
        return;
    if (::flock(opened.number(), LOCK_EX | LOCK_NB) == 0) ::unlinkat(folder.number(), name, 0);
}

void removeAbandoned(const OpenFolder& folder) {
    const int listed = ::openat(folder.number(), ".", O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    DIR* entries = listed < 0 ? nullptr : ::fdopendir(listed);
    if (entries == nullptr) return;
    while (const dirent* entry = ::readdir(entries))
        if (isPart(entry->d_name)) removeIfAbandoned(folder, entry->d_name);
    ::closedir(entries);
}

/// A temporary file of this call alone, locked for as long as it lives.
struct Part {
    std::string name;
    Descriptor file;
};

Result<Part> makePart(const OpenFolder& folder) {
    constexpr int kTries = 10;
    constexpr char kDigits[] = "0123456789abcdef";
    for (int i = 0; i < kTries; ++i) {
        unsigned char chance[16];
        if (::getrandom(chance, sizeof chance, 0) != ssize_t{sizeof chance}) break;
        Part part{.name = std::string{kPartBegins}, .file = Descriptor{}};
        for (const unsigned char byte : chance)
            (part.name += kDigits[byte >> 4]) += kDigits[byte & 15];
        part.name += kPartEnds;
        part.file =
            Descriptor{::openat(folder.number(), part.name.c_str(),
                                O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, kOwnerOnly)};
        if (!part.file && errno == EEXIST) continue;
        if (!part.file) break;
        ::flock(part.file.number(), LOCK_EX);
        // Before it was locked another program may have taken it for an abandoned one.
        struct stat made{};
        if (::fstat(part.file.number(), &made) == 0 && made.st_nlink == 1) return part;
    }
    return failed("cannot create a file in", folder.path);
}

Result<Done> fill(const Part& part, std::string_view bytes, const fs::path& file) {
    if (!writeAll(part.file.number(), bytes)) return failed("cannot write", file);
    if (::fsync(part.file.number()) != 0) return failed("cannot force to disk", file);
    // The lock stays with the other descriptor.
    Descriptor again{::dup(part.file.number())};
    if (!again || !again.close()) return failed("cannot close", file);
    return Done{};
}

Result<Done> putInPlace(const OpenFolder& folder, const Part& part, const fs::path& file,
                        There there) {
    const std::string name = file.filename().string();
    const auto renamed = [&](unsigned flags) {
        return ::renameat2(folder.number(), part.name.c_str(), folder.number(), name.c_str(),
                           flags) == 0;
    };
    const auto tried = [&](unsigned flags) { return renamed(flags) ? 0 : errno; };
    int why = tried(there == There::Nothing ? RENAME_NOREPLACE : 0);
    // Some file systems do not know the flag.
    struct stat found{};
    if (why == EINVAL && ::fstatat(folder.number(), name.c_str(), &found, AT_SYMLINK_NOFOLLOW) != 0)
        why = tried(0);
    if (why == 0) return Done{};
    if (why == EEXIST)
        return Error{ErrorCode::Conflict, file.string() + " was made by somebody else just now"};
    errno = why;
    return failed("cannot put in place", file);
}

}  // namespace

Result<Done> placeFile(const fs::path& file, std::string_view bytes, const Placement& placement) {
    const std::string name = file.filename().string();
    if (name.empty() || name == "." || name == "..")
        return Error{ErrorCode::Unusable, "no file name in \"" + file.string() + "\""};
    const auto folder = folderOf(file, placement);
    if (!folder) return folder.error();
    removeAbandoned(*folder);
    const auto there = lookThere(*folder, file, bytes, placement);
    if (!there) return there.error();
    const auto ask = [&]() -> Result<Done> {
        return placement.beforeItAppears ? placement.beforeItAppears() : Done{};
    };
    if (*there == There::TheSame) return ask();
    const auto part = makePart(*folder);
    if (!part) return part.error();
    auto placed = fill(*part, bytes, file);
    if (placed) placed = ask();
    if (placed) placed = putInPlace(*folder, *part, file, *there);
    if (!placed) {
        ::unlinkat(folder->number(), part->name.c_str(), 0);
        return placed;
    }
    if (::fsync(folder->number()) != 0)
        return failed("cannot force to disk the folder", folder->path);
    return Done{};
}

}  // namespace reports
