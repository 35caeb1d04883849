/// Where the time comes from: the real clock in the programs, one set by hand in the tests.
#pragma once

#include "domain/base/date.h"

namespace domain {

class Clock {
public:
    virtual ~Clock() = default;
    virtual Instant now() const = 0;

protected:
    Clock() = default;
    Clock(const Clock&) = default;
    Clock& operator=(const Clock&) = default;
};

}  // namespace domain
