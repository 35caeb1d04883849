/// Looking at a prescription before anything is stored.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "apps/actions/house.h"
#include "domain/base/result.h"
#include "domain/design/design_score.h"
#include "domain/rules/examine.h"
#include "domain/rules/remedies.h"

namespace actions {

/// Reads a prescription file. ErrorCode::Unusable names file, line and field.
domain::Result<domain::Prescription> readPrescription(const std::filesystem::path& file);

/// A prescription and everything that is to be asked about it.
struct Examined {
    domain::Prescription prescription;
    std::optional<domain::Kennedy> kennedy{};
    std::optional<domain::Support> support{};
    std::vector<domain::Finding> findings{};
};

Examined examined(domain::Prescription prescription, domain::Date today, const House& house);

/// A prescription on which changes are tried.
class Trial {
public:
    Trial(const domain::Prescription& prescription, domain::Date today, const House& house);

    /// Whether the same rule finds something at the same place of it.
    bool finds(const domain::Finding& finding) const;
    /// What would clear a finding, at most three; the prescriber decides.
    std::vector<domain::Remedy> remedies(const domain::Finding& finding) const;

private:
    const domain::Prescription& prescription_;
    domain::Date today_;
    const House& house_;
    domain::Design design_;
    std::vector<domain::Finding> findings_;
};

/// Reads a prescription file and examines it. ErrorCode::Unusable as above.
domain::Result<Examined> check(const std::filesystem::path& file, domain::Date today,
                               const House& house);

/// A prescription and everything that follows from it.
struct Described {
    domain::Prescription prescription;
    domain::Description description;
    domain::DesignScore score{};
    domain::Completeness completeness{};
};

/// Reads a prescription file and describes its design. ErrorCode::Unusable as above.
domain::Result<Described> describe(const std::filesystem::path& file);

}  // namespace actions
