#include "storage/wiped_journal.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QSqlQuery>
#include <algorithm>

#include "storage/disk_file.h"
#include "storage/transaction.h"

namespace storage {
namespace {

namespace fs = std::filesystem;
using domain::Done;
using domain::Result;

fs::path journalOf(const fs::path& records) {
    fs::path journal = records;
    journal += "-journal";
    return journal;
}

std::int64_t sizeOf(const Descriptor& file) {
    struct stat found{};
    return ::fstat(file.number(), &found) == 0 ? std::int64_t{found.st_size} : 0;
}

Result<Done> overwrite(const Descriptor& file, const fs::path& journal) {
    static const std::string kZeros(std::size_t{1} << 16, '\0');
    const std::int64_t size = sizeOf(file);
    for (std::int64_t at = 0; at < size;) {
        const auto piece =
            std::min<std::int64_t>(size - at, static_cast<std::int64_t>(kZeros.size()));
        const auto done =
            ::pwrite(file.number(), kZeros.data(), static_cast<std::size_t>(piece), at);
        if (done <= 0) return diskError("cannot overwrite", journal);
        at += done;
    }
    if (auto forced = forceToDisk(file, journal); !forced) return forced;
    if (::ftruncate(file.number(), 0) != 0) return diskError("cannot cut off", journal);
    return forceToDisk(file, journal);
}

}  // namespace

WipedJournal::WipedJournal(Connection& records) : records_{records} {
    for (const char* mode : {"PRAGMA locking_mode = EXCLUSIVE", "PRAGMA journal_mode = PERSIST"})
        QSqlQuery{records_.database()}.exec(QString::fromUtf8(mode));
}

WipedJournal::~WipedJournal() {
    // The lock goes with the next read.
    for (const char* mode : {"PRAGMA journal_mode = TRUNCATE", "PRAGMA locking_mode = NORMAL",
                             "SELECT COUNT(*) FROM ledger_head"})
        QSqlQuery{records_.database()}.exec(QString::fromUtf8(mode));
}

Result<Done> WipedJournal::wipe() { return wipeJournal(records_); }

bool hasUnwipedJournal(const fs::path& records) {
    const Descriptor file{::open(journalOf(records).c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW)};
    char first = 1;
    return file && ::pread(file.number(), &first, 1, 0) == 1 && first == '\0';
}

Result<Done> wipeJournal(Connection& records) {
    // While this lock is held nobody else begins a journal, and none that lies there is rolled
    // back.
    const auto alone = Transaction::begin(records);
    if (!alone) return alone.error();
    const fs::path journal = journalOf(records.file());
    if (!hasUnwipedJournal(records.file())) return Done{};
    const Descriptor file{::open(journal.c_str(), O_RDWR | O_CLOEXEC | O_NOFOLLOW)};
    if (!file) return diskError("cannot open", journal);
    return overwrite(file, journal);
}

}  // namespace storage
