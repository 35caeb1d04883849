/// The places in the laboratory where people sign in and work.
#pragma once

#include <map>

#include "apps/actions/keep.h"
#include "domain/workshop/equipment.h"

namespace actions {

/// Enters a station, or says anew what is worked at one. From the first on, nobody signs in at a
/// station that was not entered.
domain::Result<Kept> enterStation(const Laboratory& laboratory, const domain::ThingCode& station,
                                  domain::StationKind kind, const Who& who);
domain::Result<std::map<domain::ThingCode, domain::StationKind>> stations(
    const Laboratory& laboratory);

}  // namespace actions
