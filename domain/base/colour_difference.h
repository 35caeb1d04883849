/// How different two colours look: CIEDE2000.
///
/// Source: Sharma, Wu, Dalal, Color Research and Application 2005;30:21-30; ISO/CIE 11664-6, with
/// the parametric factors kL = kC = kH = 1.
#pragma once

#include "domain/base/lab_colour.h"

namespace domain {

struct Lab {
    double lightness{};
    double a{};
    double b{};
};

double colourDifference(const Lab& first, const Lab& second) noexcept;
double colourDifference(LabColour first, LabColour second) noexcept;

/// Differences half of the observers see, and half of them accept: Paravina et al., Journal of
/// Esthetic and Restorative Dentistry 2015 (175 observers).
inline constexpr double kPerceptible = 0.8;
inline constexpr double kAcceptable = 1.8;

}  // namespace domain
