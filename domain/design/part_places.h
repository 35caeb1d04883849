/// Where the parts of a design lie on the arch, in the plane of the arch and in millimetres.
#pragma once

#include "domain/design/kennedy.h"
#include "domain/prescription/prescription.h"
#include "domain/teeth/arch_form.h"

namespace domain {

/// The measured width and depth where the survey gives them and they can be; else the mean ones.
ArchExtent extentOf(const Prescription& prescription) noexcept;

/// The middle of the rest in its seat.
Point placeOf(const ArchForm& form, const Rest& rest) noexcept;
/// Where a minor connector crosses the gingiva: in its embrasure, or at the middle of its tooth.
double alongOf(const ArchForm& form, const MinorConnector& connector) noexcept;

/// How far along the arch an area begins and ends, mm from the midline.
struct Stretch {
    double from{};
    double to{};
    double middle() const noexcept { return (from + to) / 2; }
};
Stretch stretchOf(const ArchForm& form, Arch arch, const EdentulousArea& area) noexcept;

}  // namespace domain
