/// One event of every kind the ledger can hold, with and without what may be absent: what the
/// golden bytes of every format were made from. Add to the ends; never change or reorder what is
/// here.
#pragma once

#include <vector>

#include "domain/production/event.h"
#include "domain/workshop/workshop_event.h"

namespace support {

std::vector<domain::Event> orderSamples();
std::vector<domain::WorkshopEvent> workshopSamples();
/// One record of every kind.
std::vector<domain::StageRecord> everyRecord();

}  // namespace support
