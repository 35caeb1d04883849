/// Forces of clasps, measured and computed elsewhere.
#pragma once

namespace oracles {

/// Twin clasps on a sphere, twenty each: mean force in N at an undercut in mm.
/// Source: International Journal of Prosthodontics 2006;19:371-2.
struct MeasuredForce {
    double undercut;
    double cobaltChromium;
    double titanium;
};
inline constexpr MeasuredForce kTwinClasps[] = {
    {0.25, 2.34, 1.24},
    {0.50, 4.65, 2.34},
    {0.75, 7.56, 3.70},
};

/// Straight even cantilevers pushed aside at the tip: E in GPa, sizes in mm, force in N, stress at
/// the root in MPa. Round: worked by hand from F = 3 E I d / L^3 and s = 3 E c d / L^2 with
/// I = pi d^4 / 64; half-round off its flat: I = 0.10976 r^4, far fibre 0.5756 r.
struct EvenBeam {
    bool halfRound;
    double modulus;
    double width;
    double length;
    double deflection;
    double force;
    double stress;
};
inline constexpr EvenBeam kEvenBeams[] = {
    {false, 220, 0.8, 10, 0.25, 3.32, 660},  {false, 220, 0.8, 10, 0.50, 6.64, 1320},
    {false, 220, 0.8, 15, 0.25, 0.98, 293},  {false, 220, 0.8, 15, 0.50, 1.97, 587},
    {false, 220, 1.0, 10, 0.25, 8.10, 825},  {false, 220, 1.0, 10, 0.50, 16.20, 1650},
    {false, 220, 1.0, 15, 0.25, 2.40, 367},  {false, 220, 1.0, 15, 0.50, 4.80, 733},
    {false, 220, 1.2, 10, 0.25, 16.79, 990}, {false, 220, 1.2, 10, 0.50, 33.59, 1980},
    {false, 220, 1.2, 15, 0.25, 4.98, 440},  {false, 220, 1.2, 15, 0.50, 9.95, 880},
    {false, 110, 0.8, 10, 0.25, 1.66, 330},  {false, 110, 1.0, 15, 0.25, 1.20, 183},
    {false, 110, 1.2, 10, 0.50, 16.79, 990}, {false, 91, 0.8, 10, 0.25, 1.37, 273},
    {false, 91, 1.0, 15, 0.50, 1.99, 303},   {false, 91, 1.2, 10, 0.25, 6.95, 410},
    {false, 3.74, 1.2, 10, 0.25, 0.29, 17},  {false, 3.74, 1.2, 10, 0.50, 0.57, 34},
    {true, 220, 1.2, 10, 0.25, 2.35, 570},   {true, 220, 1.2, 15, 0.25, 0.70, 253},
    {true, 220, 1.4, 10, 0.25, 4.35, 665},   {true, 220, 1.4, 15, 0.25, 1.29, 295},
    {true, 220, 1.6, 10, 0.25, 7.42, 760},   {true, 220, 1.6, 15, 0.25, 2.20, 338},
    {true, 220, 1.8, 10, 0.25, 11.88, 855},  {true, 220, 1.8, 15, 0.25, 3.52, 380},
    {true, 220, 2.0, 10, 0.25, 18.11, 950},  {true, 220, 2.0, 15, 0.25, 5.37, 422},
};

}  // namespace oracles
