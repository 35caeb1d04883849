/// What the materials of frameworks and clasp arms can bear: one row each, a source per value.
#pragma once

#include <span>
#include <string_view>

#include "domain/base/range.h"
#include "domain/prescription/clasp.h"
#include "domain/prescription/material.h"

namespace domain {

/// A property as a range, with where it comes from.
struct Property {
    Range range{};
    std::string_view source{};
};

struct Material {
    std::string_view name{};
    Property modulus{};   ///< GPa
    Property strength{};  ///< MPa: 0.2 % proof strength; of a polymer, flexural strength
    Property density{};   ///< g/cm^3
};

std::span<const Material> materials();

/// The framework's material as it is made; a printed alloy is not a cast one.
const Material& materialOf(FrameworkMaterial material, FrameworkMaking making) noexcept;
const Material& materialOf(ArmMaterial material) noexcept;

/// ISO 22674: an alloy may be called nickel free only below this share.
inline constexpr Share kNickelFree = 1000_ppm;
/// ISO 22674: the most of beryllium or of cadmium an alloy may hold.
inline constexpr Share kMostHazardous = 200_ppm;

/// The types of ISO 22674 by mechanical strength.
enum class AlloyType : std::uint8_t { Type0, Type1, Type2, Type3, Type4, Type5 };
template <>
inline constexpr std::array<EnumCode<AlloyType>, 6> enumCodes<AlloyType>{{
    {AlloyType::Type0, "type-0"},
    {AlloyType::Type1, "type-1"},
    {AlloyType::Type2, "type-2"},
    {AlloyType::Type3, "type-3"},
    {AlloyType::Type4, "type-4"},
    {AlloyType::Type5, "type-5"},
}};

/// What a type asks at least. Sources: proof strengths from a published table of ISO 22674; the
/// line of type 5 from Advances in Materials Science and Engineering 2018, article 8213023, table
/// 2; elongations of types 1 to 4 from memory.
struct TypeLimits {
    Megapascals proofStrength{};
    Share elongation{};
    Stiffness modulus{};  ///< only type 5 asks one
};
TypeLimits limitsOf(AlloyType type) noexcept;

}  // namespace domain
