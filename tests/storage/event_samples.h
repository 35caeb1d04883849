/// One event of every kind the ledger can hold, with and without what may be absent: what the
/// golden bytes of every format were made from. Add to the ends; never change or reorder what is
/// here.
#pragma once

#include <vector>

#include "domain/production/event.h"
#include "domain/workshop/access_entry.h"
#include "domain/workshop/workshop_event.h"

namespace support {

std::vector<domain::Event> orderSamples();
std::vector<domain::WorkshopEvent> workshopSamples();
/// Kinds and fields that came after format 4: no earlier one holds them.
std::vector<domain::WorkshopEvent> laterWorkshopSamples();
/// One entry of every kind the access log can hold.
std::vector<domain::AccessEntry> accessSamples();
/// One record of every kind.
std::vector<domain::StageRecord> everyRecord();

/// An answer by which something is kept as prescribed.
domain::Event keptSample();

}  // namespace support
