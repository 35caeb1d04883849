#include "apps/actions/workshop.h"

#include <algorithm>

#include "apps/actions/unit_of_work.h"

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

/// One happening to one thing, for who may keep the workshop.
Result<Kept> enter(const Laboratory& laboratory, const Who& who, const std::string& command,
                   const domain::Subject& subject, const domain::WorkshopHappening& what) {
    return perform(laboratory, who, {Permission::KeepWorkshop, command, {}},
                   [&](UnitOfWork& unit) { return unit.record(subject, what); });
}

}  // namespace

Result<domain::Workshop> workshop(const Laboratory& laboratory) {
    const auto now = laboratory.workshop();
    if (!now) return now.error();
    return **now;
}

Result<Kept> enterEquipment(const Laboratory& laboratory, const ThingCode& code,
                            const domain::Equipment& equipment, const Who& who) {
    const std::string due = equipment.calibrationDue ? equipment.calibrationDue->text() : "";
    return enter(laboratory, who,
                 commandOf({"equipment", code.text(), std::string{codeOf(equipment.kind)},
                            equipment.serial, due}),
                 {SubjectKind::Equipment, code.text()}, domain::EquipmentEntered{equipment});
}

Result<Kept> calibrate(const Laboratory& laboratory, const ThingCode& code, domain::Date due,
                       const Who& who) {
    return enter(laboratory, who, commandOf({"calibrate", code.text(), due.text()}),
                 {SubjectKind::Equipment, code.text()}, domain::Calibrated{due});
}

Result<Kept> enterSite(const Laboratory& laboratory, const ThingCode& code,
                       const domain::Site& site, const Who& who) {
    return enter(laboratory, who,
                 commandOf({"site", code.text(), site.name, site.address, site.registration}),
                 {SubjectKind::Site, code.text()}, domain::SiteEntered{site});
}

Result<Kept> enterStation(const Laboratory& laboratory, const ThingCode& station,
                          domain::StationKind kind, const Who& who) {
    return enter(laboratory, who, commandOf({"station", station.text(), std::string{codeOf(kind)}}),
                 {SubjectKind::Station, station.text()}, domain::StationEntered{kind});
}

Result<std::map<ThingCode, domain::StationKind>> stations(const Laboratory& laboratory) {
    const auto now = laboratory.workshop();
    if (!now) return now.error();
    return (*now)->stations;
}

Result<Kept> changeRoute(const Laboratory& laboratory, domain::Route route, domain::Arch arch,
                         const StageChange& change, const Who& who) {
    const std::string subject = std::string{codeOf(route)} + '-' + std::string{codeOf(arch)};
    std::string command =
        commandOf({"route", subject, std::string{codeOf(change.stage)},
                   change.usual ? std::to_string(change.usual->count()) : "",
                   wordIfAny(change.station), change.out ? "out" : "", wordIfAny(change.after)});
    for (const std::string& line : change.more) command += commandOf({"more", line});
    for (const std::string& line : change.fewer) command += commandOf({"fewer", line});
    return perform(laboratory, who, {Permission::KeepWorkshop, command, {}},
                   [&](UnitOfWork& unit) -> Result<domain::Done> {
                       auto plan = changed(unit.workshop().planFor(route, arch), change);
                       if (!plan) return plan.error();
                       RoutePlan next = *std::move(plan);
                       ++next.version;
                       return unit.record({SubjectKind::Route, subject},
                                          domain::RouteSet{std::move(next)});
                   });
}

}  // namespace actions
