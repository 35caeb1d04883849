/// The laboratory as it stands, folded from its own events: people, stations, equipment, sites,
/// lots, and the routes it edited.
#pragma once

#include <map>

#include "domain/workshop/workshop_event.h"

namespace domain {

struct Workshop {
    std::map<PersonCode, Person> people{};
    std::map<ThingCode, StationKind> stations{};
    std::map<ThingCode, Equipment> equipment{};
    std::map<ThingCode, Site> sites{};
    std::map<ThingCode, KeptLot> lots{};
    std::map<std::pair<Route, Arch>, RoutePlan> routes{};
    std::optional<ClockDoubt> clockDoubt{};      ///< until the date is confirmed
    std::map<Subject, std::int64_t> versions{};  ///< of every subject there is

    /// nullptr: nobody of that code works here now.
    const Person* worker(const PersonCode& code) const;
    /// As edited last, else as shipped.
    RoutePlan planFor(Route route, Arch arch) const;
    friend bool operator==(const Workshop&, const Workshop&) = default;
};

struct WorkshopOccasion {
    Instant at{};
    PersonCode person;
    std::string key{};
    std::string command{};  ///< digest of the command
};

/// What is to happen to a subject, as an event; or a refusal that says what was expected. The
/// first person entered must be a manager, and the last manager with a password of their own cannot
/// leave, be made less or lose it.
Result<WorkshopEvent> decide(const Workshop& workshop, const Subject& subject,
                             WorkshopHappening what, const WorkshopOccasion& occasion);

/// Never fails: what could not happen was refused by decide().
Workshop evolve(Workshop workshop, const WorkshopEvent& event);

}  // namespace domain
