#include "storage/writer_queue.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <future>
#include <thread>

namespace storage {
namespace {

/// The bytes of the file that are locked; neither is there.
constexpr off_t kQueueByte = 0;
constexpr off_t kTurnByte = 1;

/// Locks belong to the open file, not to the process: several connections of one program queue as
/// several programs do.
bool changeLock(int handle, int how, short kind, off_t byte) noexcept {
    struct flock lock{};
    lock.l_type = kind;
    lock.l_whence = SEEK_SET;
    lock.l_start = byte;
    lock.l_len = 1;
    return fcntl(handle, how, &lock) == 0;
}
bool tryLock(int handle, off_t byte) noexcept {
    return changeLock(handle, F_OFD_SETLK, F_WRLCK, byte);
}
bool waitForLock(int handle, off_t byte) noexcept {
    return changeLock(handle, F_OFD_SETLKW, F_WRLCK, byte);
}
void unlock(int handle, off_t byte) noexcept { changeLock(handle, F_OFD_SETLK, F_UNLCK, byte); }

/// Queues until it has the turn.
bool waitInTurn(int handle) noexcept {
    if (!waitForLock(handle, kQueueByte)) return false;
    const bool has = waitForLock(handle, kTurnByte);
    unlock(handle, kQueueByte);
    return has;
}

/// Without waiting: nobody queues, and nobody has the turn.
bool goAtOnce(int handle) noexcept {
    if (!tryLock(handle, kQueueByte)) return false;
    const bool has = tryLock(handle, kTurnByte);
    unlock(handle, kQueueByte);
    return has;
}

}  // namespace

WriterQueue::WriterQueue(const std::filesystem::path& records)
    : file_{records.has_parent_path() ? records.parent_path() / kTurnFile : records.parent_path()} {
}

WriterQueue::~WriterQueue() {
    if (handle_ >= 0) close(handle_);
}

bool WriterQueue::enter(std::chrono::milliseconds longest) {
    if (handle_ < 0 && !file_.empty())
        handle_ = open(file_.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK,
                       S_IRUSR | S_IWUSR);
    if (handle_ < 0 || goAtOnce(handle_)) return true;
    // A wait in the kernel cannot be given up: a thread does it, with the file's own handle.
    std::promise<bool> promise;
    std::future<bool> turn = promise.get_future();
    const int waiting = handle_;
    std::thread waiter{[waiting, answer = std::move(promise)]() mutable {
        answer.set_value(waitInTurn(waiting));
    }};
    if (turn.wait_for(longest) == std::future_status::ready) {
        waiter.join();
        return true;
    }
    // The thread gives its turn back when it comes: nobody else has this handle any more.
    handle_ = -1;
    std::thread{[waiting, late = std::move(waiter)]() mutable {
        late.join();
        close(waiting);
    }}.detach();
    return false;
}

void WriterQueue::leave() noexcept {
    if (handle_ >= 0) unlock(handle_, kTurnByte);
}

}  // namespace storage
