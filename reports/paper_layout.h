/// Draws a composed paper page by page: header and footer, then block after block, nothing lost at
/// a page's end and nothing on top of anything else.
#pragma once

#include "reports/paper.h"
#include "reports/pdf_document.h"

namespace reports {

void draw(PdfDocument& pdf, const Paper& paper);

}  // namespace reports
