/// The laboratory the benchmarks work in: eight people, stations, equipment, some hundred lots and
/// a route of its own, entered through the actions. Everything in it is invented.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "apps/actions/laboratory.h"
#include "apps/actions/who.h"
#include "domain/workshop/workshop.h"

namespace bench {

inline constexpr std::string_view kManager = "MK";
inline constexpr std::string_view kInspector = "IN";
/// Who work at the benches, besides a second manager and a second inspector.
inline constexpr std::string_view kTechnicians[] = {"JT", "AB", "CD", "EF"};
/// A lot that every device with a base takes of.
inline constexpr std::string_view kPooledLot = "pooled-liquid";
/// Lots of each kind; they are used up one after the other.
inline constexpr int kLotsOfAKind = 40;

inline constexpr const char* kLaboratoryName = "Westhaven Prosthetic Workshop";
inline constexpr const char* kLaboratoryAddress = "1 Tide Street, Westhaven";

domain::ThingCode lotCode(domain::LotKind kind, int count);
domain::ThingCode stationCode(domain::StationKind kind);

/// Enters all of it into records that hold nothing yet.
domain::Result<domain::Done> furnish(const actions::Laboratory& laboratory);
/// Signs in; opened with storage::HashCost::Light.
domain::Result<actions::Who> signedIn(const actions::Laboratory& laboratory,
                                      std::string_view person);

}  // namespace bench
