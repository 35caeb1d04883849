/// The order register: one row per order as it stands, derived from the ledger and never ahead of
/// it. Updated in the transaction that appends, and rebuildable at any time.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "domain/production/order.h"
#include "storage/ledger_pass.h"
#include "storage/statement.h"
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
    bool purged{};                  ///< its names are erased
    std::optional<domain::Date> delivered{};  ///< the day it left for good

    friend bool operator==(const RegisterRow&, const RegisterRow&) = default;
};

/// What the register says about an order.
RegisterRow rowOf(const domain::Order& order);

/// The row of a query that has all columns of the register. Throws SqlFailure.
RegisterRow readRegisterRow(const Statement& row);
/// By what open orders are sorted on the floor: the day they are needed; those without one last.
std::int64_t floorDayOf(const RegisterRow& row);

/// Whose names an order has.
enum class Party : std::uint8_t { Patient, Prescriber };

class OrderRegister {
public:
    explicit OrderRegister(Connection& connection) : connection_{connection} {}

    /// After the ledger has taken the order's events.
    domain::Result<domain::Done> put(Transaction& transaction, const domain::Order& order) const;
    /// By number.
    domain::Result<std::vector<RegisterRow>> all() const;
    domain::Result<std::optional<RegisterRow>> find(const domain::OrderNumber& number) const;
    /// The orders of the case that `leader` leads, itself first; by number.
    domain::Result<std::vector<RegisterRow>> ofCase(const domain::OrderNumber& leader) const;
    /// Whether an order other than this one still has the names of a party.
    domain::Result<bool> isNamedElsewhere(Party party, const std::string& code,
                                          const domain::OrderNumber& than) const;
    /// The next number of the year `today` is in. ErrorCode::Refused when the year has no more.
    domain::Result<domain::OrderNumber> nextNumber(Transaction& transaction,
                                                   domain::Date today) const;

    /// Empties the register; what it listens to then writes every row anew. Throws
    /// SqlFailure.
    std::unique_ptr<LedgerListener> rebuild(Transaction& transaction) const;
    /// Finds where the rows say something else than the ledger.
    std::unique_ptr<TableCheck> check() const;

private:
    Connection& connection_;
};

}  // namespace storage
