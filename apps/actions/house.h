/// What the laboratory itself decides and has: its limits and its shade guides.
#pragma once

#include <filesystem>
#include <vector>

#include "apps/actions/laboratory.h"
#include "apps/actions/who.h"
#include "domain/materials/shade_guide.h"
#include "domain/production/retention.h"
#include "domain/rules/house_limits.h"

namespace actions {

struct House {
    domain::HouseLimits limits{};
    std::vector<domain::ShadeGuide> guides{domain::shippedGuide()};
};

/// As set last; what was never set has its documented default. The shipped guide is there unless
/// one of its name was entered.
domain::Result<House> houseOf(const Laboratory& laboratory);
/// That of the records in a folder; the documented defaults where there are none.
domain::Result<House> houseIn(const std::filesystem::path& folder, const domain::Clock& clock);

/// One limit as people see it.
struct LimitLine {
    std::string word{};
    std::string value{};    ///< with its unit
    std::string usual{};    ///< the documented default
    std::string says{};     ///< what it is
    std::string schools{};  ///< what the sources say
};
std::vector<LimitLine> limitLines(const domain::HouseLimits& limits);

/// Sets one limit; `text` is its amount with its unit, or "default". ErrorCode::Unusable names the
/// limits there are, or the amount that was expected.
domain::Result<domain::Done> writeLimit(const Laboratory& laboratory, const std::string& word,
                                        const std::string& text, const Who& who);

/// The terms the laboratory keeps its papers by; the European one until others are set.
domain::Result<std::vector<domain::RetentionTerm>> retentionOf(const Laboratory& laboratory);
/// `ids`: as "eu, us-fl". ErrorCode::Unusable names the terms there are.
domain::Result<domain::Done> writeRetention(const Laboratory& laboratory, const std::string& ids,
                                            const Who& who);

/// Enters a guide from a file of tabs, in the place of one of the same name.
domain::Result<domain::ShadeGuide> enterGuide(const Laboratory& laboratory, const std::string& name,
                                              const std::filesystem::path& file, const Who& who);

}  // namespace actions
