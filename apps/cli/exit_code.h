/// What the program's exit code says: 0 done or clean, 1 refused, 2 unusable input, 3 storage
/// trouble.
#pragma once

#include "domain/base/result.h"

namespace cli {

enum class Exit : std::uint8_t { Done = 0, Refused = 1, Unusable = 2, Storage = 3 };

constexpr Exit exitOf(domain::ErrorCode code) noexcept {
    switch (code) {
        case domain::ErrorCode::Refused:
        case domain::ErrorCode::Conflict:
            return Exit::Refused;
        case domain::ErrorCode::Unusable:
            return Exit::Unusable;
        case domain::ErrorCode::Unavailable:
            return Exit::Storage;
    }
    return Exit::Unusable;
}

}  // namespace cli
