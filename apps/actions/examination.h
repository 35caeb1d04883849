/// Looking at a prescription before anything is stored.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "domain/base/result.h"
#include "domain/design/kennedy.h"
#include "domain/rules/examine.h"

namespace actions {

/// A prescription and everything that follows from it.
struct Examined {
    domain::Prescription prescription;
    std::optional<domain::Kennedy> kennedy{};
    std::optional<domain::Support> support{};
    std::vector<domain::Finding> findings{};
};

Examined examined(domain::Prescription prescription, domain::Date today);

/// Reads a prescription file and examines it. ErrorCode::Unusable names file, line and field.
domain::Result<Examined> check(const std::filesystem::path& file, domain::Date today);

}  // namespace actions
