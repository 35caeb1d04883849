#include "domain/design/design_view.h"

#include <algorithm>

namespace domain {

namespace {

bool hasSide(const Rest& rest, Surface side) {
    return rest.side ? *rest.side == side : rest.kind != RestKind::Occlusal;
}

int step(Tooth tooth, Surface side) noexcept {
    const int mesial = tooth.side() == Side::Right ? 1 : -1;
    return side == Surface::Mesial ? mesial : -mesial;
}

}  // namespace

bool isBlank(const std::string& text) {
    return text.find_first_not_of(" \t\r\n") == std::string::npos;
}

bool isBlank(const std::optional<std::string>& text) { return !text || isBlank(*text); }

std::string tooLittle(Microns given, Microns houseLimit) {
    return text(given) + " given; this laboratory asks " + text(houseLimit);
}

std::optional<Appliance> applianceOf(const Prescription& prescription) {
    if (prescription.appliance) return prescription.appliance;
    const bool describesFramework = !prescription.saddles.empty() || !prescription.rests.empty() ||
                                    prescription.majorConnector || prescription.framework.material;
    if (describesFramework) return Appliance::MetalFramework;
    return {};
}

bool isMetal(const Prescription& prescription) {
    return applianceOf(prescription) == Appliance::MetalFramework;
}

bool isInterim(const Prescription& prescription) {
    return applianceOf(prescription) == Appliance::InterimResin;
}

bool isNewDenture(const Prescription& prescription) {
    return isMetal(prescription) || isInterim(prescription);
}

std::vector<NamedTooth> namedTeeth(const Prescription& prescription) {
    std::vector<NamedTooth> named;
    for (const Saddle& saddle : prescription.saddles)
        for (const Tooth tooth : saddle.teeth) named.push_back({tooth, "saddle", false});
    for (const Rest& rest : prescription.rests) named.push_back({rest.tooth, "rest", true});
    for (const Clasp& clasp : prescription.clasps) named.push_back({clasp.tooth, "clasp", true});
    for (const GuidePlate& plate : prescription.guidePlates)
        named.push_back({plate.tooth, "guide plate", true});
    for (const MinorConnector& connector : prescription.minorConnectors)
        named.push_back({connector.tooth, "minor connector", true});
    for (const IndirectRetainer& retainer : prescription.indirectRetainers)
        named.push_back({retainer.tooth, "indirect retainer", true});
    for (const AbutmentSurvey& surveyed : prescription.survey.abutments)
        named.push_back({surveyed.tooth, "survey", false});
    for (const Shade& shade : prescription.shades)
        for (const Tooth tooth : shade.teeth) named.push_back({tooth, "shade", false});
    return named;
}

bool hasAbutment(const Prescription& prescription, Side side) {
    for (int position = 0; position < kTeethInArch; ++position)
        if (const Tooth tooth = toothAt(prescription, position);
            tooth.side() == side && tooth.kind() != ToothKind::Incisor && !tooth.isThirdMolar() &&
            prescription.dentition.stands(tooth))
            return true;
    return false;
}

bool hasRest(const Prescription& prescription, Tooth tooth) {
    return std::ranges::count(prescription.rests, tooth, &Rest::tooth) > 0;
}

bool hasRest(const Prescription& prescription, Tooth tooth, Surface side) {
    return std::ranges::any_of(prescription.rests, [&](const Rest& rest) {
        return rest.tooth == tooth && hasSide(rest, side);
    });
}

bool hasMinorConnector(const Prescription& prescription, Tooth tooth) {
    return std::ranges::any_of(prescription.minorConnectors, [&](const MinorConnector& connector) {
        if (connector.tooth == tooth) return true;
        // One that runs through the embrasure between two teeth serves both.
        return connector.side && neighbour(connector.tooth, *connector.side) == tooth;
    });
}

std::optional<Tooth> neighbour(Tooth tooth, Surface side) noexcept {
    if (side != Surface::Mesial && side != Surface::Distal) return {};
    const int position = tooth.position() + step(tooth, side);
    if (position < 0 || position >= kTeethInArch) return {};
    return Tooth::at(tooth.arch(), position);
}

Surface facing(Tooth tooth, Surface side) noexcept {
    const bool acrossMidline = tooth.place() == 1 && side == Surface::Mesial;
    return acrossMidline ? Surface::Mesial : opposite(side);
}

Tooth toothAt(const Prescription& prescription, int position) noexcept {
    return Tooth::at(prescription.arch, position);
}

ToothSet abutmentsOf(const Design& design, const EdentulousArea& area) {
    ToothSet teeth;
    for (const auto& position : {area.rightAbutment, area.leftAbutment})
        if (position) teeth.add(Tooth::at(design.form.arch(), *position));
    return teeth;
}

bool isBesideFreeEnd(const Design& design, Tooth tooth) {
    return std::ranges::any_of(design.areas, [&](const EdentulousArea& area) {
        return area.isFreeEnd() && abutmentsOf(design, area).has(tooth);
    });
}

bool isIn(const Design& design, const EdentulousArea& area, Tooth tooth) noexcept {
    return tooth.arch() == design.form.arch() && tooth.position() >= area.first &&
           tooth.position() <= area.last;
}

bool isFreeEnd(const Design& design, const Saddle& saddle) {
    return std::ranges::any_of(design.areas, [&](const EdentulousArea& area) {
        return area.isFreeEnd() && std::ranges::any_of(saddle.teeth, [&](Tooth tooth) {
                   return isIn(design, area, tooth);
               });
    });
}

std::optional<Surface> retentiveFace(const Clasp& clasp) {
    if (clasp.retentiveArm) return clasp.retentiveArm;
    if (clasp.undercut) return faceOf(clasp.undercut->place);
    return {};
}

const AbutmentSurvey* surveyOf(const Prescription& prescription, Tooth tooth) {
    const auto found =
        std::ranges::find(prescription.survey.abutments, tooth, &AbutmentSurvey::tooth);
    return found == prescription.survey.abutments.end() ? nullptr : &*found;
}

bool isSensitive(const Prescription& prescription, Sensitivity sensitivity) {
    return std::ranges::count(prescription.sensitivities.known, sensitivity) > 0;
}

}  // namespace domain
