/// A clasp: one retentive arm into a measured undercut, and what opposes it across the tooth.
#pragma once

#include <optional>

#include "domain/base/quantity.h"
#include "domain/teeth/surface.h"
#include "domain/teeth/tooth.h"

namespace domain {

enum class ClaspKind : std::uint8_t {
    Circumferential,
    ReverseCircumferential,
    Ring,
    Embrasure,
    BackAction,
    Multiple,
    HalfAndHalf,
    Combination,
    TBar,
    HalfTBar,
    YBar,
    IBar,
    Rpi,  ///< mesial rest, distal proximal plate, I-bar
    Rpa,  ///< mesial rest, distal proximal plate, circumferential arm
};
template <>
inline constexpr std::array<EnumCode<ClaspKind>, 14> enumCodes<ClaspKind>{{
    {ClaspKind::Circumferential, "circumferential"},
    {ClaspKind::ReverseCircumferential, "reverse-circumferential"},
    {ClaspKind::Ring, "ring"},
    {ClaspKind::Embrasure, "embrasure"},
    {ClaspKind::BackAction, "back-action"},
    {ClaspKind::Multiple, "multiple"},
    {ClaspKind::HalfAndHalf, "half-and-half"},
    {ClaspKind::Combination, "combination"},
    {ClaspKind::TBar, "t-bar"},
    {ClaspKind::HalfTBar, "half-t-bar"},
    {ClaspKind::YBar, "y-bar"},
    {ClaspKind::IBar, "i-bar"},
    {ClaspKind::Rpi, "rpi"},
    {ClaspKind::Rpa, "rpa"},
}};

/// Whether the arm approaches its undercut from the gingiva (a bar clasp) rather than from above.
constexpr bool isBar(ClaspKind kind) noexcept {
    return kind == ClaspKind::TBar || kind == ClaspKind::HalfTBar || kind == ClaspKind::YBar ||
           kind == ClaspKind::IBar || kind == ClaspKind::Rpi;
}

/// What the retentive arm is made of, which decides how far it may spring.
enum class ArmMaterial : std::uint8_t {
    CastCobaltChromium,
    CastNickelChromium,
    CastGold,
    CastTitanium,
    WroughtWire,
    Polymer,
};
template <>
inline constexpr std::array<EnumCode<ArmMaterial>, 6> enumCodes<ArmMaterial>{{
    {ArmMaterial::CastCobaltChromium, "cast-cobalt-chromium"},
    {ArmMaterial::CastNickelChromium, "cast-nickel-chromium"},
    {ArmMaterial::CastGold, "cast-gold"},
    {ArmMaterial::CastTitanium, "cast-titanium"},
    {ArmMaterial::WroughtWire, "wrought-wire"},
    {ArmMaterial::Polymer, "polymer"},
}};

enum class UndercutPlace : std::uint8_t {
    MesioBuccal,
    MidBuccal,
    DistoBuccal,
    MesioLingual,
    MidLingual,
    DistoLingual,
};
template <>
inline constexpr std::array<EnumCode<UndercutPlace>, 6> enumCodes<UndercutPlace>{{
    {UndercutPlace::MesioBuccal, "mesio-buccal"},
    {UndercutPlace::MidBuccal, "mid-buccal"},
    {UndercutPlace::DistoBuccal, "disto-buccal"},
    {UndercutPlace::MesioLingual, "mesio-lingual"},
    {UndercutPlace::MidLingual, "mid-lingual"},
    {UndercutPlace::DistoLingual, "disto-lingual"},
}};

constexpr Surface faceOf(UndercutPlace place) noexcept {
    return place <= UndercutPlace::DistoBuccal ? Surface::Buccal : Surface::Lingual;
}

/// A place below the height of contour and how deep it is, measured from the survey line.
struct Undercut {
    UndercutPlace place{};
    std::optional<Microns> depth{};
    friend bool operator==(const Undercut&, const Undercut&) = default;
};

enum class ReciprocalKind : std::uint8_t { Arm, Plate, GuidePlate, MinorConnector };
template <>
inline constexpr std::array<EnumCode<ReciprocalKind>, 4> enumCodes<ReciprocalKind>{{
    {ReciprocalKind::Arm, "arm"},
    {ReciprocalKind::Plate, "plate"},
    {ReciprocalKind::GuidePlate, "guide-plate"},
    {ReciprocalKind::MinorConnector, "minor-connector"},
}};

/// The rigid part that opposes the retentive arm.
struct Reciprocation {
    ReciprocalKind kind{};
    Surface face{Surface::Lingual};
    friend bool operator==(const Reciprocation&, const Reciprocation&) = default;
};

enum class ArmSection : std::uint8_t {
    HalfRound,  ///< flat against the tooth, as a cast arm
    Round,      ///< as a wire
};
template <>
inline constexpr std::array<EnumCode<ArmSection>, 2> enumCodes<ArmSection>{{
    {ArmSection::HalfRound, "half-round"},
    {ArmSection::Round, "round"},
}};

/// The retentive arm as a spring, as far as the prescription says; the rest is derived from the
/// crown (domain/design/clasp_mechanics).
struct ClaspArm {
    std::optional<ArmSection> section{};
    std::optional<Microns> width{};   ///< at its root: of the flat, or of the wire
    std::optional<Share> tip{};       ///< width at the tip as a share of that at the root
    std::optional<Microns> length{};  ///< from where it may flex to the tip
    friend bool operator==(const ClaspArm&, const ClaspArm&) = default;
};

struct Clasp {
    Tooth tooth{11_fdi};
    ClaspKind kind{};
    std::optional<Surface> retentiveArm{};  ///< the face it runs on, buccal or lingual
    std::optional<Undercut> undercut{};     ///< what the tip engages
    std::optional<ArmMaterial> material{};
    std::optional<Reciprocation> reciprocation{};
    ClaspArm arm{};

    friend bool operator==(const Clasp&, const Clasp&) = default;
};

}  // namespace domain
