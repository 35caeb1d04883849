/// The laboratory's stations, equipment, sites of others, and routes.
#pragma once

#include <map>

#include "apps/actions/laboratory.h"
#include "apps/actions/outcome.h"
#include "apps/actions/who.h"
#include "domain/workshop/workshop.h"

namespace actions {

domain::Result<domain::Workshop> workshop(const Laboratory& laboratory);

domain::Result<Kept> enterEquipment(const Laboratory& laboratory, const domain::ThingCode& code,
                                    const domain::Equipment& equipment, const Who& who);
/// Calibrated today; it holds up to a day.
domain::Result<Kept> calibrate(const Laboratory& laboratory, const domain::ThingCode& code,
                               domain::Date due, const Who& who);
domain::Result<Kept> enterSite(const Laboratory& laboratory, const domain::ThingCode& code,
                               const domain::Site& site, const Who& who);

/// Enters a station, or says anew what is worked at one. From the first on, nobody signs in at a
/// station that was not entered.
domain::Result<Kept> enterStation(const Laboratory& laboratory, const domain::ThingCode& station,
                                  domain::StationKind kind, const Who& who);
domain::Result<std::map<domain::ThingCode, domain::StationKind>> stations(
    const Laboratory& laboratory);

/// A change to one stage of a route; what is absent stays as it is.
struct StageChange {
    domain::Stage stage{};
    std::optional<domain::Minutes> usual{};
    std::optional<domain::StationKind> station{};
    std::vector<std::string> more{};       ///< lines for the checklist
    std::vector<std::string> fewer{};      ///< lines to take out
    bool out{};                            ///< the stage is left out of the route
    std::optional<domain::Stage> after{};  ///< moves it, or puts it in as shipped
};
/// A new version of a route; orders accepted before keep theirs. Refused while it has a flaw.
domain::Result<Kept> changeRoute(const Laboratory& laboratory, domain::Route route,
                                 domain::Arch arch, const StageChange& change, const Who& who);

}  // namespace actions
