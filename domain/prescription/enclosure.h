/// What came with the prescription in the box, and how it was disinfected.
#pragma once

#include <optional>
#include <string>

#include "domain/base/codes.h"
#include "domain/base/quantity.h"

namespace domain {

enum class EnclosureKind : std::uint8_t {
    WorkingCast,
    WorkingImpression,
    WorkingScan,
    OpposingCast,
    OpposingImpression,
    OpposingScan,
    JawRelationRecord,
    PresentDenture,
    Photograph,
};
template <>
inline constexpr std::array<EnumCode<EnclosureKind>, 9> enumCodes<EnclosureKind>{{
    {EnclosureKind::WorkingCast, "working-cast"},
    {EnclosureKind::WorkingImpression, "working-impression"},
    {EnclosureKind::WorkingScan, "working-scan"},
    {EnclosureKind::OpposingCast, "opposing-cast"},
    {EnclosureKind::OpposingImpression, "opposing-impression"},
    {EnclosureKind::OpposingScan, "opposing-scan"},
    {EnclosureKind::JawRelationRecord, "jaw-relation-record"},
    {EnclosureKind::PresentDenture, "present-denture"},
    {EnclosureKind::Photograph, "photograph"},
}};

/// Whether the thing has been in the mouth, or on what has, and so must be disinfected.
constexpr bool isPhysical(EnclosureKind kind) noexcept {
    return kind != EnclosureKind::WorkingScan && kind != EnclosureKind::OpposingScan &&
           kind != EnclosureKind::Photograph;
}

struct Disinfection {
    std::string agent{};  ///< the disinfectant, with its strength
    Minutes contact{};
    friend bool operator==(const Disinfection&, const Disinfection&) = default;
};

struct Enclosure {
    EnclosureKind kind{};
    std::optional<Disinfection> disinfection{};
    std::optional<bool> identified{};     ///< whether the mark on it is that of this prescription
    std::optional<std::string> sha256{};  ///< of a scan file: 64 lower-case hexadecimal digits
    friend bool operator==(const Enclosure&, const Enclosure&) = default;
};

}  // namespace domain
