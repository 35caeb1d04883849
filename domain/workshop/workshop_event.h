/// What happened in the laboratory itself: to its people, stations, equipment, sites, lots and
/// routes. One event each, in the same ledger as the orders and never changed.
#pragma once

#include <variant>

#include "domain/base/date.h"
#include "domain/base/sealed_text.h"
#include "domain/materials/lot.h"
#include "domain/route/route_plan.h"
#include "domain/workshop/clock_check.h"
#include "domain/workshop/equipment.h"
#include "domain/workshop/kept_beside.h"
#include "domain/workshop/person.h"

namespace domain {

enum class SubjectKind : std::uint8_t {
    Person,
    Station,
    Equipment,
    Site,
    Lot,
    Route,
    Access,
    Clock,
    Setting,
    Guide,
    Records
};
template <>
inline constexpr std::array<EnumCode<SubjectKind>, 11> enumCodes<SubjectKind>{{
    {SubjectKind::Person, "person"},
    {SubjectKind::Station, "station"},
    {SubjectKind::Equipment, "equipment"},
    {SubjectKind::Site, "site"},
    {SubjectKind::Lot, "lot"},
    {SubjectKind::Route, "route"},
    {SubjectKind::Access, "access"},
    {SubjectKind::Clock, "clock"},
    {SubjectKind::Setting, "setting"},
    {SubjectKind::Guide, "guide"},
    {SubjectKind::Records, "records"},
}};

/// What an event is about: "lot/AL-204", "person/MK", "route/cast-framework-upper".
struct Subject {
    SubjectKind kind{};
    std::string code{};
    std::string text() const { return std::string{codeOf(kind)} + '/' + code; }
    static std::optional<Subject> parse(std::string_view text);
    friend auto operator<=>(const Subject&, const Subject&) = default;
};

/// Entered, or entered anew with another role or other skills.
struct PersonEntered {
    Role role{};
    std::vector<Skill> skills{};
    friend bool operator==(const PersonEntered&, const PersonEntered&) = default;
};
/// Works here no more.
struct PersonLeft {
    friend bool operator==(const PersonLeft&, const PersonLeft&) = default;
};

/// A password or a badge with its PIN was given; what it is stays outside the ledger.
struct CredentialGiven {
    Credential credential{};
    /// Of what is kept of it; nullopt in events from before it was committed to.
    std::optional<std::string> digest{};
    /// What let the person have it; nullopt: a session, or the present one.
    std::optional<GivenBy> by{};
    friend bool operator==(const CredentialGiven&, const CredentialGiven&) = default;
};
struct CredentialTaken {
    Credential credential{};
    friend bool operator==(const CredentialTaken&, const CredentialTaken&) = default;
};
/// Somebody tried what they may not do, or could not prove who they are.
struct AccessRefused {
    std::string command{};  ///< the permission asked, or "sign-in"
    std::string why{};      ///< in our words
    friend bool operator==(const AccessRefused&, const AccessRefused&) = default;
};

struct StationEntered {
    StationKind kind{};
    friend bool operator==(const StationEntered&, const StationEntered&) = default;
};
struct EquipmentEntered {
    Equipment equipment{};
    friend bool operator==(const EquipmentEntered&, const EquipmentEntered&) = default;
};
/// Calibrated; it holds up to a day.
struct Calibrated {
    Date due{Date::ofDays(0)};
    friend bool operator==(const Calibrated&, const Calibrated&) = default;
};
struct SiteEntered {
    Site site{};
    friend bool operator==(const SiteEntered&, const SiteEntered&) = default;
};

struct LotReceived {
    Lot lot{};
    friend bool operator==(const LotReceived&, const LotReceived&) = default;
};
/// Into quarantine; nothing of it may be used until it is released.
struct LotHeld {
    std::optional<SealedText> reason{};
    friend bool operator==(const LotHeld&, const LotHeld&) = default;
};
struct LotReleased {
    std::optional<SealedText> reason{};
    friend bool operator==(const LotReleased&, const LotReleased&) = default;
};

struct RouteSet {
    RoutePlan plan{};
    friend bool operator==(const RouteSet&, const RouteSet&) = default;
};

/// The clock of the machine was found wrong; what it said is the time of this entry, which alone
/// may lie before that of the entry before it.
struct ClockMarked {
    ClockFault fault{};
    Instant before{};  ///< time of the newest entry then
    friend bool operator==(const ClockMarked&, const ClockMarked&) = default;
};
/// Somebody confirmed that the machine has the right day.
struct DateConfirmed {
    Date day{Date::ofDays(0)};
    friend bool operator==(const DateConfirmed&, const DateConfirmed&) = default;
};

using WorkshopHappening =
    std::variant<PersonEntered, PersonLeft, CredentialGiven, CredentialTaken, AccessRefused,
                 StationEntered, EquipmentEntered, Calibrated, SiteEntered, LotReceived, LotHeld,
                 LotReleased, RouteSet, ClockMarked, DateConfirmed, SettingSet, GuideEntered,
                 CredentialKept, TakenOver>;

/// The stable word of each, in the order of the variant.
enum class WorkshopEventKind : std::uint8_t {
    PersonEntered,
    PersonLeft,
    CredentialGiven,
    CredentialTaken,
    AccessRefused,
    StationEntered,
    EquipmentEntered,
    Calibrated,
    SiteEntered,
    LotReceived,
    LotHeld,
    LotReleased,
    RouteSet,
    ClockMarked,
    DateConfirmed,
    SettingSet,
    GuideEntered,
    CredentialKept,
    TakenOver,
};
template <>
inline constexpr std::array<EnumCode<WorkshopEventKind>, 19> enumCodes<WorkshopEventKind>{{
    {WorkshopEventKind::PersonEntered, "person-entered"},
    {WorkshopEventKind::PersonLeft, "person-left"},
    {WorkshopEventKind::CredentialGiven, "credential-given"},
    {WorkshopEventKind::CredentialTaken, "credential-taken"},
    {WorkshopEventKind::AccessRefused, "access-refused"},
    {WorkshopEventKind::StationEntered, "station-entered"},
    {WorkshopEventKind::EquipmentEntered, "equipment-entered"},
    {WorkshopEventKind::Calibrated, "calibrated"},
    {WorkshopEventKind::SiteEntered, "site-entered"},
    {WorkshopEventKind::LotReceived, "lot-received"},
    {WorkshopEventKind::LotHeld, "lot-held"},
    {WorkshopEventKind::LotReleased, "lot-released"},
    {WorkshopEventKind::RouteSet, "route-set"},
    {WorkshopEventKind::ClockMarked, "clock-marked"},
    {WorkshopEventKind::DateConfirmed, "date-confirmed"},
    {WorkshopEventKind::SettingSet, "setting-set"},
    {WorkshopEventKind::GuideEntered, "guide-entered"},
    {WorkshopEventKind::CredentialKept, "credential-kept"},
    {WorkshopEventKind::TakenOver, "taken-over"},
}};

struct WorkshopEvent {
    Subject subject{};
    std::int64_t version{};  ///< of the subject after this event: 1, 2, 3 ...
    Instant at{};
    PersonCode person;
    std::string key{};
    WorkshopHappening what{};
    std::string command{};  ///< as of an Event

    friend bool operator==(const WorkshopEvent&, const WorkshopEvent&) = default;
};

inline WorkshopEventKind kindOf(const WorkshopEvent& event) {
    return static_cast<WorkshopEventKind>(event.what.index());
}

}  // namespace domain
