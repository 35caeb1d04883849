/// Why a denture is made again.
#pragma once

#include <optional>

#include "domain/base/codes.h"

namespace domain {

enum class RemakeReason : std::uint8_t {
    DoesNotFit,
    Fractured,
    WrongDesign,
    WrongShade,
    WrongOcclusion,
    Lost,
};
template <>
inline constexpr std::array<EnumCode<RemakeReason>, 6> enumCodes<RemakeReason>{{
    {RemakeReason::DoesNotFit, "does-not-fit"},
    {RemakeReason::Fractured, "fractured"},
    {RemakeReason::WrongDesign, "wrong-design"},
    {RemakeReason::WrongShade, "wrong-shade"},
    {RemakeReason::WrongOcclusion, "wrong-occlusion"},
    {RemakeReason::Lost, "lost"},
}};

/// That it replaces one this laboratory or another made before.
struct Remake {
    std::optional<RemakeReason> reason{};
    friend bool operator==(const Remake&, const Remake&) = default;
};

}  // namespace domain
