/// The look of the house on screen: its colours, sizes and spacing, worn by the whole program.
#pragma once

#include <QApplication>
#include <QColor>
#include <QFont>

#include "domain/drawing/palette.h"

namespace desktop {

inline constexpr int kSmallText = 12;  ///< px, as all sizes here
inline constexpr int kPlainText = 14;
inline constexpr int kLargeText = 18;
inline constexpr int kHeadText = 24;
inline constexpr int kStep = 4;    ///< spacing goes in steps of this
inline constexpr int kTouch = 44;  ///< the least height of what a gloved finger presses

class Look {
public:
    explicit Look(domain::Light light) : light_{light} {}

    QColor of(domain::Colour role) const;

    QPalette palette() const;
    /// Flat controls with hairlines, in the colours of the palette.
    QString styleSheet() const;

private:
    domain::Light light_;
};

/// The base style, in which labels and tool tips show their text as it is: a name with "<b>" in it
/// is no markup.
void wearHouseStyle();

/// Dresses the program: the base style, the palette, the style sheet, the text size.
void wear(QApplication& program, const Look& look);

/// The system's own face in one of the sizes and the two weights of the house.
QFont face(int pixels, bool bold = false);

}  // namespace desktop
