#include "apps/actions/workshop.h"

#include <algorithm>

#include "storage/workshop_store.h"

namespace actions {
namespace {

using domain::Error;
using domain::ErrorCode;
using domain::Permission;
using domain::Result;
using domain::RoutePlan;
using domain::StagePlan;
using domain::SubjectKind;
using domain::ThingCode;

/// Takes a stage out of a plan, or makes the plain shipped one of any route that has it.
std::optional<StagePlan> taken(RoutePlan& plan, domain::Stage stage) {
    const auto step = std::ranges::find(plan.stages, stage, &StagePlan::stage);
    if (step != plan.stages.end()) {
        StagePlan found = *step;
        plan.stages.erase(step);
        return found;
    }
    for (const auto& code : domain::enumCodes<domain::Route>) {
        const RoutePlan other = domain::shippedPlan(code.value, plan.arch);
        if (const StagePlan* shipped = other.find(stage)) return *shipped;
    }
    return {};
}

/// Where a stage belongs after it was taken out.
Result<std::size_t> placeAfter(const RoutePlan& plan, domain::Stage after) {
    const auto step = std::ranges::find(plan.stages, after, &StagePlan::stage);
    if (step == plan.stages.end())
        return Error{ErrorCode::Unusable, wordsOf(after) + " is not a stage of this route"};
    return static_cast<std::size_t>(step - plan.stages.begin()) + 1;
}

Result<RoutePlan> changed(RoutePlan plan, const StageChange& change) {
    const auto at = std::ranges::find(plan.stages, change.stage, &StagePlan::stage);
    auto place = static_cast<std::size_t>(at - plan.stages.begin());
    if (at == plan.stages.end() && !change.after)
        return Error{ErrorCode::Unusable, wordsOf(change.stage) +
                                              " is not a stage of this route; say after which one "
                                              "it comes"};
    auto step = taken(plan, change.stage);
    if (!step) return Error{ErrorCode::Unusable, "no route has a stage " + wordsOf(change.stage)};
    if (change.after) {
        const auto after = placeAfter(plan, *change.after);
        if (!after) return after.error();
        place = *after;
    }
    if (change.usual) step->usual = *change.usual;
    if (change.station) step->station = *change.station;
    for (const std::string& line : change.fewer) std::erase(step->checklist, line);
    step->checklist.insert(step->checklist.end(), change.more.begin(), change.more.end());
    if (!change.out)
        plan.stages.insert(plan.stages.begin() + static_cast<std::ptrdiff_t>(place), *step);
    return keepEarlier(std::move(plan));
}

}  // namespace

Result<domain::Workshop> workshop(const Laboratory& laboratory) {
    return storage::loadWorkshop(laboratory.records());
}

Result<Kept> enterEquipment(const Laboratory& laboratory, const ThingCode& code,
                            const domain::Equipment& equipment, const Who& who) {
    return keep(laboratory, who, Permission::KeepWorkshop, {SubjectKind::Equipment, code.text()},
                domain::EquipmentEntered{equipment});
}

Result<Kept> calibrate(const Laboratory& laboratory, const ThingCode& code, domain::Date due,
                       const Who& who) {
    return keep(laboratory, who, Permission::KeepWorkshop, {SubjectKind::Equipment, code.text()},
                domain::Calibrated{due});
}

Result<Kept> enterSite(const Laboratory& laboratory, const ThingCode& code,
                       const domain::Site& site, const Who& who) {
    return keep(laboratory, who, Permission::KeepWorkshop, {SubjectKind::Site, code.text()},
                domain::SiteEntered{site});
}

Result<Kept> changeRoute(const Laboratory& laboratory, domain::Route route, domain::Arch arch,
                         const StageChange& change, const Who& who) {
    const std::string subject = std::string{codeOf(route)} + '-' + std::string{codeOf(arch)};
    return keepAsItStands(laboratory, who, Permission::KeepWorkshop, {SubjectKind::Route, subject},
                          domain::WorkshopEventKind::RouteSet,
                          [&](const domain::Workshop& now) -> Result<domain::WorkshopHappening> {
                              auto plan = changed(now.planFor(route, arch), change);
                              if (!plan) return plan.error();
                              RoutePlan next = *std::move(plan);
                              ++next.version;
                              return domain::WorkshopHappening{domain::RouteSet{std::move(next)}};
                          });
}

}  // namespace actions
