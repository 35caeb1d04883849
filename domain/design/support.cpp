#include "domain/design/support.h"

#include <algorithm>

namespace domain {

std::optional<Support> supportOf(const Prescription& prescription) {
    return supportOf(prescription, placesOf(prescription));
}

std::optional<Support> supportOf(const Prescription& prescription, const ArchPlaces& places) {
    if (!classify(places)) return {};
    if (prescription.rests.empty()) return Support::Tissue;
    const auto leansOnTissue = [&](const EdentulousArea& area) {
        const auto begin = places.begin() + area.first;
        const auto end = places.begin() + area.last + 1;
        return area.isFreeEnd() ||
               std::count(begin, end, Place::Restored) > kLongestToothSupportedSpace;
    };
    return std::ranges::any_of(edentulousAreas(places), leansOnTissue) ? Support::ToothAndTissue
                                                                       : Support::Tooth;
}

}  // namespace domain
