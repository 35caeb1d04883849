/// Breaking text into lines by the widths of its characters.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "reports/pdf_document.h"

namespace reports {

/// The text as it is printed, in lines no wider than `width` mm. Lines end at spaces; a word wider
/// than a line is broken. No character is lost but the spaces the lines end at.
std::vector<std::string> brokenLines(PdfDocument& pdf, std::string_view text, const Type& type,
                                     double width);

}  // namespace reports
