/// The few marks that papers share: boxes to tick, flags with numbers, the triangle of a caution.
#pragma once

#include "reports/paper.h"
#include "reports/pdf_document.h"

namespace reports {

/// A box, empty or ticked, or a triangle; `corner` is its upper left one, in mm.
void drawCheck(PdfDocument& pdf, domain::Point corner, CheckState state);

/// The flag as the arch picture shows it: outlined for missing, filled for a conflict, dashed for
/// a caution.
void drawFlag(PdfDocument& pdf, domain::Point corner, const FlagNumber& flag);

/// A triangle with an exclamation mark, as high as given in mm.
void drawCautionMark(PdfDocument& pdf, domain::Point corner, double height);

}  // namespace reports
