/// Plausible prescriptions by the thousand, and faults to plant in them.
#pragma once

#include <optional>
#include <random>
#include <span>

#include "domain/prescription/prescription.h"

namespace population {

using Chance = std::mt19937_64;

/// A framework denture for a mouth that chance made, designed by the book: a rest at each end of
/// every space, clasps enough for the class, an indirect retainer where it rocks, a plate that
/// joins everything, and every paper given. nullopt: chance made no mouth such a denture fits.
std::optional<domain::Prescription> cleanDesign(Chance& chance);

/// One fault: the rule that must find it, and how it is planted. Gives false where the design has
/// no place for it.
struct Fault {
    std::string_view rule;
    bool (*plant)(domain::Prescription&, Chance&);
};
std::span<const Fault> faults();

}  // namespace population
