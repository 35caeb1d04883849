#include "domain/route/route.h"

namespace domain {
namespace {

constexpr Stage kCastFramework[] = {Stage::Receipt,     Stage::Survey,     Stage::BlockOut,
                                    Stage::Duplication, Stage::WaxUp,      Stage::Investing,
                                    Stage::Casting,     Stage::Finishing,  Stage::FrameworkTryIn,
                                    Stage::ToothSetUp,  Stage::ToothTryIn, Stage::Processing,
                                    Stage::Polishing,   Stage::Inspection, Stage::Delivery};
constexpr Stage kMilledFramework[] = {Stage::Receipt,    Stage::Survey,     Stage::DigitalDesign,
                                      Stage::Milling,    Stage::Finishing,  Stage::FrameworkTryIn,
                                      Stage::ToothSetUp, Stage::ToothTryIn, Stage::Processing,
                                      Stage::Polishing,  Stage::Inspection, Stage::Delivery};
constexpr Stage kPrintedFramework[] = {Stage::Receipt,    Stage::Survey,     Stage::DigitalDesign,
                                       Stage::Printing,   Stage::Finishing,  Stage::FrameworkTryIn,
                                       Stage::ToothSetUp, Stage::ToothTryIn, Stage::Processing,
                                       Stage::Polishing,  Stage::Inspection, Stage::Delivery};
constexpr Stage kInterimResin[] = {Stage::Receipt,    Stage::ToothSetUp, Stage::ToothTryIn,
                                   Stage::Processing, Stage::Polishing,  Stage::Inspection,
                                   Stage::Delivery};
constexpr Stage kRepair[] = {Stage::Receipt,   Stage::Joining,    Stage::Processing,
                             Stage::Polishing, Stage::Inspection, Stage::Delivery};
constexpr Stage kAddition[] = {Stage::Receipt,    Stage::ToothSetUp, Stage::Joining,
                               Stage::Processing, Stage::Polishing,  Stage::Inspection,
                               Stage::Delivery};
constexpr Stage kReline[] = {Stage::Receipt, Stage::Processing, Stage::Polishing, Stage::Inspection,
                             Stage::Delivery};

constexpr Stage kAlteredCast[] = {Stage::SaddleImpression, Stage::AlteredCast};
constexpr Stage kRemake[] = {Stage::FaultReview};

Route routeFor(FrameworkMaking making) {
    switch (making) {
        case FrameworkMaking::Cast:
            return Route::CastFramework;
        case FrameworkMaking::Milled:
            return Route::MilledFramework;
        case FrameworkMaking::Printed:
            return Route::PrintedFramework;
    }
    return Route::CastFramework;
}

}  // namespace

std::span<const Stage> stagesOf(Route route) {
    switch (route) {
        case Route::CastFramework:
            return kCastFramework;
        case Route::MilledFramework:
            return kMilledFramework;
        case Route::PrintedFramework:
            return kPrintedFramework;
        case Route::InterimResin:
            return kInterimResin;
        case Route::Repair:
            return kRepair;
        case Route::Addition:
            return kAddition;
        case Route::Reline:
            return kReline;
        case Route::AlteredCast:
            return kAlteredCast;
        case Route::Remake:
            return kRemake;
    }
    return {};
}

std::optional<Stage> goesAfter(Route route) {
    if (route == Route::AlteredCast) return Stage::FrameworkTryIn;
    if (route == Route::Remake) return Stage::Receipt;
    return {};
}

std::vector<Route> routesWithIt(const Prescription& prescription) {
    std::vector<Route> routes;
    if (prescription.remake) routes.push_back(Route::Remake);
    if (prescription.alteredCast.value_or(false)) routes.push_back(Route::AlteredCast);
    return routes;
}

std::optional<Route> routeFor(const Prescription& prescription) {
    if (!prescription.appliance) return {};
    switch (*prescription.appliance) {
        case Appliance::MetalFramework:
            if (!prescription.framework.making) return {};
            return routeFor(*prescription.framework.making);
        case Appliance::InterimResin:
            return Route::InterimResin;
        case Appliance::Repair:
            return Route::Repair;
        case Appliance::Addition:
            return Route::Addition;
        case Appliance::Reline:
            return Route::Reline;
    }
    return {};
}

}  // namespace domain
