#include "apps/desktop/look.h"

#include <gtest/gtest.h>

#include <QPalette>
#include <cmath>

namespace {

using desktop::Look;
using domain::Colour;
using domain::Light;

/// Relative luminance and contrast ratio as defined in W3C WCAG 2.2, section 6.
double luminance(const QColor& colour) {
    const auto linear = [](double part) {
        return part <= 0.04045 ? part / 12.92 : std::pow((part + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) +
           0.0722 * linear(colour.blueF());
}

double contrast(const QColor& one, const QColor& other) {
    const double lighter = std::max(luminance(one), luminance(other));
    const double darker = std::min(luminance(one), luminance(other));
    return (lighter + 0.05) / (darker + 0.05);
}

/// W3C WCAG 2.2, success criterion 1.4.3 (AA).
constexpr double kLeastForText = 4.5;
/// Success criterion 1.4.11: the boundary of a control.
constexpr double kLeastForShapes = 3.0;

TEST(Look, TheFormulaGivesTheRatioOfBlackOnWhiteThatTheStandardNames) {
    EXPECT_NEAR(contrast(Qt::black, Qt::white), 21.0, 1e-9);
    EXPECT_NEAR(contrast(Qt::red, Qt::red), 1.0, 1e-9);
}

class InEachLight : public testing::TestWithParam<Light> {};

TEST_P(InEachLight, EveryInkReadsOnGroundAndOnSheet) {
    const Look look{GetParam()};
    for (const Colour ink : {Colour::Ink, Colour::Quiet, Colour::Accent, Colour::Ask, Colour::Stop,
                             Colour::Good, Colour::Away})
        for (const Colour under : {Colour::Ground, Colour::Sheet})
            EXPECT_GE(contrast(look.of(ink), look.of(under)), kLeastForText)
                << "ink " << static_cast<int>(ink) << " on " << static_cast<int>(under);
    EXPECT_GE(contrast(look.of(Colour::OnAccent), look.of(Colour::Accent)), kLeastForText);
}

TEST_P(InEachLight, WhatIsChosenAndTypedReadsInEveryGroupOfThePalette) {
    const QPalette palette = Look{GetParam()}.palette();
    using Role = QPalette::ColorRole;
    constexpr std::pair<Role, Role> kPairs[] = {{QPalette::Text, QPalette::Base},
                                                {QPalette::WindowText, QPalette::Window},
                                                {QPalette::ButtonText, QPalette::Button},
                                                {QPalette::HighlightedText, QPalette::Highlight},
                                                {QPalette::PlaceholderText, QPalette::Base},
                                                {QPalette::ToolTipText, QPalette::ToolTipBase}};
    for (const auto group : {QPalette::Active, QPalette::Inactive, QPalette::Disabled})
        for (const auto& [ink, under] : kPairs)
            EXPECT_GE(contrast(palette.color(group, ink), palette.color(group, under)),
                      kLeastForText)
                << "role " << ink << " on " << under << " in group " << group;
}

TEST_P(InEachLight, TheEdgeOfAControlIsSeen) {
    const Look look{GetParam()};
    EXPECT_GE(contrast(look.of(Colour::Quiet), look.of(Colour::Sheet)), kLeastForShapes);
    EXPECT_GE(contrast(look.of(Colour::Accent), look.of(Colour::Sheet)), kLeastForShapes);
}

TEST_P(InEachLight, NoPlaceholderIsLeftInTheStyleSheet) {
    EXPECT_FALSE(Look{GetParam()}.styleSheet().contains(u'%'));
}

INSTANTIATE_TEST_SUITE_P(Look, InEachLight, testing::Values(Light::Light, Light::Dark));

}  // namespace
