/// What happened to an order: one event each, appended to the ledger and never changed.
///
/// Events carry codes and never names. What may name a person (identity, reasons, notes) is a
/// sealed text kept elsewhere; the event holds its code and its salted digest.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "domain/base/date.h"
#include "domain/base/id.h"
#include "domain/base/sealed_text.h"
#include "domain/prescription/prescription.h"
#include "domain/production/question.h"
#include "domain/production/redo.h"
#include "domain/production/stage_record.h"
#include "domain/route/route_plan.h"
#include "domain/rules/finding.h"

namespace domain {

/// The people of an order, by code, and the sealed text that says who they are.
struct Parties {
    std::string patient{};     ///< "P00007"
    std::string prescriber{};  ///< "D00003"
    SealedText identity{};
    friend bool operator==(const Parties&, const Parties&) = default;
};

/// A prescription as it stood when it was examined, and what was found.
struct Revision {
    Prescription prescription{};  ///< without identity
    Parties parties{};
    std::vector<Finding> findings{};
    friend bool operator==(const Revision&, const Revision&) = default;
};

struct Received {
    Revision revision{};
    friend bool operator==(const Received&, const Received&) = default;
};

/// Accepted for production; whoever accepts cautions does so by name of rule and with a reason.
struct Accepted {
    Route route{};
    std::vector<std::string> cautions{};  ///< ids of the rules whose cautions were taken
    std::optional<SealedText> reason{};
    friend bool operator==(const Accepted&, const Accepted&) = default;
};

struct StageStarted {
    Stage stage{};
    friend bool operator==(const StageStarted&, const StageStarted&) = default;
};

struct StageDone {
    Stage stage{};
    friend bool operator==(const StageDone&, const StageDone&) = default;
};

struct Flagged {
    FlagReason reason{};
    std::optional<SealedText> note{};
    friend bool operator==(const Flagged&, const Flagged&) = default;
};

/// The dentist answered: in words, and where the design changes with a new revision.
struct Answered {
    std::optional<SealedText> words{};
    std::optional<Revision> revision{};
    friend bool operator==(const Answered&, const Answered&) = default;
};

/// The route an accepted order keeps, as the laboratory worked it that day.
struct Routed {
    RoutePlan plan{};
    friend bool operator==(const Routed&, const Routed&) = default;
};

struct Recorded {
    Stage stage{};
    std::vector<StageRecord> records{};
    friend bool operator==(const Recorded&, const Recorded&) = default;
};

/// Back from a try-in, with what the dentist found.
struct Returned {
    Stage stage{};
    ReturnVerdict verdict{};
    std::optional<Stage> backTo{};  ///< where work begins again
    std::optional<SealedText> findings{};
    Disinfection disinfection{};  ///< of what came back
    friend bool operator==(const Returned&, const Returned&) = default;
};

/// Work begins again at an earlier stage; what was done before stays on record.
struct Redone {
    RedoReason reason{};
    Stage from{};   ///< where it begins again
    Stage fault{};  ///< where the fault lay
    std::optional<SealedText> note{};
    friend bool operator==(const Redone&, const Redone&) = default;
};

/// To be made again as another order.
struct RemakeOrdered {
    OrderNumber replacement{blankOrderNumber()};
    RemakeReason reason{};
    std::optional<Stage> fault{};
    std::optional<SealedText> note{};
    friend bool operator==(const RemakeOrdered&, const RemakeOrdered&) = default;
};

/// This order makes another one again.
struct RemakeBegun {
    OrderNumber first{blankOrderNumber()};
    friend bool operator==(const RemakeBegun&, const RemakeBegun&) = default;
};

/// It travels together with the orders of a case, which is named by its first order.
struct CaseJoined {
    OrderNumber leader{blankOrderNumber()};
    /// Found anew with what came for the leader; nullopt: as before.
    std::optional<std::vector<Finding>> findings{};
    friend bool operator==(const CaseJoined&, const CaseJoined&) = default;
};

/// A stage is worked elsewhere, under a sub-order that was printed with its legal fields.
struct WorkSent {
    Stage stage{};
    ThingCode site{blankThingCode()};
    friend bool operator==(const WorkSent&, const WorkSent&) = default;
};

/// Back from there, and inspected.
struct WorkBack {
    Stage stage{};
    bool passed{};
    std::optional<SealedText> note{};
    friend bool operator==(const WorkBack&, const WorkBack&) = default;
};

/// The dentist wants it no more.
struct Withdrawn {
    std::optional<SealedText> reason{};
    friend bool operator==(const Withdrawn&, const Withdrawn&) = default;
};

/// Its names and words are erased, after the last day they had to be kept.
struct Purged {
    friend bool operator==(const Purged&, const Purged&) = default;
};

using Happening = std::variant<Received, Accepted, StageStarted, StageDone, Flagged, Answered,
                               Routed, Recorded, Returned, Redone, RemakeOrdered, RemakeBegun,
                               CaseJoined, WorkSent, WorkBack, Withdrawn, Purged>;

/// The stable word of each kind of happening, in the order of the variant.
enum class EventKind : std::uint8_t {
    Received,
    Accepted,
    StageStarted,
    StageDone,
    Flagged,
    Answered,
    Routed,
    Recorded,
    Returned,
    Redone,
    RemakeOrdered,
    RemakeBegun,
    CaseJoined,
    WorkSent,
    WorkBack,
    Withdrawn,
    Purged,
};
template <>
inline constexpr std::array<EnumCode<EventKind>, 17> enumCodes<EventKind>{{
    {EventKind::Received, "received"},
    {EventKind::Accepted, "accepted"},
    {EventKind::StageStarted, "stage-started"},
    {EventKind::StageDone, "stage-done"},
    {EventKind::Flagged, "flagged"},
    {EventKind::Answered, "answered"},
    {EventKind::Routed, "routed"},
    {EventKind::Recorded, "recorded"},
    {EventKind::Returned, "returned"},
    {EventKind::Redone, "redone"},
    {EventKind::RemakeOrdered, "remake-ordered"},
    {EventKind::RemakeBegun, "remake-begun"},
    {EventKind::CaseJoined, "case-joined"},
    {EventKind::WorkSent, "work-sent"},
    {EventKind::WorkBack, "work-back"},
    {EventKind::Withdrawn, "withdrawn"},
    {EventKind::Purged, "purged"},
}};

struct Event {
    OrderNumber order;
    std::int64_t version{};  ///< of the order after this event: 1, 2, 3 ...
    Instant at{};
    PersonCode person;
    std::string key{};  ///< idempotency key: the same key never takes effect twice
    Happening what{};
    std::string station{};  ///< code of the station it was done at; empty where none was given
    /// Digest of the command that caused it, by which a key that is used again is known; empty in
    /// what was recorded before there was one.
    std::string command{};

    friend bool operator==(const Event&, const Event&) = default;
};

inline EventKind kindOf(const Event& event) { return static_cast<EventKind>(event.what.index()); }

}  // namespace domain
