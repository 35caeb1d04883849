#include "domain/drawing/palette.h"

#include <gtest/gtest.h>

namespace {

using namespace domain;

constexpr Light kLights[] = {Light::Light, Light::Dark};
// W3C WCAG 2.2, success criterion 1.4.3: contrast of text at least 4.5 to 1.
constexpr double kTextContrast = 4.5;

// The worked extremes of the WCAG 2.2 definition, and its formula at mid grey by hand:
// luminance of #767676 is 0.1812, (1 + 0.05) / (0.1812 + 0.05) = 4.54.
TEST(Contrast, IsThatOfTheStandard) {
    EXPECT_NEAR(contrast({0, 0, 0}, {255, 255, 255}), 21, 1e-9);
    EXPECT_NEAR(contrast({18, 52, 86}, {18, 52, 86}), 1, 1e-9);
    EXPECT_NEAR(contrast({0x76, 0x76, 0x76}, {255, 255, 255}), 4.54, 0.005);
    EXPECT_EQ(contrast({1, 2, 3}, {200, 100, 0}), contrast({200, 100, 0}, {1, 2, 3}));
}

TEST(ThePalette, KeepsEveryTextReadableOnGroundAndSheet) {
    for (const Light light : kLights)
        for (const Colour text : {Colour::Ink, Colour::Quiet, Colour::Accent, Colour::Ask,
                                  Colour::Stop, Colour::Good, Colour::Away})
            for (const Colour under : {Colour::Ground, Colour::Sheet})
                EXPECT_GE(contrast(rgbOf(text, light), rgbOf(under, light)), kTextContrast)
                    << static_cast<int>(text) << " on " << static_cast<int>(under);
}

TEST(ThePalette, KeepsTextReadableOnTheAccentAndOnTheFlags) {
    for (const Light light : kLights) {
        EXPECT_GE(contrast(rgbOf(Colour::OnAccent, light), rgbOf(Colour::Accent, light)),
                  kTextContrast);
        EXPECT_GE(contrast(rgbOf(Colour::Sheet, light), rgbOf(Colour::Stop, light)), kTextContrast);
    }
}

TEST(ThePalette, KeepsLinesAndTextReadableOnTheFillsOfThePicture) {
    for (const Light light : kLights)
        for (const Colour fill : {Colour::Tooth, Colour::Metal, Colour::Resin})
            EXPECT_GE(contrast(rgbOf(Colour::Edge, light), rgbOf(fill, light)), kTextContrast);
}

// The contrasts written beside the palette when it was chosen, against ground and sheet.
TEST(ThePalette, HasTheContrastsItWasChosenFor) {
    struct Row {
        Colour role;
        Light light;
        double ground;
        double sheet;
    };
    constexpr Row kRows[] = {
        {Colour::Ink, Light::Light, 14.3, 15.2},  {Colour::Ink, Light::Dark, 13.7, 12.1},
        {Colour::Quiet, Light::Light, 6.0, 6.3},  {Colour::Quiet, Light::Dark, 7.5, 6.6},
        {Colour::Accent, Light::Light, 7.3, 7.8}, {Colour::Accent, Light::Dark, 8.2, 7.2},
        {Colour::Ask, Light::Light, 6.4, 6.8},    {Colour::Ask, Light::Dark, 9.0, 8.0},
        {Colour::Stop, Light::Light, 7.6, 8.1},   {Colour::Stop, Light::Dark, 7.6, 6.8},
        {Colour::Good, Light::Light, 6.2, 6.5},   {Colour::Good, Light::Dark, 8.8, 7.8},
        {Colour::Away, Light::Light, 7.5, 7.9},   {Colour::Away, Light::Dark, 8.4, 7.4},
    };
    for (const Row& row : kRows) {
        const Rgb colour = rgbOf(row.role, row.light);
        EXPECT_NEAR(contrast(colour, rgbOf(Colour::Ground, row.light)), row.ground, 0.1);
        EXPECT_NEAR(contrast(colour, rgbOf(Colour::Sheet, row.light)), row.sheet, 0.1);
    }
}

}  // namespace
