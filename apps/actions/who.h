/// Who does something, how they prove it, and where they stand.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>

#include "domain/base/id.h"
#include "storage/secrets.h"

namespace actions {

/// Given to every action that changes something or shows what not everybody may see.
struct Who {
    domain::PersonCode person;
    std::string key{};      ///< idempotency key; empty: a new one is made
    std::string token{};    ///< of their session, see signIn(); empty: not signed in
    std::string station{};  ///< code of the station they work at; empty: at none
    /// Version of the order they looked at when they decided; nullopt: whatever it is now.
    std::optional<std::int64_t> seen{};
    /// Given once more for this one action, where it asks for that; see Deed::asksPassword.
    std::shared_ptr<const storage::Secret> password{};
};

/// The same person, who gives their password once more.
Who proving(Who who, const storage::Secret& password);

/// Their key, or a new one that nobody used.
std::string keyOf(const Who& who);

}  // namespace actions
