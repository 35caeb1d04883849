/// Paints a picture of the domain on a widget or an image.
#pragma once

#include <QPainter>

#include "apps/desktop/look.h"
#include "domain/drawing/picture.h"

namespace desktop {

/// Paints the picture with its top left corner at `place`, `scale` pixels for each millimetre.
void paintPicture(QPainter& painter, const domain::Picture& picture, QPointF place, qreal scale,
                  const Look& look);

}  // namespace desktop
