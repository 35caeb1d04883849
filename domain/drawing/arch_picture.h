/// The arch picture: a prescription seen from above its teeth, as one drawing for paper and screen.
///
/// The upper arch stands with its incisors up, the lower with its incisors down, the patient's
/// right on the viewer's left. Every line means the same without colour; what it means is told by
/// a legend of what is on this picture only. Places and lengths are those of a mean arch
/// (domain/teeth/arch_form), not of the patient.
#pragma once

#include <vector>

#include "domain/drawing/picture.h"
#include "domain/prescription/prescription.h"
#include "domain/rules/finding.h"

namespace domain {

struct ArchPictureOptions {
    Notation notation{Notation::Iso3950};  ///< of the tooth labels
    bool legend{true};                     ///< to the right of the arch
    int firstNumber{1};  ///< flag of the first finding; the others follow in their order
};

/// Draws what the prescription says and nothing it leaves open. The arch stands at the same place
/// whatever the options; the legend widens the picture.
Picture archPicture(const Prescription& prescription, const std::vector<Finding>& findings,
                    const ArchPictureOptions& options);

/// Where a tooth stands on the picture, for pointing at it.
struct ToothShape {
    Tooth tooth{11_fdi};
    std::vector<Point> outline{};
};

/// The sixteen teeth of an arch from the patient's right to the left, in mm of archPicture.
std::vector<ToothShape> toothShapes(Arch arch);

/// The size of the picture without its legend, the same for both arches.
inline constexpr double kArchPictureWidth = 100;
inline constexpr double kArchPictureHeight = 78;

}  // namespace domain
