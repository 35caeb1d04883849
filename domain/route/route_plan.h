/// A route as one laboratory works it: each stage with where, how long, what is checked, what its
/// gate demands, and where work may go back to. Versioned; an order keeps the one it was accepted
/// under.
#pragma once

#include <string>
#include <vector>

#include "domain/base/quantity.h"
#include "domain/base/result.h"
#include "domain/route/demand.h"
#include "domain/route/route.h"
#include "domain/route/skill.h"
#include "domain/route/station_kind.h"

namespace domain {

struct StagePlan {
    Stage stage{};
    Skill skill{};
    StationKind station{};
    Minutes usual{};                       ///< of work, or of waiting where nobody's hands are busy
    std::vector<std::string> checklist{};  ///< words to tick
    std::vector<Demand> demands{};         ///< what its gate asks to be recorded
    std::vector<Stage> fallBack{};         ///< where work may begin again
    friend bool operator==(const StagePlan&, const StagePlan&) = default;
};

struct RoutePlan {
    Route route{};
    Arch arch{};
    std::int64_t version{1};  ///< 1: as shipped
    std::vector<StagePlan> stages{};

    const StagePlan* find(Stage stage) const;
    friend bool operator==(const RoutePlan&, const RoutePlan&) = default;
};

/// The route as shipped. Order of the stages: see route.h. Minutes, checklists and where work goes
/// back to are common practice, no source, except where a gate's row names one.
RoutePlan shippedPlan(Route route, Arch arch);

/// A route with those that go with it put in at their places.
RoutePlan joined(RoutePlan plan, const std::vector<RoutePlan>& withIt);

/// The same with what each stage may go back to cut to what lies before it.
RoutePlan keepEarlier(RoutePlan plan);

/// What is wrong with a route somebody edited; empty when it may be used. Demands the law or
/// safety makes cannot be taken out of their stage, and a route that stands by itself begins with
/// receipt and ends in inspection and delivery.
std::vector<std::string> flawsOf(const RoutePlan& plan);

}  // namespace domain
