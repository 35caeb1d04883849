#include "apps/actions/system_clock.h"

#include <chrono>

namespace actions {

domain::Instant SystemClock::now() const {
    const auto since = std::chrono::system_clock::now().time_since_epoch();
    return domain::Instant::ofMicroseconds(
        std::chrono::duration_cast<std::chrono::microseconds>(since).count());
}

}  // namespace actions
