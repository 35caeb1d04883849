#include "domain/design/beam.h"

#include <cmath>
#include <numbers>

namespace domain {
namespace {

constexpr int kSteps = 64;  // even, for Simpson's rule

/// Millimetres between the line of a force at the tip and a place of the curve, or of a straight
/// arm, `along` mm from the tip.
double leverOnCurve(const ArmShape& arm, double along) noexcept {
    return arm.radius > 0 ? arm.radius * std::sin(along / arm.radius) : along;
}
/// The same on the run from the base.
double leverOnRun(const ArmShape& arm, double along) noexcept {
    return along - (arm.length - arm.run);
}
using Lever = double (*)(const ArmShape&, double) noexcept;

double widthAt(const ArmShape& arm, double along) noexcept {
    return arm.width * (arm.tip + (1 - arm.tip) * along / arm.length);
}

/// What one newton at the tip does at a place of the arm.
struct Bending {
    double flexibility{};  ///< lever^2 / I, 1/mm^2
    double stress{};       ///< MPa
};
Bending bendingAt(const ArmShape& arm, double along, Lever leverAt) noexcept {
    const double lever = leverAt(arm, along);
    const auto [inertia, farFibre] = stiffnessOf(arm.section, widthAt(arm, along));
    return {lever * lever / inertia, std::abs(lever) * farFibre / inertia};
}

/// The weights 1, 4, 2, 4 ... 4, 1 of Simpson's rule.
double weight(int step) noexcept {
    if (step == 0 || step == kSteps) return 1;
    return step % 2 == 1 ? 4 : 2;
}

}  // namespace

SectionStiffness stiffnessOf(ArmSection section, double width) noexcept {
    constexpr double kPi = std::numbers::pi;
    const double radius = width / 2;
    const double fourth = radius * radius * radius * radius;
    switch (section) {
        case ArmSection::Round:
            return {kPi / 4 * fourth, radius};
        case ArmSection::HalfRound:
            return {(kPi / 8 - 8 / (9 * kPi)) * fourth, (1 - 4 / (3 * kPi)) * radius};
    }
    return {};
}

ArmLoad loadOf(const ArmShape& arm, double modulus, double deflection) noexcept {
    double flexibility = 0;  // integral of lever^2 / I, 1/mm
    double stress = 0;       // of one newton, where it is largest
    double stressAt = 0;
    const auto integrate = [&](double from, double to, Lever leverAt) {
        for (int step = 0; step <= kSteps; ++step) {
            const double along = from + (to - from) * step / kSteps;
            const Bending bending = bendingAt(arm, along, leverAt);
            flexibility += weight(step) * bending.flexibility * (to - from) / kSteps / 3;
            if (bending.stress < stress) continue;
            stress = bending.stress;
            stressAt = along;
        }
    };
    const double curved = arm.length - arm.run;
    const Lever leverAtRoot = arm.run > 0 ? leverOnRun : leverOnCurve;
    integrate(0, curved, leverOnCurve);
    if (arm.run > 0) integrate(curved, arm.length, leverOnRun);
    const double force = deflection * modulus / flexibility;
    return {.force = force,
            .rootStress = force * bendingAt(arm, arm.length, leverAtRoot).stress,
            .largestStress = force * stress,
            .largestAt = stressAt / arm.length};
}

}  // namespace domain
