/// What can be said about one tooth by pointing at it: its state, a part on it, its saddle.
#pragma once

#include <string>
#include <vector>

#include "domain/prescription/prescription.h"

namespace models {

/// One line of the menu of a tooth, and the prescription it would make.
struct ToothChoice {
    std::string group;  ///< "is", "rest", "clasp", "guide plate", "saddle", "take away"
    std::string word;   ///< "missing", "occlusal, mesial", "new saddle"
    bool holds{};       ///< it is so already
    domain::Prescription after;
};

/// Every choice for a tooth, in the order of the menu. Parts are offered only on a tooth that
/// stands, a saddle only for one that does not.
std::vector<ToothChoice> toothChoices(const domain::Prescription& prescription,
                                      domain::Tooth tooth);

}  // namespace models
