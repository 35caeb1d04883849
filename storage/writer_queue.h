/// Programs that write the same records wait in turn, beside the lock of the database itself.
///
/// SQLite's own way is to sleep and ask again: of several writers one can be overtaken by all the
/// others. Two locks on bytes of a file beside the records hand the turn on: who waits for the
/// second holds the first, and everybody else queues in the kernel for that. The kernel frees both
/// when a program dies. The records are safe without it; only the waiting would not be fair.
#pragma once

#include <chrono>
#include <filesystem>
#include <string_view>

namespace storage {

/// "records.turn", beside the records: always empty.
inline constexpr std::string_view kTurnFile = "records.turn";

class WriterQueue {
public:
    /// `records`: the database's file; nobody queues for records in memory, ":memory:".
    explicit WriterQueue(const std::filesystem::path& records);
    WriterQueue(const WriterQueue&) = delete;
    WriterQueue& operator=(const WriterQueue&) = delete;
    ~WriterQueue();

    /// Waits for its turn and holds it. False after `longest`: somebody has the turn and does not
    /// give it back. Where the file cannot be made, as in a folder that cannot be written, it is
    /// everybody's turn.
    bool enter(std::chrono::milliseconds longest);
    /// Gives the turn back; harmless without one.
    void leave() noexcept;

private:
    std::filesystem::path file_;
    int handle_{-1};
};

}  // namespace storage
