#include "domain/design/fulcrum.h"

#include <algorithm>

#include "domain/design/kennedy.h"

namespace domain {

namespace {

std::vector<int> restPlaces(const Prescription& prescription) {
    std::vector<int> places;
    for (const Rest& rest : prescription.rests) places.push_back(arcPlace(rest.tooth, rest.side));
    std::ranges::sort(places);
    return places;
}

/// Between the two rests nearest to the space in front, one on each side of it.
std::optional<Fulcrum> aroundFront(const std::vector<int>& rests, const EdentulousArea& area) {
    const auto behind = std::ranges::upper_bound(rests, 4 * area.last);
    if (behind == rests.begin() || behind == rests.end()) return {};
    return Fulcrum{.right = *std::prev(behind), .left = *behind, .baseBetween = true};
}

}  // namespace

int arcPlace(Tooth tooth, std::optional<Surface> side) noexcept {
    const int middle = 4 * tooth.position();
    const int mesial = tooth.side() == Side::Right ? 1 : -1;
    if (side == Surface::Mesial) return middle + mesial;
    if (side == Surface::Distal) return middle - mesial;
    return middle;
}

std::optional<Fulcrum> fulcrumOf(const Prescription& prescription) {
    const auto kennedy = classify(prescription);
    const auto rests = restPlaces(prescription);
    if (!kennedy || rests.size() < 2) return {};
    switch (kennedy->kennedyClass) {
        case KennedyClass::I:
        case KennedyClass::II:
            return Fulcrum{.right = rests.front(), .left = rests.back(), .baseBetween = false};
        case KennedyClass::III:
            return {};
        case KennedyClass::IV:
            return aroundFront(rests, edentulousAreas(placesOf(prescription)).front());
    }
    return {};
}

}  // namespace domain
