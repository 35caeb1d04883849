/// The order register: one row per order as it stands, derived from the ledger and never ahead of
/// it. Updated in the transaction that appends, and rebuildable at any time.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "domain/production/order.h"
#include "storage/transaction.h"

namespace storage {

struct RegisterRow {
    domain::OrderNumber number;
    std::int64_t version{};
    domain::OrderStatus status{};
    std::optional<domain::Stage> stage{};  ///< the one due or in hand
    std::optional<domain::StageStatus> stageStatus{};
    domain::WaitsFor waitsFor{};
    std::string holdUp{};  ///< "2 questions", "survey: in hand"
    domain::Arch arch{};
    std::string description{};  ///< "upper, III mod 1, Co-Cr"
    std::optional<domain::Date> due{};
    domain::Instant receivedAt{};
    domain::Instant changedAt{};
    std::string patientCode{};
    std::string prescriberCode{};
    domain::SealedText identity{};
    std::int64_t questions{};                         ///< unanswered: blocking findings and flags
    std::int64_t cautions{};                          ///< that nobody has taken yet
    std::optional<domain::OrderNumber> caseLeader{};  ///< of the case it travels with
    domain::Instant waitingSince{};                   ///< since when it waits for whom it waits for
    std::int64_t laboratoryTime{};  ///< microseconds the laboratory had it, up to its last change

    friend bool operator==(const RegisterRow&, const RegisterRow&) = default;
};

/// What the register says about an order.
RegisterRow rowOf(const domain::Order& order);

class OrderRegister {
public:
    explicit OrderRegister(Connection& connection) : connection_{connection} {}

    /// After the ledger has taken the order's events.
    domain::Result<domain::Done> put(Transaction& transaction, const domain::Order& order) const;
    /// By number.
    domain::Result<std::vector<RegisterRow>> all() const;
    domain::Result<std::optional<RegisterRow>> find(const domain::OrderNumber& number) const;
    /// The next number of the year `today` is in. ErrorCode::Refused when the year has no more.
    domain::Result<domain::OrderNumber> nextNumber(Transaction& transaction,
                                                   domain::Date today) const;

    /// Writes every row anew from the ledger.
    domain::Result<domain::Done> rebuild(Transaction& transaction) const;
    /// Where the rows say something else than the ledger, one sentence each; empty when they agree.
    domain::Result<std::vector<std::string>> differences() const;

private:
    Connection& connection_;
};

}  // namespace storage
