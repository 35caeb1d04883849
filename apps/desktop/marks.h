/// The marks of the house: one shape per state, drawn with one stroke on a grid of sixteen.
#pragma once

#include <QPainter>

#include "apps/desktop/look.h"
#include "apps/desktop/models/mark.h"

namespace desktop {

/// The colour a mark is drawn in; the shape tells the state without it.
domain::Colour colourOf(models::Mark mark);

/// Paints the mark to fill a square box.
void paintMark(QPainter& painter, const QRectF& box, models::Mark mark, const Look& look);

}  // namespace desktop
