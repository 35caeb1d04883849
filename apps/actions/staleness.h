/// Whether somebody decides on an order as it no longer is.
#pragma once

#include <cstdint>
#include <optional>

namespace actions {

/// `seen`: the version the person looked at; nullopt: they take it as it is.
bool isStale(std::optional<std::int64_t> seen, std::int64_t now) noexcept;

}  // namespace actions
