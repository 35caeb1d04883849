/// The notations dentists write teeth in, each to and from ISO 3950.
///
/// Source of the crosswalk: HL7 dental-data-exchange implementation guide, crosswalk D1 (ISO 3950
/// and Universal); the quadrant letters of the Palmer text form are common practice, no source.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "domain/base/codes.h"
#include "domain/teeth/tooth.h"

namespace domain {

enum class Notation : std::uint8_t { Iso3950, Universal, Palmer };
template <>
inline constexpr std::array<EnumCode<Notation>, 3> enumCodes<Notation>{{
    {Notation::Iso3950, "iso3950"},
    {Notation::Universal, "universal"},
    {Notation::Palmer, "palmer"},
}};

/// Reads "36" (ISO 3950), "19" (Universal, 1..32) or "LL6" (Palmer); anything else is refused.
std::optional<Tooth> parseTooth(std::string_view text, Notation notation) noexcept;

/// The tooth as that notation writes it.
std::string nameOf(Tooth tooth, Notation notation);

/// Whether the ISO 3950 number of the tooth is also a number of the Universal notation, so that
/// bare digits do not say which tooth is meant: 11-18, 21-28, 31 and 32.
constexpr bool isAmbiguous(Tooth tooth) noexcept {
    return tooth.quadrant() * 10 + tooth.place() <= 32;
}

}  // namespace domain
