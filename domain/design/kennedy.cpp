#include "domain/design/kennedy.h"

#include <algorithm>

namespace domain {

std::string Kennedy::text() const {
    std::string written{codeOf(kennedyClass)};
    if (modifications > 0) written += " mod " + std::to_string(modifications);
    return written;
}

std::optional<Kennedy> Kennedy::parse(std::string_view text) {
    const auto take = [&text](std::string_view word) {
        const bool starts = text.starts_with(word);
        if (starts) text.remove_prefix(word.size());
        return starts;
    };
    const auto skip = [&text](std::string_view letters) {
        text.remove_prefix(std::min(text.find_first_not_of(letters), text.size()));
    };
    if (take("Class") || take("class") || take("Kennedy")) skip(" ");
    if (take("Class") || take("class")) skip(" ");
    const auto end = std::min(text.find_first_not_of("IV"), text.size());
    const auto kennedyClass = parseCode<KennedyClass>(text.substr(0, end));
    if (!kennedyClass) return {};
    text.remove_prefix(end);
    if (text.empty()) return Kennedy{*kennedyClass, 0};
    if (text.find_first_of(" ,/") != 0) return {};
    skip(" ,/");
    if (take("modification") || take("mod")) skip(". ");
    if (text.size() != 1 || text[0] < '0' || text[0] > '9') return {};
    return Kennedy{*kennedyClass, text[0] - '0'};
}

std::vector<EdentulousArea> edentulousAreas(const ArchPlaces& places) {
    std::vector<EdentulousArea> areas;
    std::optional<int> standing;
    bool open = false;
    for (int position = 0; position < kTeethInArch; ++position) {
        switch (places[static_cast<std::size_t>(position)]) {
            case Place::Standing:
                if (open) areas.back().leftAbutment = position;
                standing = position;
                open = false;
                break;
            case Place::Restored:
                if (!open) areas.push_back({position, position, standing, {}});
                areas.back().last = position;
                open = true;
                break;
            case Place::Ignored:
                break;
        }
    }
    return areas;
}

std::optional<Kennedy> classify(const ArchPlaces& places) {
    const auto areas = edentulousAreas(places);
    if (areas.empty() || std::ranges::count(places, Place::Standing) == 0) return {};
    const auto freeEnds = std::ranges::count_if(areas, &EdentulousArea::isFreeEnd);
    const int others = static_cast<int>(areas.size() - static_cast<std::size_t>(freeEnds));
    if (freeEnds == 2) return Kennedy{KennedyClass::I, others};
    if (freeEnds == 1) return Kennedy{KennedyClass::II, others};
    if (areas.size() == 1 && areas.front().crossesMidline()) return Kennedy{KennedyClass::IV, 0};
    return Kennedy{KennedyClass::III, others - 1};
}

ArchPlaces placesOf(const ToldArch& told) {
    const ToothSet gone = told.missing | told.notReplaced | told.toBeExtracted | told.replaced;
    ArchPlaces places{};
    for (int position = 0; position < kTeethInArch; ++position) {
        const Tooth tooth = Tooth::at(told.arch, position);
        const bool counts = tooth.isThirdMolar()
                                ? told.abutments.has(tooth) || told.replaced.has(tooth)
                                : !told.notReplaced.has(tooth);
        places[static_cast<std::size_t>(position)] = !counts           ? Place::Ignored
                                                     : gone.has(tooth) ? Place::Restored
                                                                       : Place::Standing;
    }
    return places;
}

ArchPlaces placesOf(const Prescription& prescription) {
    const ToothSet replaced = replacedTeeth(prescription);
    const ToothSet leanedOn = abutments(prescription);
    ArchPlaces places{};
    for (int position = 0; position < kTeethInArch; ++position) {
        const Tooth tooth = Tooth::at(prescription.arch, position);
        Place& place = places[static_cast<std::size_t>(position)];
        switch (prescription.dentition.of(tooth)) {
            case ToothState::Present:
                place =
                    tooth.isThirdMolar() && !leanedOn.has(tooth) ? Place::Ignored : Place::Standing;
                break;
            case ToothState::Bridged:
                place = Place::Standing;
                break;
            case ToothState::Missing:
            case ToothState::ToBeExtracted:
                // A third molar is restored only where a saddle names it.
                place =
                    tooth.isThirdMolar() && !replaced.has(tooth) ? Place::Ignored : Place::Restored;
                break;
            case ToothState::NotReplaced:
            case ToothState::Closed:
                place = Place::Ignored;
                break;
        }
    }
    return places;
}

std::optional<Kennedy> classify(const Prescription& prescription) {
    return classify(placesOf(prescription));
}

}  // namespace domain
