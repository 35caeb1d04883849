/// How much of the design the dentist gave, in two published measures.
#pragma once

#include <span>
#include <string_view>

#include "domain/prescription/prescription.h"

namespace domain {

/// The four variables a prescription is scored by, a point each.
///
/// Source: Nassani and Alotaibi, European Oral Research 2020 (mean 0.96, 18 % with all four);
/// earlier of the same kind: International Journal of Prosthodontics 2003;16:362-364.
struct DesignScore {
    bool connector{};         ///< the major connector is named
    bool retainerType{};      ///< every clasp, of which kind (and there is one)
    bool retainerPosition{};  ///< on which tooth, and on which of its faces the arm runs
    bool restPosition{};      ///< on which tooth, and on which side an occlusal one
    int points() const noexcept {
        return connector + retainerType + retainerPosition + restPosition;
    }
};
DesignScore scoreOf(const Prescription& prescription);

/// One thing a prescription is expected to say.
struct Item {
    std::string_view name{};
    std::string_view source{};
    bool (*asked)(const Prescription&){};  ///< of this kind of work; some are never asked
    bool (*given)(const Prescription&){};
};
std::span<const Item> items();

struct Completeness {
    int asked{};
    int given{};
    std::vector<std::string_view> open{};  ///< names of what is asked and not given
    /// Rounded to whole per cent; 0 where nothing is asked.
    int percent() const noexcept { return asked == 0 ? 0 : (200 * given + asked) / (2 * asked); }
};
Completeness completenessOf(const Prescription& prescription);

}  // namespace domain
