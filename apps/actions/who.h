/// Who does something, how they prove it, and where they stand.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "domain/base/id.h"

namespace actions {

/// Given to every action that changes something or shows what not everybody may see.
struct Who {
    domain::PersonCode person;
    std::string key{};      ///< idempotency key; empty: a new one is made
    std::string token{};    ///< of their session, see signIn(); empty: not signed in
    std::string station{};  ///< code of the station they work at; empty: at none
    /// Version of the order they looked at when they decided; nullopt: whatever it is now.
    std::optional<std::int64_t> seen{};
};

/// Their key, or a new one that nobody used.
std::string keyOf(const Who& who);

}  // namespace actions
