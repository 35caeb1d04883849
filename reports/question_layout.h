/// Draws a question: its text, why it is asked, and each place with boxes to tick and lines.
#pragma once

#include "reports/page_flow.h"

namespace reports {

void drawQuestion(PageFlow& flow, const Question& question);

/// mm of what must stay together: the text and the first place of it.
double leastHeightOf(PageFlow& flow, const Question& question);

}  // namespace reports
