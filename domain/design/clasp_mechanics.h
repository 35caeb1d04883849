/// What each clasp does as a spring: the force at its tip, the stress in it, the pull it resists.
///
/// What the prescription leaves open of the arm is derived: its length from the crown, its section
/// from its material. Every result is a range: over the modulus of the material, and over the sizes
/// where they are derived.
#pragma once

#include "domain/design/beam.h"
#include "domain/materials/alloy_data.h"
#include "domain/prescription/prescription.h"

namespace domain {

/// What an arm cast with a framework of that material is of.
std::optional<ArmMaterial> castArm(FrameworkMaterial material) noexcept;
/// What the retentive arm is made of: as said, else of the framework's own cast alloy.
std::optional<ArmMaterial> armMaterial(const Prescription& prescription, const Clasp& clasp);
/// Its properties. An arm of the framework's own alloy is made as the framework is, so that of a
/// printed framework is a printed one.
const Material* armProperties(const Prescription& prescription, const Clasp& clasp);

/// The arm as the prescription gives it, completed from the crown. Sizes: half-round cast arms 1.4
/// mm wide on molars and 1.2 mm elsewhere, half as wide at the tip; wire 1.0 mm round and even;
/// polymer arms 3 mm wide (teaching texts after McCracken, from memory). Length: three eighths of
/// the way round the crown to the far line angle (the strut of a ring clasp holds the rest of it),
/// a quarter to the middle of a face, half the way for a back-action clasp; a wire runs 8 mm more
/// from the base to the tooth; an arm from the gingiva is straight, 1.8 mm wide, as long as the
/// crown is wide and 7 mm more (our choice).
struct DerivedArm {
    ArmShape shape{};
    bool lengthIsDerived{};
    bool widthIsDerived{};
    bool isDerived() const noexcept { return lengthIsDerived || widthIsDerived; }
};
DerivedArm armOf(const Clasp& clasp, ArmMaterial material) noexcept;

struct ClaspMechanics {
    Tooth tooth{11_fdi};
    ClaspKind kind{};
    DerivedArm arm{};
    const Material* material{};
    double deflection{};    ///< mm: the undercut
    Range force{};          ///< N at the tip when it passes the height of contour
    Range rootStress{};     ///< MPa
    Range largestStress{};  ///< MPa, wherever it is largest
    double largestAt{};     ///< where: share of the length from the tip, 1 is the root
    Range setMargin{};      ///< strength over largest stress; below 1 it bends for good
    Range removal{};        ///< N along the path: over the slope below the contour and friction
};

/// nullopt: the undercut, its depth or the material is not given, or a size cannot be.
std::optional<ClaspMechanics> mechanicsOf(const Prescription& prescription, const Clasp& clasp);

/// Force along the path to pull a tip over a slope: F (mu + tan a) / (1 - mu tan a), wedge statics.
double removalForce(double tipForce, double slopeTangent, double friction) noexcept;

}  // namespace domain
