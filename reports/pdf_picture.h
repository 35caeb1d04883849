/// Paints a picture of the domain onto a PDF page.
#pragma once

#include "reports/pdf_document.h"

namespace reports {

/// The picture with its upper left corner at a place, `scale` times its own mm.
void draw(PdfDocument& pdf, const domain::Picture& picture, domain::Point corner, double scale);

}  // namespace reports
