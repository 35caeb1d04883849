/// How the jaws meet, and how the laboratory is to know it.
#pragma once

#include <optional>

#include "domain/base/codes.h"

namespace domain {

enum class OcclusalScheme : std::uint8_t {
    AsExisting,
    CanineGuided,
    GroupFunction,
    BilateralBalanced,
};
template <>
inline constexpr std::array<EnumCode<OcclusalScheme>, 4> enumCodes<OcclusalScheme>{{
    {OcclusalScheme::AsExisting, "as-existing"},
    {OcclusalScheme::CanineGuided, "canine-guided"},
    {OcclusalScheme::GroupFunction, "group-function"},
    {OcclusalScheme::BilateralBalanced, "bilateral-balanced"},
}};

enum class JawRelation : std::uint8_t {
    StableStops,  ///< the remaining teeth alone show it: casts go together by hand
    InterocclusalRecord,
    OcclusionRims,
    BiteScan,
};
template <>
inline constexpr std::array<EnumCode<JawRelation>, 4> enumCodes<JawRelation>{{
    {JawRelation::StableStops, "stable-stops"},
    {JawRelation::InterocclusalRecord, "interocclusal-record"},
    {JawRelation::OcclusionRims, "occlusion-rims"},
    {JawRelation::BiteScan, "bite-scan"},
}};

struct Occlusion {
    std::optional<OcclusalScheme> scheme{};
    std::optional<JawRelation> jawRelation{};
    std::optional<bool> opposed{};  ///< whether any replaced tooth has an antagonist
    friend bool operator==(const Occlusion&, const Occlusion&) = default;
};

}  // namespace domain
