#include "apps/actions/staleness.h"

namespace actions {

bool isStale(std::optional<std::int64_t> seen, std::int64_t now) noexcept {
    return seen && *seen != now;
}

}  // namespace actions
