#include "domain/design/fulcrum.h"

#include <algorithm>
#include <cmath>

namespace domain {
namespace {

constexpr double kWorthACingulum = 1.1;  // how much farther away a cingulum must lie
constexpr double kShortestLine = 1;      // mm; two rests nearer than that are one place

std::vector<Rest> alongTheArch(const Prescription& prescription) {
    std::vector<Rest> rests;
    for (const Rest& rest : prescription.rests)
        if (rest.tooth.arch() == prescription.arch) rests.push_back(rest);
    std::ranges::stable_sort(rests, {},
                             [](const Rest& rest) { return arcPlace(rest.tooth, rest.side); });
    return rests;
}

struct Pair {
    Rest right;
    Rest left;
};

/// The two rests nearest to the space in front, one on each side of it.
std::optional<Pair> aroundFront(const std::vector<Rest>& rests, const EdentulousArea& area) {
    const auto behind = std::ranges::find_if(
        rests, [&](const Rest& rest) { return rest.tooth.position() > area.last; });
    if (behind == rests.begin() || behind == rests.end()) return {};
    return Pair{*std::prev(behind), *behind};
}

/// The area whose base rocks: the free end, of two the one on the patient's right; else the front.
const EdentulousArea& rocking(std::span<const EdentulousArea> areas) {
    const auto freeEnd = std::ranges::find_if(areas, &EdentulousArea::isFreeEnd);
    return freeEnd == areas.end() ? areas.front() : *freeEnd;
}

std::optional<Pair> restsOfLine(const Prescription& prescription, const Kennedy& kennedy,
                                std::span<const EdentulousArea> areas) {
    const auto rests = alongTheArch(prescription);
    if (rests.size() < 2) return {};
    switch (kennedy.kennedyClass) {
        case KennedyClass::I:
        case KennedyClass::II:
            return Pair{rests.front(), rests.back()};
        case KennedyClass::III:
            return {};
        case KennedyClass::IV:
            return aroundFront(rests, areas.front());
    }
    return {};
}

}  // namespace

int arcPlace(Tooth tooth, std::optional<Surface> side) noexcept {
    const int middle = 4 * tooth.position();
    const int mesial = tooth.side() == Side::Right ? 1 : -1;
    if (side == Surface::Mesial) return middle + mesial;
    if (side == Surface::Distal) return middle - mesial;
    return middle;
}

double Fulcrum::across(Point place) const noexcept {
    const auto aside = [&](Point other) {
        const Point line = to - from;
        const Point reach = other - from;
        return (line.x * reach.y - line.y * reach.x) / distance(from, to);
    };
    return aside(base) > 0 ? -aside(place) : aside(place);
}

std::optional<Fulcrum> fulcrumOf(const Prescription& prescription, const ArchForm& form,
                                 std::span<const EdentulousArea> areas,
                                 std::optional<Kennedy> kennedy) {
    if (!kennedy) return {};
    const auto rests = restsOfLine(prescription, *kennedy, areas);
    if (!rests) return {};
    Fulcrum fulcrum{.right = rests->right,
                    .left = rests->left,
                    .from = placeOf(form, rests->right),
                    .to = placeOf(form, rests->left)};
    if (distance(fulcrum.from, fulcrum.to) < kShortestLine) return {};
    const Stretch base = stretchOf(form, prescription.arch, rocking(areas));
    fulcrum.base = form.spot(base.middle()).at;
    fulcrum.farEnd = fulcrum.base;
    for (const double along : {base.from, base.to}) {
        const Point end = form.spot(along).at;
        if (fulcrum.across(end) < fulcrum.across(fulcrum.farEnd)) fulcrum.farEnd = end;
    }
    return fulcrum;
}

std::optional<Fulcrum> fulcrumOf(const Prescription& prescription) {
    const auto places = placesOf(prescription);
    const auto areas = edentulousAreas(places);
    return fulcrumOf(prescription, ArchForm{prescription.arch, extentOf(prescription)}, areas,
                     classify(places));
}

std::optional<RetainerSeat> bestSeat(const Prescription& prescription, const ArchForm& form,
                                     const Fulcrum& fulcrum) {
    std::optional<RetainerSeat> best;
    double bestWorth = 0;
    const auto offer = [&](Tooth tooth, RestKind kind, Surface side) {
        const Rest rest{.tooth = tooth, .kind = kind, .side = side};
        const double away = fulcrum.across(placeOf(form, rest));
        const double worth = kind == RestKind::Cingulum ? away / kWorthACingulum : away;
        if (best && worth <= bestWorth) return;
        best = RetainerSeat{tooth, side, kind, away};
        bestWorth = worth;
    };
    for (int position = 0; position < kTeethInArch; ++position) {
        const Tooth tooth = Tooth::at(prescription.arch, position);
        if (!prescription.dentition.stands(tooth)) continue;
        switch (tooth.kind()) {
            case ToothKind::Incisor:
                break;
            case ToothKind::Canine:
                offer(tooth, RestKind::Cingulum, Surface::Mesial);
                break;
            case ToothKind::Premolar:
            case ToothKind::Molar:
                offer(tooth, RestKind::Occlusal, Surface::Mesial);
                offer(tooth, RestKind::Occlusal, Surface::Distal);
                break;
        }
    }
    if (!best || !fulcrum.isAcross(placeOf(form, {best->tooth, best->kind, best->side}))) return {};
    return best;
}

}  // namespace domain
