/// The real clock of the machine, in UTC.
#pragma once

#include "domain/base/clock.h"

namespace actions {

class SystemClock : public domain::Clock {
public:
    domain::Instant now() const override;
};

}  // namespace actions
