#include "domain/teeth/tooth.h"

namespace domain {

std::optional<Tooth> Tooth::parse(std::string_view iso3950) noexcept {
    if (iso3950.size() != 2) return {};
    const int quadrant = iso3950[0] - '0';
    const int place = iso3950[1] - '0';
    if (!exists(quadrant, place)) return {};
    return Tooth{quadrant, place};
}

std::string Tooth::text() const {
    return {static_cast<char>('0' + quadrant_), static_cast<char>('0' + place_)};
}

}  // namespace domain
