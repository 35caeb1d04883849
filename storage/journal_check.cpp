#include "storage/journal_check.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <fstream>
#include <string_view>

namespace storage {
namespace {

namespace fs = std::filesystem;

/// The first bytes of both files, and where their big-endian numbers lie.
constexpr std::string_view kFileMagic{"SQLite format 3\0", 16};
constexpr std::string_view kJournalMagic{"\xd9\xd5\x05\xf9\x20\xa1\x63\xd7", 8};
constexpr std::size_t kFileHead = 100;
constexpr std::size_t kFilePageSize = 16;  // of two bytes; 1 stands for 65536
constexpr std::size_t kFileCounter = 24;
constexpr std::size_t kJournalHead = 28;
constexpr std::size_t kJournalNonce = 12;
constexpr std::size_t kJournalPages = 16;
constexpr std::size_t kJournalSector = 20;
constexpr std::size_t kJournalPageSize = 24;
constexpr std::uint64_t kJournalHeadSector = 512;
/// A page in the journal stands between its number and a checksum.
constexpr std::size_t kNumberBefore = 4;
constexpr std::size_t kSumAfter = 4;
constexpr std::uint32_t kLargestPage = 65536;
constexpr std::uint32_t kLargestSector = 65536;

std::uint32_t number(std::string_view bytes, std::size_t at) {
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < 4; ++i)
        value = value << 8 | static_cast<unsigned char>(bytes[at + i]);
    return value;
}

/// As many bytes as there are, at most `most`.
std::string bytesAt(std::ifstream& file, std::uint64_t at, std::size_t most) {
    std::string bytes(most, '\0');
    file.clear();
    file.seekg(static_cast<std::streamoff>(at));
    file.read(bytes.data(), static_cast<std::streamsize>(most));
    bytes.resize(static_cast<std::size_t>(std::max<std::streamsize>(file.gcount(), 0)));
    return bytes;
}

std::string headOf(const fs::path& file, std::size_t bytes) {
    std::ifstream stream{file, std::ios::binary};
    return bytesAt(stream, 0, bytes);
}

std::uint32_t pageSizeIn(std::string_view fileHead) {
    const std::uint32_t two = number(fileHead, kFilePageSize) >> 16;
    return two == 1 ? kLargestPage : two;
}

/// The change counter in the first page as the journal keeps it, if it does.
std::optional<std::uint32_t> counterKept(std::ifstream& journal, std::string_view head,
                                         std::uint32_t pageSize) {
    constexpr std::size_t kSumStep = 200;
    const std::size_t length = kNumberBefore + pageSize + kSumAfter;
    for (std::uint64_t at = number(head, kJournalSector);; at += length) {
        const std::string record = bytesAt(journal, at, length);
        if (record.size() < length) return {};
        const std::string_view page = std::string_view{record}.substr(kNumberBefore, pageSize);
        std::uint32_t sum = number(head, kJournalNonce);
        for (std::size_t byte = pageSize - kSumStep; byte > 0 && byte < pageSize; byte -= kSumStep)
            sum += static_cast<unsigned char>(page[byte]);
        if (sum != number(record, kNumberBefore + pageSize)) return {};
        if (number(record, 0) == 1) return number(page, kFileCounter);
    }
}

bool isHeadOfRecords(std::string_view fileHead) {
    return fileHead.size() == kFileHead && fileHead.starts_with(kFileMagic);
}

/// A power cut while the head of a journal is completed may leave garbage in its sector. Nothing of
/// the records has been written by then: what such a journal keeps is what they hold. SQLite, which
/// no longer takes it for a journal, rolls nothing back, and nothing needs it.
bool keepsWhatIs(std::ifstream& journal, const fs::path& file, std::string_view fileHead) {
    const std::uint32_t pageSize = isHeadOfRecords(fileHead) ? pageSizeIn(fileHead) : 0;
    if (pageSize == 0) return false;
    std::ifstream records{file, std::ios::binary};
    const std::size_t length = kNumberBefore + pageSize + kSumAfter;
    for (std::uint64_t at = kJournalHeadSector;; at += length) {
        const std::string record = bytesAt(journal, at, length);
        if (record.empty()) return at > kJournalHeadSector;
        if (record.size() < length) return false;
        const std::uint32_t page = number(record, 0);
        if (page == 0) return false;
        const std::string held = bytesAt(records, std::uint64_t{page - 1} * pageSize, pageSize);
        if (record.compare(kNumberBefore, pageSize, held) != 0) return false;
    }
}

std::optional<std::string> look(const fs::path& file, const fs::path& journalFile,
                                std::string_view fileHead, std::uint64_t fileSize) {
    std::ifstream journal{journalFile, std::ios::binary};
    const std::string head = bytesAt(journal, 0, kJournalHead);
    // An empty one, or one whose transaction has not begun to write: SQLite leaves it alone.
    if (head.empty() || head.front() == '\0') return {};
    if (head.size() < kJournalHead || !head.starts_with(kJournalMagic)) {
        if (keepsWhatIs(journal, file, fileHead)) return {};
        return "is damaged, or is no journal";
    }
    // A first page that was torn is what a journal is there to mend.
    if (!isHeadOfRecords(fileHead)) return {};
    const std::uint32_t pageSize = pageSizeIn(fileHead);
    const std::uint32_t sector = number(head, kJournalSector);
    if (pageSize == 0 || number(head, kJournalPageSize) != pageSize || sector < kJournalHead ||
        sector > kLargestSector)
        return "was written for a database of another page size";
    if (std::uint64_t{number(head, kJournalPages)} * pageSize > fileSize)
        return "was begun when the records were longer than they are";
    const auto counter = counterKept(journal, head, pageSize);
    const std::uint32_t now = number(fileHead, kFileCounter);
    if (counter && now != *counter && now != *counter + 1)
        return "belongs to another state of the records, or to others";
    return {};
}

}  // namespace

std::optional<std::string> strangeJournal(const fs::path& file) {
    fs::path journal = file;
    journal += "-journal";
    constexpr int kTries = 50;
    for (int i = 0; i < kTries; ++i) {
        const std::string before = headOf(file, kFileHead);
        std::error_code failure;
        const auto size = fs::file_size(file, failure);
        const auto strange = look(file, journal, before, failure ? 0 : size);
        if (!strange) return {};
        // Another program may have committed between the looks; then they do not fit together.
        if (headOf(file, kFileHead) != before || look(file, journal, before, size) != strange)
            continue;
        return "the journal " + journal.string() + ' ' + *strange +
               ": rolling it back would damage them; move it elsewhere and verify the records, or "
               "restore a backup";
    }
    return {};
}

}  // namespace storage
