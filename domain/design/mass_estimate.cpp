#include "domain/design/mass_estimate.h"

#include <algorithm>

#include "domain/design/design_view.h"
#include "domain/materials/alloy_data.h"

namespace domain {
namespace {

constexpr double kDoubt = 0.3;
constexpr double kSheet = 0.55;  // mm thick, of a plate or strap
constexpr double kBar = 6.5;     // mm^2, of a half-pear lingual bar
constexpr double kFront = 45;    // mm along the arch, canine to canine and a little more
// mm^3 each:
constexpr double kRest = 7.5;
constexpr double kArm = 9;
constexpr double kMinorConnector = 22;
constexpr double kGuidePlate = 12;
// mm^2 along a saddle:
constexpr double kLattice = 2.4;
constexpr double kMetalBase = 5;

double widthOf(const MajorConnector& connector, double usual) noexcept {
    return connector.width ? millimetres(*connector.width) : usual;
}

/// mm^3.
double connectorVolume(const MajorConnector& connector, const ConnectorSpan& span) noexcept {
    constexpr double kPalatalDepth = 32;  // mm from front to back of a complete plate
    switch (connector.kind) {
        case ConnectorKind::PalatalStrap:
            return widthOf(connector, 10) * span.across * kSheet;
        case ConnectorKind::DoublePalatalStrap:
            // The posterior strap as given, the anterior one 6 mm, and two lateral ones between.
            return (widthOf(connector, 8) + 6) * span.across * kSheet + 2 * 8 * 16 * kSheet;
        case ConnectorKind::Horseshoe:
            return widthOf(connector, 7) * span.along * kSheet;
        case ConnectorKind::PalatalPlate:
            return kPalatalDepth * span.across * kSheet;
        case ConnectorKind::PalatalBar:
            return widthOf(connector, 5) * span.across * 1.5;
        case ConnectorKind::LingualBar:
        case ConnectorKind::SublingualBar:
        case ConnectorKind::LabialBar:
            return kBar * span.along;
        case ConnectorKind::LingualPlate:
            return kBar * span.along + 5 * kFront * kSheet;
        case ConnectorKind::CingulumBar:
            return 3 * span.along;
        case ConnectorKind::DoubleLingualBar:
            return kBar * span.along + 3 * kFront;
    }
    return 0;
}

double saddleVolume(const Prescription& prescription, const SaddleSpan& span) noexcept {
    const bool metal = std::ranges::any_of(prescription.saddles, [&](const Saddle& saddle) {
        return saddle.base == BaseKind::Metal &&
               std::ranges::any_of(saddle.teeth, [&](Tooth tooth) {
                   return tooth.position() >= span.area.first && tooth.position() <= span.area.last;
               });
    });
    return (metal ? kMetalBase : kLattice) * span.along;
}

}  // namespace

std::optional<Range> frameworkVolume(const Prescription& prescription,
                                     std::span<const SaddleSpan> saddles,
                                     std::optional<ConnectorSpan> connector) {
    if (!isMetal(prescription) || !prescription.majorConnector || !connector) return {};
    double volume = connectorVolume(*prescription.majorConnector, *connector);
    for (const SaddleSpan& saddle : saddles) volume += saddleVolume(prescription, saddle);
    const auto times = [](std::size_t count, double each) {
        return static_cast<double>(count) * each;
    };
    volume += times(prescription.rests.size(), kRest);
    volume += times(2 * prescription.clasps.size(), kArm);
    volume += times(prescription.minorConnectors.size(), kMinorConnector);
    volume += times(prescription.guidePlates.size(), kGuidePlate);
    constexpr double kPerCubicCentimetre = 1000;
    return Range{volume * (1 - kDoubt) / kPerCubicCentimetre,
                 volume * (1 + kDoubt) / kPerCubicCentimetre};
}

std::optional<Range> frameworkMass(const Prescription& prescription,
                                   const std::optional<Range>& volume) {
    const Framework& framework = prescription.framework;
    if (!volume || !framework.material) return {};
    const Range density =
        materialOf(*framework.material, framework.making.value_or(FrameworkMaking::Cast))
            .density.range;
    return Range{volume->least * density.least, volume->most * density.most};
}

}  // namespace domain
