/// The fulcrum line: the axis through two rests about which a denture rocks when its free end, or
/// its front, is pulled away from the tissue.
///
/// Sources: the axis exists in Class I and II, never in Class III, seldom in Class IV (University
/// of Oklahoma, removable partial denture review questions, question 1); through the most posterior
/// rest of each side, in Class IV through the two most mesial ones (teaching notes after McCracken;
/// secondary source). Distance of a rest from it: |(B - A) x (R - A)| / |B - A|.
#pragma once

#include <optional>
#include <span>

#include "domain/design/part_places.h"

namespace domain {

/// How far along the arch a place on a tooth lies: quarter teeth from the patient's right third
/// molar.
int arcPlace(Tooth tooth, std::optional<Surface> side) noexcept;

struct Fulcrum {
    Rest right{};  ///< the rest it runs through towards the patient's right
    Rest left{};   ///< and towards the left
    Point from{};  ///< where they lie, mm
    Point to{};
    Point base{};    ///< the middle of the base that rocks
    Point farEnd{};  ///< its end farthest from the line

    /// mm from the line; above 0 across from the base, below 0 on its side.
    double across(Point place) const noexcept;
    /// mm; what lies nearer lies on the line.
    static constexpr double kOnTheLine = 0.1;
    /// Whether a rest there resists the rocking.
    bool isAcross(Point place) const noexcept { return across(place) > kOnTheLine; }
    /// mm from the line to the far end of the base: the arm of the load.
    double loadArm() const noexcept { return -across(farEnd); }
};

/// nullopt where nothing rocks (Class III, no class) or where two rests to rock on are missing.
std::optional<Fulcrum> fulcrumOf(const Prescription& prescription, const ArchForm& form,
                                 std::span<const EdentulousArea> areas,
                                 std::optional<Kennedy> kennedy);
/// The same on the arch the prescription gives.
std::optional<Fulcrum> fulcrumOf(const Prescription& prescription);

/// A definite seat an indirect retainer may have: the cingulum of a canine or an occlusal fossa.
struct RetainerSeat {
    Tooth tooth{11_fdi};
    Surface side{Surface::Mesial};
    RestKind kind{};
    double distance{};  ///< mm across the line
};

/// The seat farthest across the line on a tooth that stands; nullopt where none lies across. An
/// occlusal seat is taken before a cingulum that is less than a tenth farther away. Source: at
/// right angles to the line and as far away as practicable, in a definite seat (teaching notes
/// after McCracken, secondary source); the tenth is ours, and agrees with the published example of
/// those notes.
std::optional<RetainerSeat> bestSeat(const Prescription& prescription, const ArchForm& form,
                                     const Fulcrum& fulcrum);

}  // namespace domain
