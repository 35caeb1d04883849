/// A few lines of a floor, as the records would give them.
#pragma once

#include <vector>

#include "apps/actions/floor.h"
#include "apps/actions/orders.h"

namespace desktop_tests {

/// 2026-11-25 08:00 UTC.
inline domain::Instant someNow() {
    return domain::Instant::ofMicroseconds(
        domain::Date::parse("2026-11-25")->days() * 86'400'000'000 + 8 * 3'600'000'000);
}

inline domain::Instant daysAgo(std::int64_t days) {
    return domain::Instant::ofMicroseconds(someNow().microseconds() - days * 86'400'000'000);
}

/// Four orders: asked and late, in hand, away at the practice, delivered.
inline std::vector<actions::FloorLine> someFloor() {
    using namespace domain;
    const auto line = [](int count, const char* what, OrderStatus status,
                         std::optional<Stage> stage, std::optional<StageStatus> how, WaitsFor waits,
                         const char* holdUp, const char* due, int changed, const char* patient,
                         const char* prescriber) {
        return actions::FloorLine{.number = OrderNumber::make(26, count).value(),
                                  .description = what,
                                  .status = status,
                                  .stage = stage,
                                  .stageStatus = how,
                                  .waitsFor = waits,
                                  .holdUp = holdUp,
                                  .due = Date::parse(due),
                                  .receivedAt = daysAgo(9),
                                  .changedAt = daysAgo(changed),
                                  .patient = patient,
                                  .prescriber = prescriber,
                                  .waitingSince = daysAgo(changed)};
    };
    return {line(1, "upper, III mod 1, Co-Cr", OrderStatus::Received, {}, {}, WaitsFor::Dentist,
                 "2 questions", "2026-11-23", 3, "P-101", "Dr. Žofie Šťastná"),
            line(2, "lower, I, Co-Cr", OrderStatus::InWork, Stage::Survey, StageStatus::InHand,
                 WaitsFor::Bench, "survey: in hand", "2026-11-25", 0, "P-102", "Dr. Obi"),
            line(3, "lower, II mod 1, Ti", OrderStatus::InWork, Stage::FrameworkTryIn,
                 StageStatus::InHand, WaitsFor::Dentist, "framework try in: at the practice",
                 "2026-11-30", 2, "P-103", "Dr. Obi"),
            line(4, "upper, IV, Co-Cr", OrderStatus::Delivered, {}, {}, WaitsFor::Nobody,
                 "delivered", "2026-11-20", 6, "P-104", "Dr. Şen")};
}

}  // namespace desktop_tests
