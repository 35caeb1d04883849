#include "apps/actions/verification.h"

#include "storage/integrity.h"
#include "storage/ledger.h"
#include "storage/order_register.h"
#include "storage/projections.h"
#include "storage/sealed_texts.h"

namespace actions {

domain::Result<Verification> verify(const Laboratory& laboratory) {
    for (const auto look : {&storage::engineProblems, &storage::schemaProblems}) {
        auto problems = look(laboratory.records());
        if (!problems) return problems.error();
        // What a damaged file says about itself proves nothing.
        if (!problems->empty()) return Verification{.problems = *std::move(problems)};
    }
    const storage::Ledger ledger{laboratory.records()};
    const auto chain = ledger.verify();
    if (!chain) return chain.error();
    if (!chain->problem && chain->entries == 0)
        return domain::Error{domain::ErrorCode::Unavailable,
                             "the records in " + laboratory.records().file().string() +
                                 " hold nothing, not even who manages the laboratory: set it up, "
                                 "or restore a backup if it was"};
    Verification verification{.entries = chain->entries, .head = chain->head};
    if (chain->problem) {
        // What is derived from a broken chain proves nothing more.
        verification.problems.push_back(*chain->problem);
        return verification;
    }
    const storage::OrderRegister orders{laboratory.records()};
    const auto rows = orders.all();
    if (!rows) return rows.error();
    verification.orders = static_cast<std::int64_t>(rows->size());
    const auto differences = storage::projectionDifferences(laboratory.records());
    if (!differences) return differences.error();
    const storage::SealedTexts texts{laboratory.records()};
    const auto broken = texts.verify();
    if (!broken) return broken.error();
    for (const auto* problems : {&*differences, &*broken})
        verification.problems.insert(verification.problems.end(), problems->begin(),
                                     problems->end());
    return verification;
}

}  // namespace actions
