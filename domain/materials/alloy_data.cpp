#include "domain/materials/alloy_data.h"

namespace domain {
namespace {

constexpr std::string_view kFromMemory = "from memory";
constexpr std::string_view kClaspTable =
    "Materials 2021;14:408, table 2 (220, 110, 91, 3.74 and 3.15 GPa)";
constexpr std::string_view kSintered =
    "Advances in Materials Science and Engineering 2018, article 8213023, table 2: laser-sintered "
    "as built to heat-treated, all orientations";

enum Row : std::uint8_t {
    CastCobaltChromium,
    PrintedCobaltChromium,
    NickelChromium,
    Gold,
    Titanium,
    TitaniumAlloy,
    Wire,
    Peek,
    Acetal,
};

constexpr Material kMaterials[] = {
    {.name = "cobalt-chromium, cast or milled",
     .modulus = {{210, 220}, "EN 2.4778 (210 GPa); Materials 2021;14:408, table 2 (220 GPa)"},
     .strength = {{500, 662}, "least of ISO 22674 type 5; data sheet of a generic alloy (662 MPa)"},
     .density = {{8.4, 8.7}, "data sheet of a generic alloy"}},
    {.name = "cobalt-chromium, printed",
     .modulus = {{98, 216}, kSintered},
     .strength = {{651, 1002}, kSintered},
     .density = {{8.3, 8.6}, "data sheets of laser-sintered powders"}},
    {.name = "nickel-chromium",
     .modulus = {{180, 210}, kFromMemory},
     .strength = {{360, 690}, kFromMemory},
     .density = {{8.0, 8.4}, kFromMemory}},
    {.name = "gold type IV",
     .modulus = {{90, 100}, "91 GPa: Materials 2021;14:408, table 2; the range from memory"},
     .strength = {{350, 490}, kFromMemory},
     .density = {{15.0, 15.5}, kFromMemory}},
    {.name = "titanium, grade 4",
     .modulus = {{103, 110}, "110 GPa: Materials 2021;14:408, table 2; the range from memory"},
     .strength = {{480, 550}, kFromMemory},
     .density = {{4.51, 4.51}, kFromMemory}},
    {.name = "titanium alloy",
     .modulus = {{110, 114}, kFromMemory},
     .strength = {{795, 875}, kFromMemory},
     .density = {{4.43, 4.43}, kFromMemory}},
    {.name = "wrought wire, stainless or cobalt-chromium",
     .modulus = {{180, 220}, kFromMemory},
     .strength = {{900, 1500}, kFromMemory},
     .density = {{7.9, 8.4}, kFromMemory}},
    {.name = "polyetheretherketone",
     .modulus = {{3.6, 4.0}, "3.74 GPa: Materials 2021;14:408, table 2; the range from memory"},
     .strength = {{165, 170}, kFromMemory},
     .density = {{1.30, 1.32}, kFromMemory}},
    {.name = "acetal",
     .modulus = {{2.9, 3.2}, kClaspTable},
     .strength = {{60, 70}, kFromMemory},
     .density = {{1.41, 1.41}, kFromMemory}},
};

}  // namespace

std::span<const Material> materials() { return kMaterials; }

const Material& materialOf(FrameworkMaterial material, FrameworkMaking making) noexcept {
    switch (material) {
        case FrameworkMaterial::CobaltChromium:
            return kMaterials[making == FrameworkMaking::Printed ? PrintedCobaltChromium
                                                                 : CastCobaltChromium];
        case FrameworkMaterial::NickelChromium:
            return kMaterials[NickelChromium];
        case FrameworkMaterial::GoldTypeIv:
            return kMaterials[Gold];
        case FrameworkMaterial::Titanium:
            return kMaterials[Titanium];
        case FrameworkMaterial::TitaniumAlloy:
            return kMaterials[TitaniumAlloy];
        case FrameworkMaterial::Polyetheretherketone:
            return kMaterials[Peek];
        case FrameworkMaterial::Acetal:
            return kMaterials[Acetal];
    }
    return kMaterials[CastCobaltChromium];
}

const Material& materialOf(ArmMaterial material) noexcept {
    switch (material) {
        case ArmMaterial::CastCobaltChromium:
            return kMaterials[CastCobaltChromium];
        case ArmMaterial::CastNickelChromium:
            return kMaterials[NickelChromium];
        case ArmMaterial::CastGold:
            return kMaterials[Gold];
        case ArmMaterial::CastTitanium:
            return kMaterials[Titanium];
        case ArmMaterial::WroughtWire:
            return kMaterials[Wire];
        case ArmMaterial::Polymer:
            return kMaterials[Acetal];
    }
    return kMaterials[CastCobaltChromium];
}

TypeLimits limitsOf(AlloyType type) noexcept {
    switch (type) {
        case AlloyType::Type0:
            return {};
        case AlloyType::Type1:
            return {80_MPa, 180'000_ppm, {}};
        case AlloyType::Type2:
            return {180_MPa, 100'000_ppm, {}};
        case AlloyType::Type3:
            return {270_MPa, 50'000_ppm, {}};
        case AlloyType::Type4:
            return {360_MPa, 20'000_ppm, {}};
        case AlloyType::Type5:
            return {500_MPa, 20'000_ppm, 150_GPa};
    }
    return {};
}

}  // namespace domain
