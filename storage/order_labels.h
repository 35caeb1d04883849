/// Under which names an order is known: the labels the floor shows, and the words it is found by.
///
/// Derived from the sealed texts of the orders, so rebuildable, and erased with them. Labels are
/// encrypted. Words are folded (case, accents) and kept as keyed digests: whoever lacks the key of
/// the records can neither read them nor guess them.
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

struct OrderLabel {
    std::string patient{};     ///< reference or name; the code of one without both
    std::string prescriber{};  ///< name or code
    friend bool operator==(const OrderLabel&, const OrderLabel&) = default;
};

/// The words of a text that a search goes by, without case, accents and signs; each once.
std::vector<std::string> searchWords(const std::string& text);

class OrderLabels {
public:
    explicit OrderLabels(Connection& connection) : connection_{connection} {}

    /// After events of an order: its names as they are now; none once they are erased.
    domain::Result<domain::Done> put(Transaction& transaction, const domain::Order& order,
                                     const std::vector<domain::Event>& events) const;
    /// The label in the columns patient and prescriber of a row of an order; nullopt where they are
    /// empty. Throws SqlFailure where they cannot be opened.
    std::optional<OrderLabel> read(const Statement& row) const;
    /// Orders whose labels have every one of these words, newest first, those below `before`.
    domain::Result<std::vector<domain::OrderNumber>> find(
        const std::vector<std::string>& words, const std::optional<domain::OrderNumber>& before,
        std::size_t most) const;

    /// Empties the tables; what it listens to then writes every row anew. Throws SqlFailure.
    std::unique_ptr<LedgerListener> rebuild(Transaction& transaction) const;
    /// Finds where the rows say something else than the sealed texts.
    std::unique_ptr<TableCheck> check() const;

private:
    Connection& connection_;
};

}  // namespace storage
