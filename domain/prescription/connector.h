/// What joins the parts: the major connector, the minor connectors and the guide plates.
#pragma once

#include <optional>

#include "domain/base/quantity.h"
#include "domain/teeth/surface.h"
#include "domain/teeth/tooth.h"

namespace domain {

enum class ConnectorKind : std::uint8_t {
    PalatalStrap,
    DoublePalatalStrap,
    Horseshoe,
    PalatalPlate,
    PalatalBar,
    LingualBar,
    LingualPlate,
    SublingualBar,
    CingulumBar,
    DoubleLingualBar,
    LabialBar,
};
template <>
inline constexpr std::array<EnumCode<ConnectorKind>, 11> enumCodes<ConnectorKind>{{
    {ConnectorKind::PalatalStrap, "palatal-strap"},
    {ConnectorKind::DoublePalatalStrap, "double-palatal-strap"},
    {ConnectorKind::Horseshoe, "horseshoe"},
    {ConnectorKind::PalatalPlate, "palatal-plate"},
    {ConnectorKind::PalatalBar, "palatal-bar"},
    {ConnectorKind::LingualBar, "lingual-bar"},
    {ConnectorKind::LingualPlate, "lingual-plate"},
    {ConnectorKind::SublingualBar, "sublingual-bar"},
    {ConnectorKind::CingulumBar, "cingulum-bar"},
    {ConnectorKind::DoubleLingualBar, "double-lingual-bar"},
    {ConnectorKind::LabialBar, "labial-bar"},
}};

constexpr Arch archOf(ConnectorKind kind) noexcept {
    return kind <= ConnectorKind::PalatalBar ? Arch::Upper : Arch::Lower;
}

struct MajorConnector {
    ConnectorKind kind{};
    std::optional<Microns> width{};  ///< of a strap, front to back; of a bar, its height
    std::optional<Microns> gingivalClearance{};  ///< from the gingival margin to its border
    std::optional<Microns> opening{};            ///< of a double strap, front to back
    std::optional<bool> beading{};
    std::optional<bool> relief{};

    friend bool operator==(const MajorConnector&, const MajorConnector&) = default;
};

/// Joins a rest, clasp or plate on its tooth to the major connector.
struct MinorConnector {
    Tooth tooth{11_fdi};
    std::optional<Surface> side{};  ///< the embrasure it runs through, mesial or distal
    friend bool operator==(const MinorConnector&, const MinorConnector&) = default;
};

/// Slides along a prepared guide plane and so fixes the path of insertion.
struct GuidePlate {
    Tooth tooth{11_fdi};
    Surface face{Surface::Distal};  ///< the proximal face it touches
    std::optional<bool> planePrepared{};
    std::optional<Microns> planeHeight{};
    friend bool operator==(const GuidePlate&, const GuidePlate&) = default;
};

}  // namespace domain
