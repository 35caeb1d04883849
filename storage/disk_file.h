/// Files on the disk by the calls of POSIX: written in full, forced to the disk, put in place
/// without ever replacing another.
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <string>
#include <string_view>

#include "domain/base/result.h"

namespace storage {

/// An open file that is closed again, whatever happens. The records themselves are never opened
/// with it: closing would drop the locks this process holds on them.
class Descriptor {
public:
    Descriptor() = default;
    explicit Descriptor(int number) : number_{number} {}
    Descriptor(Descriptor&& other) noexcept : number_{other.number_} { other.number_ = -1; }
    Descriptor& operator=(Descriptor&&) = delete;
    ~Descriptor();

    explicit operator bool() const noexcept { return number_ >= 0; }
    int number() const noexcept { return number_; }

private:
    int number_{-1};
};

/// "WHAT PLACE: reason of errno". ErrorCode::Unavailable.
domain::Error diskError(const std::string& what, const std::filesystem::path& place);

/// The folder, made (0700) where it is absent. ErrorCode::Unusable when the path is something else.
domain::Result<domain::Done> ensureFolder(const std::filesystem::path& folder);

/// Sixteen random hexadecimal digits.
std::string randomName();

domain::Result<domain::Done> appendAll(const Descriptor& file, std::string_view bytes,
                                       const std::filesystem::path& place);
/// Reads `count` bytes from `offset`, in pieces; a file that ends before is an error.
domain::Result<domain::Done> readRange(
    const Descriptor& file, std::int64_t offset, std::int64_t count,
    const std::filesystem::path& place,
    const std::function<domain::Result<domain::Done>(std::string_view)>& piece);

/// Forces a file to the disk, and drops what the system remembers of it, so that reading it again
/// reads the disk.
domain::Result<domain::Done> forceToDisk(const Descriptor& file,
                                         const std::filesystem::path& place);
/// Forces the names in a folder to the disk.
domain::Result<domain::Done> forceFolder(const std::filesystem::path& folder);

/// Gives a file or folder its name unless something has it; false: it is taken.
domain::Result<bool> renameNew(const std::filesystem::path& from, const std::filesystem::path& to);

}  // namespace storage
