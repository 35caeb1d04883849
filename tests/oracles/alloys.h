/// Alloys against ISO 22674, and worked examples of wax turned into metal.
#pragma once

#include <string_view>

namespace oracles {

/// Ranges over the orientations of printing: modulus GPa, proof strength MPa, elongation %.
/// Source: Advances in Materials Science and Engineering 2018, article 8213023, table 2.
struct AlloyRow {
    std::string_view name;
    double modulus[2];
    double proofStrength[2];
    double elongation[2];
};
inline constexpr AlloyRow kAsBuilt{"Co-Cr-Mo, as built", {98, 112}, {674, 783}, {5.7, 14.8}};
inline constexpr AlloyRow kHeatTreated{
    "Co-Cr-Mo, heat treated", {106, 165}, {757, 1002}, {8.3, 16.7}};
inline constexpr AlloyRow kHeatTreatedTungsten{
    "Co-Cr-W, heat treated", {187, 216}, {651, 669}, {15, 18}};

/// Grams. Sources: published wax-to-metal tables; the last two worked by hand from densities 8.4
/// and 4.51 over 0.93 g/cm^3, rounded to the factors 9.0 and 4.85 the bench uses.
struct WaxExample {
    double pattern;
    double alloyDensity;
    double patternDensity;
    double button;
    double charge;
};
inline constexpr WaxExample kWaxExamples[] = {
    {5.5, 13.5, 1.0, 0, 74.25},        // 5 g of wax and a tenth for the button, gold of SG 13.5
    {9.0, 10.4, 1.0, 0, 93.6},         // 9 g of wax, SG 10.4
    {0.56, 10.36, 1.09, 0.532, 5.85},  // a resin pattern of 0.56 g, and a tenth of the metal
    {1.6, 9.0, 1.0, 5, 19.4},          // 1.0 g of framework, 0.6 g of sprues, Co-Cr
    {1.6, 4.85, 1.0, 5, 12.76},        // the same in titanium
};

}  // namespace oracles
