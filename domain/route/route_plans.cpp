#include <algorithm>

#include "domain/route/route_plan.h"

namespace domain {
namespace {

/// A line of a checklist; some belong to one arch alone.
struct Item {
    std::string_view words;
    std::optional<Arch> arch{};
};

/// A stage as shipped, wherever it occurs.
struct Shipped {
    Stage stage{};
    Skill skill{};
    StationKind station{};
    Minutes usual{};
    std::initializer_list<Item> checklist{};
    std::initializer_list<Demand> demands{};
    std::initializer_list<Stage> fallBack{};
};

const Shipped kShipped[] = {
    {Stage::Receipt,
     Skill::Reception,
     StationKind::Reception,
     20_min,
     {{"what came agrees with the prescription"},
      {"casts and impressions marked with the order number"}},
     {Demand::Disinfection},
     {}},
    {Stage::Survey,
     Skill::Surveying,
     StationKind::SurveyBench,
     40_min,
     {{"height of contour marked on every abutment"},
      {"guide planes and rest seats found as prescribed"},
      {"design drawn on the cast"}},
     {Demand::Undercuts, Demand::TripodMarks, Demand::Surveyor},
     {Stage::Receipt}},
    {Stage::BlockOut,
     Skill::Plaster,
     StationKind::PlasterBench,
     45_min,
     {{"undercuts blocked out along the path of insertion"},
      {"ledges under the retentive arms"},
      {"relief over the saddles"},
      {"beading along the edge of the connector", Arch::Upper},
      {"relief under the lingual connector", Arch::Lower}},
     {},
     {Stage::Receipt, Stage::Survey}},
    {Stage::Duplication,
     Skill::Plaster,
     StationKind::PlasterBench,
     60_min,
     {{"refractory cast without bubbles on the design"}, {"master cast unhurt"}},
     {},
     {Stage::Survey, Stage::BlockOut}},
    {Stage::WaxUp,
     Skill::Waxing,
     StationKind::WaxBench,
     120_min,
     {{"every part of the prescription is there"}, {"sprues set at the thickest parts"}},
     {},
     {Stage::Survey, Stage::BlockOut, Stage::Duplication}},
    {Stage::Investing,
     Skill::Casting,
     StationKind::CastingRoom,
     300_min,
     {{"powder and liquid measured"}, {"burn-out schedule kept"}},
     {Demand::InvestmentLot, Demand::Furnace},
     {Stage::Duplication, Stage::WaxUp}},
    {Stage::Casting,
     Skill::Casting,
     StationKind::CastingRoom,
     60_min,
     {{"casting complete, no pores or cracks seen"}},
     {Demand::AlloyLot, Demand::NewMetal, Demand::CastMass, Demand::Caster},
     {Stage::Duplication, Stage::WaxUp, Stage::Investing}},
    {Stage::DigitalDesign,
     Skill::DigitalDesign,
     StationKind::DesignDesk,
     90_min,
     {{"every part of the prescription is there"}, {"thicknesses kept"}},
     {},
     {Stage::Survey}},
    {Stage::Milling,
     Skill::DigitalDesign,
     StationKind::MachineRoom,
     180_min,
     {{"framework complete, no cracks seen"}},
     {Demand::BlankLot, Demand::Mill},
     {Stage::DigitalDesign}},
    {Stage::Printing,
     Skill::DigitalDesign,
     StationKind::MachineRoom,
     480_min,
     {{"framework complete, no cracks seen"}, {"heat treated on its plate"}},
     {Demand::PowderLot, Demand::Printer},
     {Stage::DigitalDesign}},
    {Stage::Finishing,
     Skill::MetalWork,
     StationKind::FinishingBench,
     120_min,
     {{"rests fully seated"},
      {"no rocking on the cast"},
      {"gap at the edge below 0.5 mm"},
      {"no sharp edges"}},
     {},
     {Stage::Survey, Stage::Duplication, Stage::WaxUp, Stage::Casting, Stage::DigitalDesign,
      Stage::Milling, Stage::Printing}},
    {Stage::FrameworkTryIn,
     Skill::Reception,
     StationKind::AtPractice,
     2880_min,
     {},
     {Demand::Disinfection},
     {Stage::Survey, Stage::WaxUp, Stage::DigitalDesign, Stage::Finishing}},
    {Stage::ToothSetUp,
     Skill::ToothSetting,
     StationKind::SetUpBench,
     90_min,
     {{"midline and plane of occlusion as prescribed"}, {"contacts as prescribed"}},
     {Demand::ToothLots, Demand::MouldAndShade},
     {Stage::Receipt, Stage::Finishing}},
    {Stage::ToothTryIn,
     Skill::Reception,
     StationKind::AtPractice,
     2880_min,
     {},
     {Demand::Disinfection},
     {Stage::Survey, Stage::Finishing, Stage::ToothSetUp}},
    {Stage::Joining,
     Skill::ResinWork,
     StationKind::ResinRoom,
     45_min,
     {{"parts joined on the cast without strain"}},
     {},
     {Stage::Receipt, Stage::ToothSetUp}},
    {Stage::Processing,
     Skill::ResinWork,
     StationKind::ResinRoom,
     600_min,
     {{"separating medium off the teeth and retention"}, {"flask closed metal to metal"}},
     {Demand::ResinLot, Demand::CureLog, Demand::CuringBath},
     {Stage::Receipt, Stage::ToothSetUp, Stage::Joining}},
    {Stage::Polishing,
     Skill::ResinWork,
     StationKind::FinishingBench,
     60_min,
     {{"occlusion ground in after remounting"}, {"no pores, no sharp edges"}},
     {},
     {Stage::ToothSetUp, Stage::Joining, Stage::Processing}},
    {Stage::Inspection,
     Skill::Inspection,
     StationKind::InspectionDesk,
     30_min,
     {{"agrees with the prescription, part by part"},
      {"seats fully on the cast, no rocking"},
      {"no sharp edges, no pores, surface polished"},
      {"clasp tips in their undercuts"}},
     {Demand::OtherPerson},
     {Stage::Survey, Stage::WaxUp, Stage::Finishing, Stage::ToothSetUp, Stage::Joining,
      Stage::Processing, Stage::Polishing}},
    {Stage::Delivery,
     Skill::Reception,
     StationKind::Reception,
     20_min,
     {{"what came with the order goes back with it"}},
     {Demand::Disinfection, Demand::LegalFields, Demand::Statement},
     {Stage::Polishing, Stage::Inspection}},
    {Stage::SaddleImpression,
     Skill::Reception,
     StationKind::AtPractice,
     2880_min,
     {},
     {Demand::Disinfection},
     {Stage::Finishing}},
    {Stage::AlteredCast,
     Skill::Plaster,
     StationKind::PlasterBench,
     90_min,
     {{"free ends cut away and grooved"}, {"framework seated before pouring"}},
     {},
     {Stage::Finishing}},
    {Stage::FaultReview,
     Skill::Inspection,
     StationKind::InspectionDesk,
     20_min,
     {{"the first one was looked at"},
      {"the stage at fault is known and will be worked otherwise"}},
     {},
     {Stage::Receipt}},
};

StagePlan shipped(Stage stage, Arch arch) {
    const auto row = std::ranges::find(kShipped, stage, &Shipped::stage);
    StagePlan plan{.stage = stage,
                   .skill = row->skill,
                   .station = row->station,
                   .usual = row->usual,
                   .checklist = {},
                   .demands = row->demands,
                   .fallBack = row->fallBack};
    for (const Item& item : row->checklist)
        if (!item.arch || item.arch == arch) plan.checklist.emplace_back(item.words);
    return plan;
}

void addFlaws(const StagePlan& step, std::vector<std::string>& flaws) {
    const std::string name{codeOf(step.stage)};
    for (const Demand demand : rowOf(step.stage).stays)
        if (std::ranges::count(step.demands, demand) == 0)
            flaws.push_back(name + ": its gate must keep asking for " + wordsOf(demand));
    if (step.usual.count() <= 0) flaws.push_back(name + ": usual minutes above 0 were expected");
    for (const std::string& item : step.checklist)
        if (item.empty() || std::ranges::count(step.checklist, item) > 1)
            flaws.push_back(name + ": each line of a checklist needs words of its own");
}

}  // namespace

const StagePlan* RoutePlan::find(Stage stage) const {
    const auto step = std::ranges::find(stages, stage, &StagePlan::stage);
    return step == stages.end() ? nullptr : &*step;
}

RoutePlan keepEarlier(RoutePlan plan) {
    for (auto step = plan.stages.begin(); step != plan.stages.end(); ++step)
        std::erase_if(step->fallBack, [&](Stage stage) {
            return std::ranges::none_of(plan.stages.begin(), step, [&](const StagePlan& earlier) {
                return earlier.stage == stage;
            });
        });
    return plan;
}

RoutePlan shippedPlan(Route route, Arch arch) {
    RoutePlan plan{.route = route, .arch = arch};
    for (const Stage stage : stagesOf(route)) plan.stages.push_back(shipped(stage, arch));
    return goesAfter(route) ? plan : keepEarlier(std::move(plan));
}

RoutePlan joined(RoutePlan plan, const std::vector<RoutePlan>& withIt) {
    for (const RoutePlan& extra : withIt) {
        const auto place =
            std::ranges::find(plan.stages, *goesAfter(extra.route), &StagePlan::stage);
        if (place == plan.stages.end()) continue;
        // A stage the laboratory put into the route itself stays where it is.
        std::vector<StagePlan> added;
        std::ranges::copy_if(extra.stages, std::back_inserter(added), [&](const StagePlan& step) {
            return plan.find(step.stage) == nullptr;
        });
        plan.stages.insert(place + 1, added.begin(), added.end());
    }
    return keepEarlier(std::move(plan));
}

std::vector<std::string> flawsOf(const RoutePlan& plan) {
    std::vector<std::string> flaws;
    for (const StagePlan& step : plan.stages) {
        if (std::ranges::count(plan.stages, step.stage, &StagePlan::stage) > 1)
            flaws.push_back(std::string{codeOf(step.stage)} + ": it is there more than once");
        addFlaws(step, flaws);
    }
    if (plan.stages.empty()) flaws.emplace_back("a route without stages");
    if (goesAfter(plan.route) || plan.stages.empty()) return flaws;
    const std::size_t count = plan.stages.size();
    if (count < 3 || plan.stages.front().stage != Stage::Receipt ||
        plan.stages[count - 2].stage != Stage::Inspection ||
        plan.stages.back().stage != Stage::Delivery)
        flaws.emplace_back("a route begins with receipt and ends in inspection and delivery");
    if (keepEarlier(plan) != plan)
        flaws.emplace_back("a stage may go back only to one that lies before it");
    return flaws;
}

}  // namespace domain
