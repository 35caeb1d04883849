/// Of what it is made: the framework and its making, the base resin, the artificial teeth.
#pragma once

#include <optional>
#include <string>

#include "domain/base/codes.h"
#include "domain/base/quantity.h"

namespace domain {

enum class FrameworkMaterial : std::uint8_t {
    CobaltChromium,
    NickelChromium,
    GoldTypeIv,
    Titanium,
    TitaniumAlloy,
    Polyetheretherketone,
    Acetal,
};
template <>
inline constexpr std::array<EnumCode<FrameworkMaterial>, 7> enumCodes<FrameworkMaterial>{{
    {FrameworkMaterial::CobaltChromium, "cobalt-chromium"},
    {FrameworkMaterial::NickelChromium, "nickel-chromium"},
    {FrameworkMaterial::GoldTypeIv, "gold-type-iv"},
    {FrameworkMaterial::Titanium, "titanium"},
    {FrameworkMaterial::TitaniumAlloy, "titanium-alloy"},
    {FrameworkMaterial::Polyetheretherketone, "polyetheretherketone"},
    {FrameworkMaterial::Acetal, "acetal"},
}};

/// "Co-Cr", as the bench says it.
constexpr std::string_view shortName(FrameworkMaterial material) noexcept {
    switch (material) {
        case FrameworkMaterial::CobaltChromium:
            return "Co-Cr";
        case FrameworkMaterial::NickelChromium:
            return "Ni-Cr";
        case FrameworkMaterial::GoldTypeIv:
            return "gold type IV";
        case FrameworkMaterial::Titanium:
            return "Ti";
        case FrameworkMaterial::TitaniumAlloy:
            return "Ti alloy";
        case FrameworkMaterial::Polyetheretherketone:
            return "PEEK";
        case FrameworkMaterial::Acetal:
            return "POM";
    }
    return {};
}

enum class FrameworkMaking : std::uint8_t { Cast, Milled, Printed };
template <>
inline constexpr std::array<EnumCode<FrameworkMaking>, 3> enumCodes<FrameworkMaking>{{
    {FrameworkMaking::Cast, "cast"},
    {FrameworkMaking::Milled, "milled"},
    {FrameworkMaking::Printed, "printed"},
}};

struct Framework {
    std::optional<FrameworkMaterial> material{};
    std::optional<FrameworkMaking> making{};
    std::optional<Stiffness> modulus{};          ///< as its maker declares it, by ISO 22674
    std::optional<Megapascals> proofStrength{};  ///< 0.2 % proof strength, likewise
    std::optional<Share> elongation{};           ///< after fracture, likewise
    std::optional<Share> nickel{};     ///< nickel in the alloy; below 0.1 % counts as nickel free
    std::optional<Share> beryllium{};  ///< ISO 22674 sets a limit
    std::optional<Share> cadmium{};    ///< ISO 22674 sets a limit
    friend bool operator==(const Framework&, const Framework&) = default;
};

enum class BaseResin : std::uint8_t {
    HeatCured,
    SelfCured,
    Thermoplastic,
    LightCured,
    MicrowaveCured,
};
/// The five types of ISO 20795-1.
template <>
inline constexpr std::array<EnumCode<BaseResin>, 5> enumCodes<BaseResin>{{
    {BaseResin::HeatCured, "heat-cured"},
    {BaseResin::SelfCured, "self-cured"},
    {BaseResin::Thermoplastic, "thermoplastic"},
    {BaseResin::LightCured, "light-cured"},
    {BaseResin::MicrowaveCured, "microwave-cured"},
}};

struct Base {
    std::optional<BaseResin> resin{};
    std::optional<bool> methacrylateFree{};
    std::optional<std::string> colour{};  ///< of the gingival part
    friend bool operator==(const Base&, const Base&) = default;
};

enum class ToothMaterial : std::uint8_t { Polymer, Ceramic };
template <>
inline constexpr std::array<EnumCode<ToothMaterial>, 2> enumCodes<ToothMaterial>{{
    {ToothMaterial::Polymer, "polymer"},
    {ToothMaterial::Ceramic, "ceramic"},
}};

struct ArtificialTeeth {
    std::optional<ToothMaterial> material{};
    std::optional<std::string> mould{};  ///< a mould, or "match neighbours"
    friend bool operator==(const ArtificialTeeth&, const ArtificialTeeth&) = default;
};

}  // namespace domain
