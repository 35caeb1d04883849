/// Named texts the laboratory sets for itself, as the lines of its letterhead.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "storage/transaction.h"

namespace storage {

class SettingsStore {
public:
    explicit SettingsStore(Connection& connection) : connection_{connection} {}

    /// nullopt: never set.
    domain::Result<std::optional<std::string>> find(std::string_view name) const;
    domain::Result<domain::Done> put(Transaction& transaction, std::string_view name,
                                     const std::string& value) const;

private:
    Connection& connection_;
};

}  // namespace storage
