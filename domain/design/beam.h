/// A clasp arm as a spring: a tapered cantilever, straight or bent round a tooth, pushed aside at
/// its tip.
///
/// Euler-Bernoulli bending of a thin beam, so shear and the stress correction of a strongly curved
/// beam (a few per cent here) are left out. Sources: beam theory; that force goes with d^4 / L^3
/// and that an even arm breaks at its root: Chen, BMC Oral Health 2024;24, doi
/// 10.1186/s12903-024-05334-y.
#pragma once

#include "domain/prescription/clasp.h"

namespace domain {

/// Lengths in mm. `width` is the diameter of a round arm and the flat of a half-round one, which
/// bends off its flat; it shrinks evenly to `width * tip` at the tip.
struct ArmShape {
    ArmSection section{};
    double width{};
    double tip{1};     ///< above 0, at most 1
    double length{};   ///< along the arm, from root to tip
    double radius{0};  ///< of the curve its front part follows; 0: it is straight all the way
    double run{0};  ///< of the length: a straight part at the root, across the plane of the curve
};

/// Second moment of area in mm^4 and the far fibre in mm of a section that wide.
struct SectionStiffness {
    double inertia{};
    double farFibre{};
};
SectionStiffness stiffnessOf(ArmSection section, double width) noexcept;

struct ArmLoad {
    double force{};          ///< N at the tip
    double rootStress{};     ///< MPa at the root
    double largestStress{};  ///< MPa, wherever it is largest
    double largestAt{};      ///< where: share of the length from the tip, 1 is the root
};

/// What it takes to push the tip `deflection` mm aside, at a modulus of `modulus` MPa. All sizes
/// above 0.
ArmLoad loadOf(const ArmShape& arm, double modulus, double deflection) noexcept;

}  // namespace domain
