#include "domain/production/decide.h"

#include "domain/production/decisions.h"

namespace domain {
namespace {

std::vector<Happening> begin(const Receive& receive) {
    std::vector<Happening> happenings{Received{receive.revision}};
    if (receive.replaces) happenings.emplace_back(RemakeBegun{*receive.replaces});
    return happenings;
}

std::vector<Event> eventsOf(const std::vector<Happening>& happenings, const OrderNumber& number,
                            std::int64_t version, const Occasion& occasion) {
    std::vector<Event> events;
    events.reserve(happenings.size());
    for (const Happening& what : happenings)
        events.push_back({.order = number,
                          .version = ++version,
                          .at = occasion.at,
                          .person = occasion.person,
                          .key = occasion.key,
                          .what = what,
                          .station = occasion.station,
                          .command = occasion.command});
    return events;
}

}  // namespace

Result<std::vector<Event>> decide(const std::optional<Order>& order, const Command& command,
                                  const Occasion& occasion) {
    if (order) {
        const Decision decision = std::visit(
            [&](const auto& each) { return decideOn(Deciding{*order, occasion}, each); }, command);
        if (!decision) return decision.error();
        return eventsOf(*decision, order->number, order->version, occasion);
    }
    const auto* receive = std::get_if<Receive>(&command);
    if (receive == nullptr) return Error{ErrorCode::Unusable, "no such order"};
    return eventsOf(begin(*receive), receive->number, 0, occasion);
}

}  // namespace domain
