#include "domain/design/design.h"

#include "domain/design/mass_estimate.h"
#include "domain/design/support.h"

namespace domain {
namespace {

std::vector<RetainerArm> retainerArms(const Prescription& prescription, const Design& design) {
    std::vector<RetainerArm> arms;
    if (!design.fulcrum) return arms;
    for (const IndirectRetainer& retainer : prescription.indirectRetainers)
        for (const Rest& rest : prescription.rests) {
            if (rest.tooth != retainer.tooth) continue;
            const double across = design.fulcrum->across(placeOf(design.form, rest));
            const bool resists = design.fulcrum->isAcross(placeOf(design.form, rest));
            arms.push_back({rest.tooth, across, resists ? design.fulcrum->loadArm() / across : 0});
        }
    return arms;
}

}  // namespace

Design designOf(const Prescription& prescription) {
    Design design{.form = ArchForm{prescription.arch, extentOf(prescription)}};
    design.places = placesOf(prescription);
    design.areas = edentulousAreas(design.places);
    design.kennedy = classify(design.places);
    design.support = supportOf(prescription, design.places);
    design.fulcrum = fulcrumOf(prescription, design.form, design.areas, design.kennedy);
    return design;
}

Description descriptionOf(const Prescription& prescription) {
    Description description{.design = designOf(prescription)};
    const Design& design = description.design;
    for (const EdentulousArea& area : design.areas)
        description.saddles.push_back(spanOf(prescription, design.form, design.places, area));
    description.retainers = retainerArms(prescription, design);
    if (design.fulcrum) description.bestSeat = bestSeat(prescription, design.form, *design.fulcrum);
    for (const Clasp& clasp : prescription.clasps)
        if (const auto mechanics = mechanicsOf(prescription, clasp))
            description.clasps.push_back(*mechanics);
    description.connector = connectorSpanOf(prescription, design.form, design.areas);
    description.volume = frameworkVolume(prescription, description.saddles, description.connector);
    description.mass = frameworkMass(prescription, description.volume);
    return description;
}

}  // namespace domain
