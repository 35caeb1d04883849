#include "apps/actions/verification.h"

#include "storage/integrity.h"
#include "storage/records_check.h"

namespace actions {

domain::Result<Verification> verify(const Laboratory& laboratory) {
    for (const auto look : {&storage::engineProblems, &storage::schemaProblems}) {
        auto problems = look(laboratory.records());
        if (!problems) return problems.error();
        // What a damaged file says about itself proves nothing.
        if (!problems->empty()) return Verification{.problems = *std::move(problems)};
    }
    auto checked = storage::checkRecords(laboratory.records());
    if (!checked) return checked.error();
    storage::RecordsReport report = *std::move(checked);
    if (report.problems.empty() && report.ledger.entries == 0)
        return domain::Error{domain::ErrorCode::Unavailable,
                             "the records in " + laboratory.records().file().string() +
                                 " hold nothing, not even who manages the laboratory: set it up, "
                                 "or restore a backup if it was"};
    Verification verification{.entries = report.ledger.entries,
                              .orders = report.orders,
                              .head = std::move(report.ledger.head),
                              .accessEntries = report.access.entries,
                              .accessHead = std::move(report.access.head),
                              .problems = std::move(report.problems)};
    if (const auto cipher = laboratory.records().identity(); !cipher)
        verification.notLookedAt.push_back("the words of the sealed texts, for " +
                                           cipher.error().message);
    return verification;
}

}  // namespace actions
