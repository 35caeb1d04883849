/// One reading of the whole ledger, entry by entry and in constant memory: what verifying and
/// rebuilding are made of.
///
/// Orders are folded on the way and held as long as there is room; one that was let go of is folded
/// anew from its own entries when it comes up again.
#pragma once

#include <span>
#include <vector>

#include "domain/production/order.h"
#include "storage/ledger.h"

namespace storage {

/// What is told while the ledger is read. May throw SqlFailure.
class LedgerListener {
public:
    LedgerListener() = default;
    LedgerListener(const LedgerListener&) = delete;
    LedgerListener& operator=(const LedgerListener&) = delete;
    virtual ~LedgerListener() = default;

    /// Each entry, in order.
    virtual void entry(const LedgerEvent& /*event*/) {}
    /// An order as it stands, some time after its last entry was read; each order once.
    virtual void order(const domain::Order& /*order*/) {}
    /// After the last entry of a ledger that is whole.
    virtual void end() {}
};

/// Whether the chain of hashes and the columns beside the bytes are computed anew.
enum class Chain : std::uint8_t { Verified, Trusted };

/// Enough for those a laboratory works at together; some kilobytes each.
constexpr std::size_t kOrdersHeld = 1000;

/// Stops at the first entry that is damaged or cannot follow those before it, and reports it.
/// ErrorCode::Unavailable when the records cannot be read.
domain::Result<LedgerReport> readLedger(Connection& connection,
                                        std::span<LedgerListener* const> listeners, Chain chain,
                                        std::size_t ordersHeld = kOrdersHeld);

/// Compares a table with what the ledger says about it.
class TableCheck : public LedgerListener {
public:
    /// One sentence each; complete after end().
    const std::vector<std::string>& problems() const noexcept { return problems_; }

protected:
    void found(std::string problem) { problems_.push_back(std::move(problem)); }

private:
    std::vector<std::string> problems_;
};

}  // namespace storage
