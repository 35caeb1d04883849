/// A rest: the part that lies in a prepared seat and carries the load to the tooth.
#pragma once

#include <optional>

#include "domain/base/quantity.h"
#include "domain/teeth/surface.h"
#include "domain/teeth/tooth.h"

namespace domain {

enum class RestKind : std::uint8_t { Occlusal, Cingulum, Incisal };
template <>
inline constexpr std::array<EnumCode<RestKind>, 3> enumCodes<RestKind>{{
    {RestKind::Occlusal, "occlusal"},
    {RestKind::Cingulum, "cingulum"},
    {RestKind::Incisal, "incisal"},
}};

struct Rest {
    Tooth tooth{11_fdi};
    RestKind kind{};
    std::optional<Surface> side{};             ///< mesial or distal; a cingulum rest needs none
    std::optional<bool> seatPrepared{};        ///< nullopt: the prescription does not say
    std::optional<Microns> seatDepth{};        ///< below the marginal ridge
    std::optional<Microns> clearance{};        ///< room to the opposing tooth
    std::optional<Millidegrees> floorAngle{};  ///< between its floor and the minor connector

    friend bool operator==(const Rest&, const Rest&) = default;
};

/// A rest named as indirect retainer: it must also stand among the rests.
struct IndirectRetainer {
    Tooth tooth{11_fdi};
    friend bool operator==(const IndirectRetainer&, const IndirectRetainer&) = default;
};

}  // namespace domain
