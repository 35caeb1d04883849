#include "apps/actions/examination.h"

#include <algorithm>

#include "domain/design/support.h"
#include "storage/files/prescription_file.h"

namespace actions {

domain::Result<domain::Prescription> readPrescription(const std::filesystem::path& file) {
    return storage::loadPrescription(file);
}

Examined examined(domain::Prescription prescription, domain::Date today, const House& house) {
    Examined result{.prescription = std::move(prescription)};
    result.kennedy = domain::classify(result.prescription);
    result.support = domain::supportOf(result.prescription);
    result.findings = domain::examine(result.prescription, today, house.limits, house.guides);
    return result;
}

Trial::Trial(const domain::Prescription& prescription, domain::Date today, const House& house)
    : prescription_{prescription},
      today_{today},
      house_{house},
      design_{domain::designOf(prescription)},
      findings_{domain::examine(prescription, today, house.limits, house.guides)} {}

bool Trial::finds(const domain::Finding& finding) const {
    return std::ranges::any_of(findings_, [&](const domain::Finding& found) {
        return found.rule == finding.rule && found.tooth == finding.tooth;
    });
}

std::vector<domain::Remedy> Trial::remedies(const domain::Finding& finding) const {
    return domain::remediesFor({prescription_, design_, today_, house_.limits, house_.guides},
                               findings_, finding);
}

domain::Result<Examined> check(const std::filesystem::path& file, domain::Date today,
                               const House& house) {
    auto prescription = readPrescription(file);
    if (!prescription) return prescription.error();
    return examined(*std::move(prescription), today, house);
}

domain::Result<Described> describe(const std::filesystem::path& file) {
    const auto prescription = readPrescription(file);
    if (!prescription) return prescription.error();
    Described described{.prescription = *prescription,
                        .description = domain::descriptionOf(*prescription)};
    described.score = domain::scoreOf(described.prescription);
    described.completeness = domain::completenessOf(described.prescription);
    return described;
}

}  // namespace actions
