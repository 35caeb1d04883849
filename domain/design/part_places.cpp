#include "domain/design/part_places.h"

#include "domain/design/possible_sizes.h"

namespace domain {
namespace {

// Shares of half a crown; an occlusal seat is a third to half a crown long, from its edge inwards.
constexpr double kOcclusalFromCentre = 0.7;
constexpr double kCingulumFromCentre = 0.5;

double mesially(std::optional<Surface> side) noexcept {
    if (side == Surface::Mesial) return 1;
    return side == Surface::Distal ? -1 : 0;
}

}  // namespace

ArchExtent extentOf(const Prescription& prescription) noexcept {
    ArchExtent extent = meanExtent(prescription.arch);
    const Survey& survey = prescription.survey;
    if (survey.archWidth && possible::kArchWidth.holds(*survey.archWidth))
        extent.width = millimetres(*survey.archWidth);
    if (survey.archDepth && possible::kArchDepth.holds(*survey.archDepth))
        extent.depth = millimetres(*survey.archDepth);
    return extent;
}

Point placeOf(const ArchForm& form, const Rest& rest) noexcept {
    const ToothPlace tooth = form.place(rest.tooth);
    const Point mesial = tooth.mesial * (tooth.mesiodistal / 2 * mesially(rest.side));
    const Point lingual = tooth.outward * (-tooth.buccolingual / 2);
    switch (rest.kind) {
        case RestKind::Occlusal:
        case RestKind::Incisal:
            return tooth.centre + mesial * kOcclusalFromCentre;
        case RestKind::Cingulum:
            return tooth.centre + lingual * kCingulumFromCentre;
    }
    return tooth.centre;
}

double alongOf(const ArchForm& form, const MinorConnector& connector) noexcept {
    const ToothPlace tooth = form.place(connector.tooth);
    const bool right = connector.tooth.side() == Side::Right;
    if (connector.side == Surface::Mesial) return right ? tooth.to : tooth.from;
    if (connector.side == Surface::Distal) return right ? tooth.from : tooth.to;
    return (tooth.from + tooth.to) / 2;
}

Stretch stretchOf(const ArchForm& form, Arch arch, const EdentulousArea& area) noexcept {
    return {form.place(Tooth::at(arch, area.first)).from,
            form.place(Tooth::at(arch, area.last)).to};
}

}  // namespace domain
