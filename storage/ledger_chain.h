/// How entries of the ledger hang together: their hashes, the columns beside the bytes, the head.
///
/// The hash of an entry is SHA-256 of a zero byte, the hash before it, and its bytes; the first
/// follows 32 zero bytes.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "storage/event_codec.h"
#include "storage/statement.h"

namespace storage {

/// Where a chain stands: how many entries, and the hash of the newest in 64 hexadecimal digits.
struct ChainHead {
    std::int64_t entries{};
    std::string hash = std::string(64, '0');
    friend bool operator==(const ChainHead&, const ChainHead&) = default;
};

/// `domain`: keeps the hashes of one chain apart from those of another, and from other digests.
std::string chained(char domain, const std::string& previous, const QByteArray& bytes);

/// Which history an entry belongs to.
enum class Stream : std::int64_t { Orders = 1, Workshop = 2 };

/// What every event says about itself.
struct EntryStamp {
    Stream stream{Stream::Orders};
    std::string subject{};
    std::int64_t version{};
    std::string kind{};
    std::string key{};
    std::int64_t at{};  ///< microseconds
    std::string person{};
};
EntryStamp stampOf(const LedgerEvent& event);
EntryStamp stampOf(const domain::Event& event);
EntryStamp stampOf(const domain::WorkshopEvent& event);

/// What the columns of an entry must hold: everything but the bytes follows from the bytes. `head`:
/// with this entry; `part`: which one it is of those recorded under its key.
std::vector<Cell> entryCells(const EntryStamp& stamp, const ChainHead& head, std::int64_t part,
                             const QByteArray& bytes);

/// Counts the events recorded under one key: 1, 2, 3 ...
class KeyParts {
public:
    std::int64_t next(const std::string& key) {
        part_ = key == key_ ? part_ + 1 : 1;
        key_ = key;
        return part_;
    }

private:
    std::optional<std::string> key_;
    std::int64_t part_{0};
};

/// The head of the ledger as it lies there. Throws SqlFailure where there is none.
ChainHead ledgerHead(Connection& connection);
/// The problem with the row or rows of the head, if any; `expected`: what the entries give.
std::optional<std::string> headProblem(Connection& connection, const ChainHead& expected);

/// Follows the entries of the ledger from row to row and says where the chain breaks, and where an
/// entry is of an earlier time than the one before it and does not mark the clock. Formats 1 to 3
/// are from before that was looked at.
class LedgerChain {
public:
    /// The event of a row, or what is wrong with it.
    domain::Result<LedgerEvent> take(const Statement& row);
    const ChainHead& head() const noexcept { return head_; }

private:
    ChainHead head_;
    KeyParts parts_;
    std::int64_t newestAt_{};
};

/// The domain of the ledger's hashes.
constexpr char kLedgerDomain = 0;

}  // namespace storage
