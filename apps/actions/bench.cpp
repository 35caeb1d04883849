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

}  // namespace actions
