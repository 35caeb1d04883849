#include "apps/cli/lab_option.h"

#include <QStandardPaths>

#include "apps/actions/sessions.h"
#include "apps/actions/system_clock.h"
#include "apps/actions/unit_of_work.h"
#include "apps/cli/output.h"
#include "apps/cli/secret_input.h"
#include "apps/cli/who_option.h"

namespace cli {
namespace {

domain::Result<domain::Done> letIn(const Call& call, const actions::Laboratory& laboratory) {
    if (call.needs() == Needs::Nothing) return domain::Done{};
    const auto workshop = laboratory.workshop();
    if (!workshop) return workshop.error();
    if ((*workshop)->people.empty()) return actions::notSetUp();
    const auto who = whoOf(call);
    if (!who) return who.error();
    return actions::letLook(laboratory, *who);
}

}  // namespace

const domain::Clock& machineClock() {
    static const actions::SystemClock kClock;
    return kClock;
}

std::filesystem::path labFolder(const Call& call) {
    if (const auto given = call.option("lab")) return *given;
    const QString data = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation);
    return std::filesystem::path{data.toStdString()} / "framewright";
}

storage::KeyAccess keyAccess() {
    return {.passphrase = [](const std::filesystem::path&) {
        return readSecret("passphrase of the identity key");
    }};
}

domain::Result<actions::Laboratory> laboratoryOf(const Call& call) {
    auto laboratory =
        actions::Laboratory::openExisting(labFolder(call), machineClock(), keyAccess());
    if (laboratory) {
        laboratory->tellBy([](const std::string& sentence) { complain(sentence); });
        if (auto in = letIn(call, *laboratory); !in) return in.error();
        return laboratory;
    }
    if (actions::Laboratory::isIn(labFolder(call))) return laboratory;
    const domain::Error& none = laboratory.error();
    return domain::Error{none.code, none.message + " (framewright set-up --help)"};
}

domain::Result<actions::Laboratory> laboratoryToVerify(const Call& call) {
    storage::KeyAccess keys = keyAccess();
    keys.mayLack = true;
    return actions::Laboratory::openExisting(labFolder(call), machineClock(), keys);
}

domain::Result<actions::Laboratory> newLaboratoryOf(const Call& call) {
    return actions::Laboratory::open(labFolder(call), machineClock(), storage::HashCost::Usual,
                                     keyAccess());
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
