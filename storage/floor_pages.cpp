#include "storage/floor_pages.h"

#include <limits>

namespace storage {
namespace {

using domain::OrderNumber;
using domain::Result;

/// After every number and every day.
constexpr std::int64_t kEnd = std::numeric_limits<std::int64_t>::max();

std::vector<LabelledOrder> readOrders(Connection& connection, Statement& rows) {
    const OrderLabels labels{connection};
    std::vector<LabelledOrder> orders;
    rows.run();
    while (rows.next()) orders.push_back({readRegisterRow(rows), labels.read(rows)});
    return orders;
}

}  // namespace

Result<std::vector<LabelledOrder>> FloorPages::open(const std::optional<RegisterRow>& after,
                                                    std::size_t most) const try {
    Statement rows{connection_, "floor_page"};
    rows.bind({{"floor_day", after ? floorDayOf(*after) : -kEnd},
               {"year", after ? std::int64_t{after->number.year()} : 0},
               {"count", after ? std::int64_t{after->number.count()} : 0},
               {"most", static_cast<std::int64_t>(most)}});
    return readOrders(connection_, rows);
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::vector<LabelledOrder>> FloorPages::allOpen() const { return open({}, kEnd); }

Result<std::vector<LabelledOrder>> FloorPages::closed(const std::optional<OrderNumber>& before,
                                                      std::size_t most) const try {
    Statement rows{connection_, "floor_closed_page"};
    rows.bind({{"year", before ? std::int64_t{before->year()} : kEnd},
               {"count", before ? std::int64_t{before->count()} : kEnd},
               {"most", static_cast<std::int64_t>(most)}});
    return readOrders(connection_, rows);
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::optional<LabelledOrder>> FloorPages::find(const OrderNumber& number) const try {
    Statement rows{connection_, "floor_order"};
    rows.bind("order_number", number.text());
    auto found = readOrders(connection_, rows);
    if (found.empty()) return std::optional<LabelledOrder>{};
    return std::optional{std::move(found.front())};
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace storage
