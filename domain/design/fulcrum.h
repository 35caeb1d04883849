/// The fulcrum line: the axis through two rests about which a denture rocks when its free end, or
/// its front, is pulled away from the tissue.
///
/// Sources: the axis exists in Class I and II, never in Class III, seldom in Class IV (University
/// of Oklahoma, removable partial denture review questions, question 1); through the most posterior
/// rest of each side, in Class IV through the two most mesial ones (teaching notes after McCracken;
/// secondary source).
#pragma once

#include <optional>

#include "domain/prescription/prescription.h"

namespace domain {

/// How far along the arch a place on a tooth lies: quarter teeth from the patient's right third
/// molar. On a convex arch a line through two places parts all others into those between the two
/// and those beyond them, so no lengths are needed to tell its sides.
int arcPlace(Tooth tooth, std::optional<Surface> side) noexcept;

struct Fulcrum {
    int right{};         ///< arc place of the rest it runs through on the patient's right
    int left{};          ///< and on the left
    bool baseBetween{};  ///< Class IV: the base lies between the two rests; else beyond them

    /// Whether a rest there resists the rocking: it lies across the line from the base.
    bool isAcross(int place) const noexcept {
        const bool between = right < place && place < left;
        const bool beyond = place < right || left < place;
        return baseBetween ? beyond : between;
    }
};

/// nullopt where nothing rocks (Class III, no class) or where two rests to rock on are missing.
std::optional<Fulcrum> fulcrumOf(const Prescription& prescription);

}  // namespace domain
