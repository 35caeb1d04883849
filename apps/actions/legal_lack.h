/// The names of an order put back into its prescription, and what the law asks of the whole of it.
#pragma once

#include "apps/actions/laboratory.h"
#include "domain/production/event.h"

namespace actions {

/// The prescription as it was read, names included; without them where they were erased.
domain::Result<domain::Prescription> inFull(const Laboratory& laboratory,
                                            const domain::Revision& revision);

/// What the legal contents of an order's prescription lack, with its names and the letterhead.
domain::Result<std::vector<domain::Finding>> legalLack(const Laboratory& laboratory,
                                                       const domain::Revision& revision);

}  // namespace actions
