#include "apps/actions/examination.h"

#include "domain/design/support.h"
#include "storage/files/prescription_file.h"

namespace actions {

Examined examined(domain::Prescription prescription, domain::Date today) {
    Examined result{.prescription = std::move(prescription)};
    result.kennedy = domain::classify(result.prescription);
    result.support = domain::supportOf(result.prescription);
    result.findings = domain::examine(result.prescription, today);
    return result;
}

domain::Result<Examined> check(const std::filesystem::path& file, domain::Date today) {
    auto prescription = storage::loadPrescription(file);
    if (!prescription) return prescription.error();
    return examined(*std::move(prescription), today);
}

}  // namespace actions
