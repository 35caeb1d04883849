/// The disk under SQLite in this process: a VFS of our own, laid over the default one before the
/// first connection is opened, that writes down what is asked of the records and of their journal,
/// or fails where a test says so. The program under test knows nothing of it.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace faults {

/// The two files of records: the records themselves, and their rollback journal.
enum class Part { Records, Journal };
inline constexpr std::array kParts{Part::Records, Part::Journal};

/// What was asked of a file, as far as it matters to what lies on the disk afterwards.
struct Operation {
    enum class Kind { Create, Write, Truncate, Sync, Delete };
    Kind kind{};
    Part part{};
    std::size_t offset{};  ///< of a write; of a truncation the size that is left
    std::string bytes{};   ///< of a write
};

/// How long a failure lasts.
enum class Lasting { Once, ForEver };

enum class Access { Open, Read, Write, Truncate, Sync, Size, Delete };

/// One way in which a disk fails.
struct FaultKind {
    std::string_view words;
    Access access{};
    int code{};     ///< of SQLite
    bool isHalf{};  ///< half of what was to be written is there
};
/// All of them: no reading, no writing, half a write, a full disk, no syncing and so on.
extern const std::array<FaultKind, 9> kFaultKinds;

/// Before the first connection is opened.
void installDisk();

/// What is asked of the files of records from now on, for as long as this lives.
class Recording {
public:
    explicit Recording(std::vector<Operation>& into);
    ~Recording();
    Recording(const Recording&) = delete;
    Recording& operator=(const Recording&) = delete;
};

/// From now on an access of the kind fails: the `turn`-th, counted from 1, and with
/// `Lasting::ForEver` every one after it. Turn 0: none fails, they are counted.
void failAccess(const FaultKind& kind, std::int64_t turn, Lasting lasting);
/// No longer; how many accesses of the kind there were.
std::int64_t failNoAccess();

}  // namespace faults
