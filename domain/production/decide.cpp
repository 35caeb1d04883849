#include "domain/production/decide.h"

#include "domain/production/decisions.h"

namespace domain {
namespace {

Decision decideWhat(const std::optional<Order>& order, const Command& command,
                    const Occasion& occasion) {
    if (order)
        return std::visit(
            [&](const auto& each) {
                return decideOn(Deciding{*order, occasion}, each);
            },
            command);
    const auto* receive = std::get_if<Receive>(&command);
    if (receive == nullptr) return Error{ErrorCode::Unusable, "no such order"};
    std::vector<Happening> happenings{Received{receive->revision}};
    if (receive->replaces) happenings.emplace_back(RemakeBegun{*receive->replaces});
    return happenings;
}

}  // namespace

Result<std::vector<Event>> decide(const std::optional<Order>& order, const Command& command,
                                  const Occasion& occasion) {
    auto happenings = decideWhat(order, command, occasion);
    if (!happenings) return happenings.error();
    const auto* receive = std::get_if<Receive>(&command);
    std::vector<Event> events;
    std::int64_t version = order ? order->version : 0;
    for (Happening& what : *std::move(happenings))
        events.push_back({.order = order ? order->number : receive->number,
                          .version = ++version,
                          .at = occasion.at,
                          .person = occasion.person,
                          .key = occasion.key,
                          .what = std::move(what),
                          .station = occasion.station});
    return events;
}

}  // namespace domain
