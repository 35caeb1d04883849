/// Orders with their labels, a page at a time: what the floor shows and what a search finds.
#pragma once

#include "storage/order_labels.h"
#include "storage/order_register.h"

namespace storage {

struct LabelledOrder {
    RegisterRow row;
    std::optional<OrderLabel> label{};  ///< nullopt: its names were erased
};

class FloorPages {
public:
    explicit FloorPages(Connection& connection) : connection_{connection} {}

    /// Open orders, what is due first at the top: so many that come after one that was seen.
    domain::Result<std::vector<LabelledOrder>> open(const std::optional<RegisterRow>& after,
                                                    std::size_t most) const;
    domain::Result<std::vector<LabelledOrder>> allOpen() const;
    /// Closed orders, newest number first: so many below one.
    domain::Result<std::vector<LabelledOrder>> closed(
        const std::optional<domain::OrderNumber>& before, std::size_t most) const;
    /// One order; nullopt: there is none of that number.
    domain::Result<std::optional<LabelledOrder>> find(const domain::OrderNumber& number) const;

private:
    Connection& connection_;
};

}  // namespace storage
