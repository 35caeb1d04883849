/// What the patient does not tolerate. "None known" is an answer; a blank is not.
#pragma once

#include <optional>
#include <vector>

#include "domain/base/codes.h"

namespace domain {

enum class Sensitivity : std::uint8_t { Nickel, Cobalt, Chromium, Methacrylate, Latex };
template <>
inline constexpr std::array<EnumCode<Sensitivity>, 5> enumCodes<Sensitivity>{{
    {Sensitivity::Nickel, "nickel"},
    {Sensitivity::Cobalt, "cobalt"},
    {Sensitivity::Chromium, "chromium"},
    {Sensitivity::Methacrylate, "methacrylate"},
    {Sensitivity::Latex, "latex"},
}};

struct Sensitivities {
    std::optional<bool> noneKnown{};  ///< said in so many words
    std::vector<Sensitivity> known{};
    friend bool operator==(const Sensitivities&, const Sensitivities&) = default;
};

}  // namespace domain
