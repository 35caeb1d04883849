/// A route: the stages one kind of order passes, in order.
///
/// Source of the sequence for cast frameworks: the clinic and laboratory phases of Masaryk
/// University's course in removable prosthodontics; the other routes are common practice, no
/// source.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "domain/prescription/prescription.h"
#include "domain/route/stage.h"

namespace domain {

enum class Route : std::uint8_t {
    CastFramework,
    MilledFramework,
    PrintedFramework,
    InterimResin,
    Repair,
    Addition,
    Reline,
    AlteredCast,  ///< goes with another one, after the try-in of the framework
    Remake,       ///< goes with another one, after receipt
};
template <>
inline constexpr std::array<EnumCode<Route>, 9> enumCodes<Route>{{
    {Route::CastFramework, "cast-framework"},
    {Route::MilledFramework, "milled-framework"},
    {Route::PrintedFramework, "printed-framework"},
    {Route::InterimResin, "interim-resin"},
    {Route::Repair, "repair"},
    {Route::Addition, "addition"},
    {Route::Reline, "reline"},
    {Route::AlteredCast, "altered-cast"},
    {Route::Remake, "remake"},
}};

std::span<const Stage> stagesOf(Route route);

/// The stage after which the stages of a route that goes with another are put in; nullopt for one
/// that stands by itself.
std::optional<Stage> goesAfter(Route route);

/// The one that stands by itself; nullopt when the prescription does not say what it is, or how
/// its framework is made.
std::optional<Route> routeFor(const Prescription& prescription);

/// Those that go with it.
std::vector<Route> routesWithIt(const Prescription& prescription);

}  // namespace domain
