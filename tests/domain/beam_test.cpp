#include "domain/design/beam.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_odeiv2.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "tests/oracles/clasp_forces.h"

namespace {

using namespace domain;

constexpr double kCobaltChromium = 220'000;  // MPa
constexpr double kPi = std::numbers::pi;

ArmShape round(double width, double length, double tip = 1) {
    return {.section = ArmSection::Round, .width = width, .tip = tip, .length = length};
}
ArmShape halfRound(double width, double length, double tip = 1) {
    return {.section = ArmSection::HalfRound, .width = width, .tip = tip, .length = length};
}
ArmShape bent(ArmShape arm, double radius, double run = 0) {
    arm.radius = radius;
    arm.run = run;
    return arm;
}

// Round I = pi d^4 / 64; half-round off its flat I = 0.10976 r^4, far fibre 0.5756 r; at the same
// width a round arm is 7.16 times as stiff.
TEST(Sections, HaveTheConstantsOfTheHandbooks) {
    const auto wire = stiffnessOf(ArmSection::Round, 2);
    EXPECT_NEAR(wire.inertia, kPi * 16 / 64, 1e-12);
    EXPECT_EQ(wire.farFibre, 1);
    const auto cast = stiffnessOf(ArmSection::HalfRound, 2);
    EXPECT_NEAR(cast.inertia, 0.10976, 5e-6);
    EXPECT_NEAR(cast.farFibre, 0.5756, 5e-5);
    EXPECT_NEAR(wire.inertia / cast.inertia, 7.16, 0.005);
}

TEST(AnEvenStraightArm, IsAsStiffAndAsStressedAsTheTableOfEvenBeams) {
    for (const oracles::EvenBeam& row : oracles::kEvenBeams) {
        const ArmShape arm =
            row.halfRound ? halfRound(row.width, row.length) : round(row.width, row.length);
        const ArmLoad load = loadOf(arm, row.modulus * 1000, row.deflection);
        EXPECT_NEAR(load.force, row.force, 0.006) << row.width << " x " << row.length;
        EXPECT_NEAR(load.rootStress, row.stress, 0.6) << row.width << " x " << row.length;
    }
}

// Chen 2024: force goes with d^4 / L^3; the stress is largest at the root.
TEST(AnEvenStraightArm, FollowsTheScalingLawAndIsMostStressedAtItsRoot) {
    const ArmLoad load = loadOf(round(1, 10), kCobaltChromium, 0.25);
    EXPECT_NEAR(loadOf(round(2, 10), kCobaltChromium, 0.25).force / load.force, 16, 1e-9);
    EXPECT_NEAR(loadOf(round(1, 20), kCobaltChromium, 0.25).force / load.force, 0.125, 1e-9);
    EXPECT_EQ(load.largestAt, 1);
    EXPECT_EQ(load.largestStress, load.rootStress);
}

// The closed form of a cone: flexibility is that of the even arm over the ratio of the tip.
TEST(ATaperedStraightArm, IsSofterByTheRatioOfItsTip) {
    for (const double tip : {0.3, 0.5, 0.8, 1.0}) {
        EXPECT_NEAR(loadOf(round(1, 12, tip), kCobaltChromium, 0.25).force /
                        loadOf(round(1, 12), kCobaltChromium, 0.25).force,
                    tip, 2e-5);
        EXPECT_NEAR(loadOf(halfRound(1.4, 12, tip), kCobaltChromium, 0.25).force /
                        loadOf(halfRound(1.4, 12), kCobaltChromium, 0.25).force,
                    tip, 2e-5);
    }
}

// Stress goes with u / (k + (1 - k) u)^3, u from the tip: largest at u = k / (2 (1 - k)), that is
// in the middle at k = 1/2, and at the root from k = 2/3 on.
TEST(ATaperedStraightArm, IsMostStressedWhereTheCalculusSays) {
    const ArmLoad half = loadOf(halfRound(1.4, 12, 0.5), kCobaltChromium, 0.25);
    EXPECT_NEAR(half.largestAt, 0.5, 1e-9);
    EXPECT_NEAR(half.largestStress / half.rootStress, 0.5 / std::pow(0.75, 3), 1e-9);
    EXPECT_EQ(loadOf(halfRound(1.4, 12, 0.7), kCobaltChromium, 0.25).largestAt, 1);
}

// Closed form of a thin even arc: flexibility R^3 (phi / 2 - sin(2 phi) / 4) / E I.
TEST(AnEvenArc, IsAsStiffAsItsClosedForm) {
    const double radius = 4;
    for (const double angle : {0.5, 1.0, kPi / 2, 2.3}) {
        const double inertia = kPi / 64;
        const double flexibility = std::pow(radius, 3) * (angle / 2 - std::sin(2 * angle) / 4) /
                                   (kCobaltChromium * inertia);
        const ArmLoad load = loadOf(bent(round(1, radius * angle), radius), kCobaltChromium, 0.25);
        EXPECT_NEAR(load.force * flexibility / 0.25, 1, 1e-6) << angle;
    }
}

// Geramy, Journal of Indian Prosthodontic Society 2007;7:118-122: of arms equally long the more
// strongly curved holds more.
TEST(ACurvedArm, HoldsMoreTheMoreItIsCurved) {
    double before = loadOf(round(1, 10), kCobaltChromium, 0.25).force;
    for (const double radius : {20.0, 10.0, 6.0, 4.5}) {
        const double now = loadOf(bent(round(1, 10), radius), kCobaltChromium, 0.25).force;
        EXPECT_GT(now, before) << radius;
        before = now;
    }
}

// A straight part across the curve adds the flexibility of a post: run^3 / 3 E I.
TEST(ARunFromTheBase, AddsTheFlexibilityOfAPost) {
    const double radius = 4;
    const double arc = radius * kPi / 2;
    const double unbent = 0.25 / loadOf(bent(round(1, arc), radius), kCobaltChromium, 0.25).force;
    const double all =
        0.25 / loadOf(bent(round(1, arc + 8), radius, 8), kCobaltChromium, 0.25).force;
    EXPECT_NEAR(all - unbent, 8.0 * 8 * 8 / (3 * kCobaltChromium * kPi / 64), 1e-9);
}

struct Tapered {
    ArmShape arm;
    double inertiaAt(double fromRoot) const {
        const double share = 1 - fromRoot / arm.length;
        return stiffnessOf(arm.section, arm.width * (arm.tip + (1 - arm.tip) * share)).inertia;
    }
};

// The GNU Scientific Library integrates the flexibility of the same arm by adaptive quadrature.
TEST(ATaperedArc, AgreesWithAdaptiveQuadratureOfAGeneralLibrary) {
    const Tapered tapered{bent(halfRound(1.4, 12.4, 0.5), 5.25)};
    gsl_function integrand{[](double along, void* data) {
                               const auto& beam = *static_cast<const Tapered*>(data);
                               const double lever =
                                   beam.arm.radius * std::sin(along / beam.arm.radius);
                               return lever * lever / beam.inertiaAt(beam.arm.length - along);
                           },
                           const_cast<Tapered*>(&tapered)};
    auto* workspace = gsl_integration_workspace_alloc(200);
    double integral = 0;
    double doubt = 0;
    ASSERT_EQ(gsl_integration_qags(&integrand, 0, tapered.arm.length, 0, 1e-12, 200, workspace,
                                   &integral, &doubt),
              GSL_SUCCESS);
    gsl_integration_workspace_free(workspace);
    const double force = 0.25 * kCobaltChromium / integral;
    EXPECT_NEAR(loadOf(tapered.arm, kCobaltChromium, 0.25).force / force, 1, 1e-6);
}

struct Loaded {
    Tapered tapered;
    double force;
};

// And it steps the differential equation of the deflected line, y'' = M / E I, from the root.
TEST(ATaperedStraightArm, AgreesWithTheDifferentialEquationSolvedByAGeneralLibrary) {
    const Tapered tapered{round(1.2, 14, 0.4)};
    const ArmLoad load = loadOf(tapered.arm, kCobaltChromium, 0.25);
    Loaded loaded{tapered, load.force};
    gsl_odeiv2_system system{[](double fromRoot, const double y[], double slope[], void* data) {
                                 const auto& beam = *static_cast<const Loaded*>(data);
                                 slope[0] = y[1];
                                 slope[1] = beam.force * (beam.tapered.arm.length - fromRoot) /
                                            (kCobaltChromium * beam.tapered.inertiaAt(fromRoot));
                                 return static_cast<int>(GSL_SUCCESS);
                             },
                             nullptr, 2, &loaded};
    auto* driver =
        gsl_odeiv2_driver_alloc_y_new(&system, gsl_odeiv2_step_rk8pd, 1e-3, 1e-12, 1e-10);
    double at = 0;
    double deflection[2] = {0, 0};
    ASSERT_EQ(gsl_odeiv2_driver_apply(driver, &at, tapered.arm.length, deflection), GSL_SUCCESS);
    gsl_odeiv2_driver_free(driver);
    EXPECT_NEAR(deflection[0], 0.25, 1e-5);
}

// International Journal of Prosthodontics 2006;19:371-2: force is about proportional to the
// undercut, and titanium gives about half of what cobalt-chromium gives (moduli 110 and 220 GPa).
TEST(MeasuredClasps, BehaveAsALinearSpringWithTheRatioOfTheModuli) {
    const ArmShape arm = bent(halfRound(1.4, 12.4, 0.5), 5.25);
    for (const oracles::MeasuredForce& row : oracles::kTwinClasps) {
        const double ratio = loadOf(arm, kCobaltChromium, row.undercut).force /
                             loadOf(arm, kCobaltChromium, 0.25).force;
        EXPECT_NEAR(row.cobaltChromium / oracles::kTwinClasps[0].cobaltChromium, ratio,
                    0.08 * ratio);
        const double titanium = loadOf(arm, 110'000, row.undercut).force /
                                loadOf(arm, kCobaltChromium, row.undercut).force;
        EXPECT_NEAR(row.titanium / row.cobaltChromium, titanium, 0.04);
    }
}

}  // namespace
