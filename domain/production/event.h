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
#include "domain/prescription/prescription.h"
#include "domain/production/question.h"
#include "domain/production/route.h"
#include "domain/rules/finding.h"

namespace domain {

/// Points to a text outside the ledger that the ledger commits to without containing it.
struct SealedText {
    std::string code{};    ///< "T000042"
    std::string digest{};  ///< SHA-256 of salt and text, 64 hexadecimal digits
    friend bool operator==(const SealedText&, const SealedText&) = default;
};

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

using Happening = std::variant<Received, Accepted, StageStarted, StageDone, Flagged, Answered>;

/// The stable word of each kind of happening, in the order of the variant.
enum class EventKind : std::uint8_t {
    Received,
    Accepted,
    StageStarted,
    StageDone,
    Flagged,
    Answered
};
template <>
inline constexpr std::array<EnumCode<EventKind>, 6> enumCodes<EventKind>{{
    {EventKind::Received, "received"},
    {EventKind::Accepted, "accepted"},
    {EventKind::StageStarted, "stage-started"},
    {EventKind::StageDone, "stage-done"},
    {EventKind::Flagged, "flagged"},
    {EventKind::Answered, "answered"},
}};

struct Event {
    OrderNumber order;
    std::int64_t version{};  ///< of the order after this event: 1, 2, 3 ...
    Instant at{};
    PersonCode person;
    std::string key{};  ///< idempotency key: the same key never takes effect twice
    Happening what{};

    friend bool operator==(const Event&, const Event&) = default;
};

inline EventKind kindOf(const Event& event) { return static_cast<EventKind>(event.what.index()); }

}  // namespace domain
