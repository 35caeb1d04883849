#include "storage/projections.h"

#include "storage/lot_uses.h"
#include "storage/order_register.h"

namespace storage {

using domain::Done;
using domain::Result;

Result<Done> putProjections(Transaction& transaction, const domain::Order& order,
                            const std::vector<domain::Event>& events) {
    auto put = OrderRegister{transaction.connection()}.put(transaction, order);
    if (!put) return put;
    return LotUses{transaction.connection()}.put(transaction, events);
}

Result<Done> rebuildProjections(Transaction& transaction) {
    auto rebuilt = OrderRegister{transaction.connection()}.rebuild(transaction);
    if (!rebuilt) return rebuilt;
    return LotUses{transaction.connection()}.rebuild(transaction);
}

Result<std::vector<std::string>> projectionDifferences(Connection& connection) {
    auto problems = OrderRegister{connection}.differences();
    if (!problems) return problems;
    auto more = LotUses{connection}.differences();
    if (!more) return more;
    std::vector<std::string> all = *std::move(problems);
    all.insert(all.end(), more->begin(), more->end());
    return all;
}

}  // namespace storage
