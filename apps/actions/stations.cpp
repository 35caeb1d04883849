#include "apps/actions/stations.h"

#include "apps/actions/access.h"
#include "apps/actions/workshop_work.h"
#include "storage/workshop_store.h"

namespace actions {

using domain::Result;

Result<domain::Done> enterStation(const Laboratory& laboratory, const domain::ThingCode& station,
                                  domain::StationKind kind, const Who& who) {
    if (const auto allowed = authorise(laboratory, who, domain::Permission::KeepWorkshop); !allowed)
        return allowed.error();
    auto begun = WorkshopWork::begin(laboratory, who);
    if (!begun) return begun.error();
    WorkshopWork work = *std::move(begun);
    const auto entered =
        work.record({domain::SubjectKind::Station, station.text()}, domain::StationEntered{kind});
    if (!entered) return entered;
    return work.commit();
}

Result<std::map<domain::ThingCode, domain::StationKind>> stations(const Laboratory& laboratory) {
    const auto workshop = storage::loadWorkshop(laboratory.records());
    if (!workshop) return workshop.error();
    return workshop->stations;
}

}  // namespace actions
