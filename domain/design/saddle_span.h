/// The toothless areas in millimetres, and whether a clasp holds each end.
#pragma once

#include <span>

#include "domain/design/part_places.h"

namespace domain {

/// One end of an area: the tooth that stands there, and the clasp that holds it. A clasp on the
/// next tooth away from the space holds the end as well.
struct SpanEnd {
    std::optional<Tooth> abutment{};  ///< nullopt: a free end
    std::optional<Tooth> clasped{};
};

struct SaddleSpan {
    EdentulousArea area{};
    int teeth{};        ///< restored by this appliance
    double along{};     ///< mm along the arch, spaces closed by drift left out
    double straight{};  ///< mm from end to end
    SpanEnd right{};    ///< towards the patient's right
    SpanEnd left{};

    /// Whether retention surrounds it: a clasp at both ends. Never so at a free end.
    bool isSurrounded() const noexcept { return right.clasped && left.clasped; }
};

SaddleSpan spanOf(const Prescription& prescription, const ArchForm& form, const ArchPlaces& places,
                  const EdentulousArea& area);

/// What the major connector bridges: between the outermost abutments and near ends of saddles it
/// joins on both sides.
struct ConnectorSpan {
    double across{};  ///< mm straight across the arch
    double along{};   ///< mm round it
};
/// nullopt where nothing is to be joined.
std::optional<ConnectorSpan> connectorSpanOf(const Prescription& prescription, const ArchForm& form,
                                             std::span<const EdentulousArea> areas);

}  // namespace domain
