#include "apps/actions/stations.h"

#include "storage/workshop_store.h"

namespace actions {

using domain::Result;

Result<Kept> enterStation(const Laboratory& laboratory, const domain::ThingCode& station,
                          domain::StationKind kind, const Who& who) {
    return keep(laboratory, who, domain::Permission::KeepWorkshop,
                {domain::SubjectKind::Station, station.text()}, domain::StationEntered{kind});
}

Result<std::map<domain::ThingCode, domain::StationKind>> stations(const Laboratory& laboratory) {
    const auto workshop = storage::loadWorkshop(laboratory.records());
    if (!workshop) return workshop.error();
    return workshop->stations;
}

}  // namespace actions
