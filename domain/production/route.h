/// A route: the stages one kind of order passes, in order.
///
/// Source of the sequence for cast frameworks: the clinic and laboratory phases of Masaryk
/// University's course in removable prosthodontics; the other routes are common practice, no
/// source.
#pragma once

#include <optional>
#include <span>

#include "domain/prescription/prescription.h"
#include "domain/production/stage.h"

namespace domain {

enum class Route : std::uint8_t {
    CastFramework,
    MilledFramework,
    PrintedFramework,
    InterimResin,
    Repair,
    Addition,
    Reline,
};
template <>
inline constexpr std::array<EnumCode<Route>, 7> enumCodes<Route>{{
    {Route::CastFramework, "cast-framework"},
    {Route::MilledFramework, "milled-framework"},
    {Route::PrintedFramework, "printed-framework"},
    {Route::InterimResin, "interim-resin"},
    {Route::Repair, "repair"},
    {Route::Addition, "addition"},
    {Route::Reline, "reline"},
}};

std::span<const Stage> stagesOf(Route route);

/// nullopt when the prescription does not say what it is, or how its framework is made.
std::optional<Route> routeFor(const Prescription& prescription);

}  // namespace domain
