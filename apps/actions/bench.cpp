#include "apps/actions/bench.h"

#include "storage/files/cure_log_file.h"

namespace actions {

domain::Result<JudgedCure> judgeCureLog(const std::filesystem::path& file, domain::CureCycle cycle,
                                        std::optional<domain::Microns> thickest) {
    auto log = storage::loadCureLog(file);
    if (!log) return log.error();
    return JudgedCure{.report = domain::judgeCure(log->readings, cycle, thickest),
                      .readings = log->readings.size(),
                      .digest = log->digest};
}

std::vector<domain::StageRecord> recordsOf(const JudgedCure& judged) {
    std::vector<domain::StageRecord> records{
        domain::CureLogged{.cycle = std::string{codeOf(judged.report.cycle)},
                           .sha256 = judged.digest,
                           .kept = judged.report.isAccepted()}};
    for (const domain::CureComplaint& complaint : judged.report.complaints)
        records.emplace_back(
            domain::BenchValue{"cure, " + wordsOf(complaint.fault), complaint.says});
    return records;
}

}  // namespace actions
