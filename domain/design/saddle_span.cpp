#include "domain/design/saddle_span.h"

#include <algorithm>

namespace domain {
namespace {

SpanEnd endOf(const Prescription& prescription, std::optional<int> abutment, int outwards) {
    if (!abutment) return {};
    SpanEnd end{.abutment = Tooth::at(prescription.arch, *abutment), .clasped = {}};
    for (const int position : {*abutment, *abutment + outwards}) {
        if (end.clasped || position < 0 || position >= kTeethInArch) continue;
        const Tooth tooth = Tooth::at(prescription.arch, position);
        if (std::ranges::count(prescription.clasps, tooth, &Clasp::tooth) > 0) end.clasped = tooth;
    }
    return end;
}

}  // namespace

SaddleSpan spanOf(const Prescription& prescription, const ArchForm& form, const ArchPlaces& places,
                  const EdentulousArea& area) {
    SaddleSpan span{.area = area};
    for (int position = area.first; position <= area.last; ++position) {
        const Tooth tooth = Tooth::at(prescription.arch, position);
        if (places[static_cast<std::size_t>(position)] == Place::Restored) ++span.teeth;
        if (prescription.dentition.of(tooth) != ToothState::Closed)
            span.along += form.place(tooth).mesiodistal;
    }
    const Stretch ends = stretchOf(form, prescription.arch, area);
    span.straight = distance(form.spot(ends.from).at, form.spot(ends.to).at);
    span.right = endOf(prescription, area.rightAbutment, -1);
    span.left = endOf(prescription, area.leftAbutment, 1);
    return span;
}

std::optional<ConnectorSpan> connectorSpanOf(const Prescription& prescription, const ArchForm& form,
                                             std::span<const EdentulousArea> areas) {
    std::optional<Stretch> reach;
    const auto take = [&](double from, double to) {
        if (!reach)
            reach = Stretch{from, to};
        else
            reach = Stretch{std::min(reach->from, from), std::max(reach->to, to)};
    };
    for (const EdentulousArea& area : areas) {
        // A connector comes to the near end of a saddle; what lies behind is the saddle's own.
        const auto [from, to] = stretchOf(form, prescription.arch, area);
        if (from < 0 && to > 0)
            take(from, to);
        else
            take(to <= 0 ? to : from, to <= 0 ? to : from);
    }
    for (const Tooth tooth : abutments(prescription).teeth()) {
        if (tooth.arch() != prescription.arch) continue;
        const ToothPlace place = form.place(tooth);
        const double middle = (place.from + place.to) / 2;
        take(middle, middle);
    }
    if (!reach) return {};
    return ConnectorSpan{distance(form.spot(reach->from).at, form.spot(reach->to).at),
                         reach->to - reach->from};
}

}  // namespace domain
