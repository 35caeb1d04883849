/// How large the crowns are: mean mesio-distal and bucco-lingual diameters of permanent teeth.
///
/// Source: the table of measurements in Wheeler's Dental Anatomy, Physiology and Occlusion, from
/// memory; its sums to the second molars (111 mm upper, 106 mm lower) are the check.
#pragma once

#include "domain/base/quantity.h"
#include "domain/teeth/tooth.h"

namespace domain {

struct CrownSize {
    Microns mesiodistal;
    Microns buccolingual;
};

CrownSize crownSize(Tooth tooth) noexcept;

}  // namespace domain
