/// The faces of a tooth, as far as a partial denture touches them.
#pragma once

#include "domain/base/codes.h"

namespace domain {

enum class Surface : std::uint8_t { Mesial, Distal, Buccal, Lingual };
template <>
inline constexpr std::array<EnumCode<Surface>, 4> enumCodes<Surface>{{
    {Surface::Mesial, "mesial"},
    {Surface::Distal, "distal"},
    {Surface::Buccal, "buccal"},    // also the labial face of a front tooth
    {Surface::Lingual, "lingual"},  // also the palatal face of an upper tooth
}};

constexpr Surface opposite(Surface surface) noexcept {
    switch (surface) {
        case Surface::Mesial:
            return Surface::Distal;
        case Surface::Distal:
            return Surface::Mesial;
        case Surface::Buccal:
            return Surface::Lingual;
        case Surface::Lingual:
            return Surface::Buccal;
    }
    return surface;
}

}  // namespace domain
