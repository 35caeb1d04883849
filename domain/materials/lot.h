/// A lot of material: what its maker says about it, what is left of it, and whom it does not suit.
#pragma once

#include <optional>
#include <string>

#include "domain/base/date.h"
#include "domain/materials/alloy_data.h"
#include "domain/prescription/prescription.h"

namespace domain {

enum class LotKind : std::uint8_t {
    Alloy,
    MillingBlank,
    MetalPowder,
    Investment,
    Teeth,
    ResinPowder,
    ResinLiquid,
    Wire,
};
template <>
inline constexpr std::array<EnumCode<LotKind>, 8> enumCodes<LotKind>{{
    {LotKind::Alloy, "alloy"},
    {LotKind::MillingBlank, "milling-blank"},
    {LotKind::MetalPowder, "metal-powder"},
    {LotKind::Investment, "investment"},
    {LotKind::Teeth, "teeth"},
    {LotKind::ResinPowder, "resin-powder"},
    {LotKind::ResinLiquid, "resin-liquid"},
    {LotKind::Wire, "wire"},
}};

/// Whether it becomes part of a framework, so that its composition must be known.
constexpr bool isFrameworkMetal(LotKind kind) noexcept {
    return kind == LotKind::Alloy || kind == LotKind::MetalPowder || kind == LotKind::MillingBlank;
}

/// An amount of a lot: milligrams, or pieces of teeth.
std::string amountText(LotKind kind, std::int64_t amount);

/// What the maker certifies, by ISO 22674 for metals and ISO 20795-1 for resins.
struct Certificate {
    std::optional<FrameworkMaterial> material{};
    std::optional<AlloyType> type{};
    std::optional<Megapascals> proofStrength{};
    std::optional<Stiffness> modulus{};
    std::optional<Share> elongation{};
    std::optional<Share> nickel{};
    std::optional<Share> beryllium{};
    std::optional<Share> cadmium{};
    std::optional<BaseResin> resin{};
    std::optional<bool> methacrylateFree{};
    friend bool operator==(const Certificate&, const Certificate&) = default;
};

struct Lot {
    LotKind kind{};
    std::string maker{};
    std::string product{};
    std::string makersNumber{};
    std::optional<std::string> udi{};  ///< the supplier's, as it was scanned
    std::optional<Date> expiry{};      ///< the last day it may be used
    Certificate certificate{};
    std::int64_t amount{};  ///< received: milligrams, or pieces of teeth
    friend bool operator==(const Lot&, const Lot&) = default;
};

/// A lot as it stands.
struct KeptLot {
    Lot lot{};
    Date received{Date::ofDays(0)};
    bool held{};          ///< in quarantine
    std::int64_t used{};  ///< by all orders so far
    std::int64_t left() const noexcept { return lot.amount - used; }
    friend bool operator==(const KeptLot&, const KeptLot&) = default;
};

/// Why `amount` of a lot must not go into an order, in a sentence with what is expected; nullopt
/// when nothing speaks against it. Limits of nickel, beryllium and cadmium: ISO 22674.
std::optional<std::string> unsuitable(const KeptLot& lot, std::int64_t amount,
                                      const Prescription& prescription, Date today);

}  // namespace domain
