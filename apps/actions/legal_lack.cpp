#include "apps/actions/legal_lack.h"

#include "domain/production/legal_fields.h"
#include "storage/files/prescription_file.h"
#include "storage/sealed_texts.h"

namespace actions {

using domain::Result;

Result<domain::Prescription> inFull(const Laboratory& laboratory,
                                    const domain::Revision& revision) {
    const auto text = storage::SealedTexts{laboratory.records()}.open(revision.parties.identity);
    if (!text) return text.error();
    if (!*text) return revision.prescription;
    return storage::readPrescription(**text, "sealed text " + revision.parties.identity.code);
}

Result<std::vector<domain::Finding>> legalLack(const Laboratory& laboratory,
                                               const domain::Revision& revision) {
    const auto prescription = inFull(laboratory, revision);
    if (!prescription) return prescription.error();
    const auto head = letterhead(laboratory);
    if (!head) return head.error();
    return lackingIn(legalFactsOf(*prescription, head->name, head->address));
}

}  // namespace actions
