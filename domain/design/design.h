/// Everything that follows from a prescription, derived once and never stored.
#pragma once

#include "domain/base/range.h"
#include "domain/design/clasp_mechanics.h"
#include "domain/design/fulcrum.h"
#include "domain/design/saddle_span.h"

namespace domain {

/// A rest named as indirect retainer, and how far across the fulcrum line it lies.
struct RetainerArm {
    Tooth tooth{11_fdi};
    double across{};  ///< mm; below 0 on the side of the base
    /// How the load at the far end of the base compares: arm of the load over arm of the retainer.
    double loadRatio{};
};

struct Design {
    ArchForm form;
    ArchPlaces places{};
    std::vector<EdentulousArea> areas{};
    std::optional<Kennedy> kennedy{};
    std::optional<Support> support{};
    std::optional<Fulcrum> fulcrum{};

    std::optional<KennedyClass> kennedyClass() const noexcept {
        if (!kennedy) return {};
        return kennedy->kennedyClass;
    }
};

/// What the rules look at.
Design designOf(const Prescription& prescription);

/// What is measured and computed beyond that, for people to read.
struct Description {
    Design design;
    std::vector<SaddleSpan> saddles{};
    std::vector<RetainerArm> retainers{};
    std::optional<RetainerSeat> bestSeat{};
    std::vector<ClaspMechanics> clasps{};
    std::optional<ConnectorSpan> connector{};
    std::optional<Range> volume{};  ///< of the framework, cm^3
    std::optional<Range> mass{};    ///< g
};
Description descriptionOf(const Prescription& prescription);

}  // namespace domain
