#include "apps/cli/lab_option.h"

#include <QStandardPaths>

#include "apps/actions/system_clock.h"

namespace cli {

const domain::Clock& machineClock() {
    static const actions::SystemClock kClock;
    return kClock;
}

std::filesystem::path labFolder(const Call& call) {
    if (const auto given = call.option("lab")) return *given;
    const QString data = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation);
    return std::filesystem::path{data.toStdString()} / "framewright";
}

domain::Result<actions::Laboratory> laboratoryOf(const Call& call) {
    auto laboratory = actions::Laboratory::openExisting(labFolder(call), machineClock());
    if (laboratory || actions::Laboratory::isIn(labFolder(call))) return laboratory;
    const domain::Error& none = laboratory.error();
    return domain::Error{none.code, none.message + " (framewright set-up --help)"};
}

domain::Result<actions::Laboratory> newLaboratoryOf(const Call& call) {
    return actions::Laboratory::open(labFolder(call), machineClock());
}

domain::Result<actions::House> houseOf(const Call& call) {
    if (call.has("lab")) {
        const auto laboratory = laboratoryOf(call);
        if (!laboratory) return laboratory.error();
        return actions::houseOf(*laboratory);
    }
    return actions::houseIn(labFolder(call), machineClock());
}

}  // namespace cli
