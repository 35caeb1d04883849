#include "domain/teeth/arch_form.h"

#include <gtest/gtest.h>

#include <cmath>

#include "domain/teeth/crown_size.h"

namespace {

using namespace domain;

constexpr Arch kArches[] = {Arch::Upper, Arch::Lower};

// Braun et al., Angle Orthodontist 1998;68:29-36: the curve is as high as the arch is deep and
// ends at half its width on both sides.
TEST(TheArchCurve, ReachesItsDepthAtTheMidlineAndZeroAtItsEnds) {
    for (const Arch arch : kArches) {
        const auto [width, depth] = meanExtent(arch);
        EXPECT_NEAR(ArchForm::mean(arch).curve(0), depth, 0.01);
        EXPECT_NEAR(ArchForm::mean(arch).curve(width / 2), 0, 1e-9);
        EXPECT_NEAR(ArchForm::mean(arch).curve(-width / 2), 0, 1e-9);
    }
}

// The published formula, worked by hand at a quarter of the width: 3.0314 * 44 * (0.75 * 0.25)^0.8.
TEST(TheArchCurve, FollowsThePublishedFormulaBetween) {
    EXPECT_NEAR(ArchForm::mean(Arch::Upper).curve(14.5), 3.0314 * 44 * std::pow(0.1875, 0.8), 1e-9);
    EXPECT_NEAR(ArchForm::mean(Arch::Upper).curve(14.5), 34.954, 0.001);
}

// The sums of Wheeler's table of crowns to the second molars (from memory), and the curve as long.
TEST(TheArchCurve, IsAsLongAsTheCrownsThatStandOnIt) {
    for (const auto& [arch, sum] : {std::pair{Arch::Upper, 111.0}, std::pair{Arch::Lower, 106.0}}) {
        double crowns = 0;
        for (int position = 1; position <= 14; ++position)
            crowns +=
                static_cast<double>(crownSize(Tooth::at(arch, position)).mesiodistal.count()) /
                1000;
        EXPECT_NEAR(crowns, sum, 1e-9);
        EXPECT_NEAR(2 * ArchForm::mean(arch).halfLength(), sum, 1.0);
    }
}

TEST(TheTeethOnTheArch, StandSymmetrically) {
    for (const Arch arch : kArches)
        for (int position = 0; position < 8; ++position) {
            const ToothPlace right = ArchForm::mean(arch).place(Tooth::at(arch, position));
            const ToothPlace left = ArchForm::mean(arch).place(Tooth::at(arch, 15 - position));
            EXPECT_NEAR(right.centre.x, -left.centre.x, 1e-9);
            EXPECT_NEAR(right.centre.y, left.centre.y, 1e-9);
            EXPECT_NEAR(right.outward.x, -left.outward.x, 1e-9);
            EXPECT_NEAR(right.mesial.y, left.mesial.y, 1e-9);
        }
}

TEST(TheTeethOnTheArch, TouchOneAnotherFromTheMidlineOutwards) {
    for (const Arch arch : kArches) {
        EXPECT_NEAR(ArchForm::mean(arch).place(Tooth::at(arch, 7)).to, 0, 1e-9);
        for (int position = 0; position < 15; ++position)
            EXPECT_NEAR(ArchForm::mean(arch).place(Tooth::at(arch, position)).to,
                        ArchForm::mean(arch).place(Tooth::at(arch, position + 1)).from, 1e-9);
    }
}

TEST(TheTeethOnTheArch, LookOutwardsAtRightAnglesToTheArch) {
    for (const Arch arch : kArches)
        for (int position = 0; position < kTeethInArch; ++position) {
            const ToothPlace place = ArchForm::mean(arch).place(Tooth::at(arch, position));
            EXPECT_NEAR(std::hypot(place.outward.x, place.outward.y), 1, 1e-9);
            EXPECT_NEAR(place.outward.x * place.mesial.x + place.outward.y * place.mesial.y, 0,
                        1e-9);
            const Point fromMiddle = place.centre - Point{0, 10};
            EXPECT_GT(fromMiddle.x * place.outward.x + fromMiddle.y * place.outward.y, 0);
        }
}

TEST(TheTeethOnTheArch, CarryTheThirdMolarsOnBehindTheSecond) {
    for (const Arch arch : kArches) {
        const ToothPlace second = ArchForm::mean(arch).place(Tooth::at(arch, 1));
        const ToothPlace third = ArchForm::mean(arch).place(Tooth::at(arch, 0));
        EXPECT_LT(third.centre.y, second.centre.y);
        EXPECT_LT(third.centre.y, 0);
        EXPECT_NEAR(third.centre.x, -meanExtent(arch).width / 2, 0.01);
    }
}

}  // namespace
