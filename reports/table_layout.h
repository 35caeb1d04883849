/// Draws a table: its head again on every page, boxes to tick before its rows, room to write.
#pragma once

#include "reports/page_flow.h"

namespace reports {

void drawTable(PageFlow& flow, const Table& table);

}  // namespace reports
