/// The state of one order, folded from its events.
#pragma once

#include "domain/production/event.h"

namespace domain {

enum class OrderStatus : std::uint8_t { Received, InWork, Delivered, Remade, Withdrawn };
template <>
inline constexpr std::array<EnumCode<OrderStatus>, 5> enumCodes<OrderStatus>{{
    {OrderStatus::Received, "received"},
    {OrderStatus::InWork, "in-work"},
    {OrderStatus::Delivered, "delivered"},
    {OrderStatus::Remade, "remade"},
    {OrderStatus::Withdrawn, "withdrawn"},
}};

/// Whom an order waits for.
enum class WaitsFor : std::uint8_t { Nobody, Manager, Bench, Dentist, Site };
template <>
inline constexpr std::array<EnumCode<WaitsFor>, 5> enumCodes<WaitsFor>{{
    {WaitsFor::Nobody, "nobody"},
    {WaitsFor::Manager, "manager"},
    {WaitsFor::Bench, "bench"},
    {WaitsFor::Dentist, "dentist"},
    {WaitsFor::Site, "site"},
}};

struct StageStep {
    Stage stage{};
    StageStatus status{};
    std::optional<PersonCode> person{};  ///< who last started or finished it
    std::optional<Instant> since{};
    std::int64_t attempt{1};            ///< one more each time work begins again here
    std::optional<ThingCode> madeAt{};  ///< the site it was sent to, if it was
    bool away{};                        ///< it is there now
    std::vector<PersonCode> hands{};    ///< who started, recorded or finished this attempt
    friend bool operator==(const StageStep&, const StageStep&) = default;
};

/// A record with where and when it was made; only those of a stage's attempt in hand count at its
/// gate.
struct KeptRecord {
    Stage stage{};
    std::int64_t attempt{};
    PersonCode person;
    Instant at{};
    StageRecord record{};
    friend bool operator==(const KeptRecord&, const KeptRecord&) = default;
};

/// Whom an order waits for since when, and how long it has waited for each before.
struct Waiting {
    WaitsFor whom{WaitsFor::Manager};
    Instant since{};
    std::array<std::int64_t, enumCodes<WaitsFor>.size()> spent{};  ///< microseconds
    friend bool operator==(const Waiting&, const Waiting&) = default;
};

/// A question that was flagged at the bench and not answered yet.
struct OpenFlag {
    FlagReason reason{};
    std::optional<SealedText> note{};
    PersonCode person;
    Instant since{};
    friend bool operator==(const OpenFlag&, const OpenFlag&) = default;
};

struct Order {
    OrderNumber number;
    std::int64_t version{};
    OrderStatus status{};
    std::int64_t revisionNumber{1};
    Revision revision{};
    Instant receivedAt{};
    Instant changedAt{};
    std::optional<Route> route{};
    std::optional<RoutePlan> plan{};  ///< as it was on the day of acceptance
    std::vector<StageStep> steps{};
    std::vector<KeptRecord> records{};
    std::vector<OpenFlag> flags{};
    std::vector<std::string> cautionsTaken{};
    std::vector<SealedText> cautionReasons{};
    std::optional<PersonCode> acceptedBy{};
    Waiting waiting{};
    bool remakeDue{};                         ///< the dentist asked for it at a try-in
    std::optional<OrderNumber> replacedBy{};  ///< the order that makes it again
    std::optional<OrderNumber> replaces{};    ///< the order it makes again
    std::optional<OrderNumber> caseLeader{};  ///< first order of the case it travels with
    bool purged{};                            ///< its names and words are erased

    const Prescription& prescription() const noexcept { return revision.prescription; }
    friend bool operator==(const Order&, const Order&) = default;
};

/// Delivered, made again, or withdrawn: no work goes on.
bool isClosed(const Order& order) noexcept;

/// The day it left for good; nullopt until it is delivered.
std::optional<Date> deliveredOn(const Order& order);

/// The first stage not done; nullptr before acceptance and when all are.
const StageStep* currentStep(const Order& order);

/// How the order's own route works a stage. The stage must be one of its steps.
StagePlan planOf(const Order& order, Stage stage);

/// What was recorded in the attempt in hand of a stage.
std::vector<StageRecord> recordsOf(const Order& order, Stage stage);

/// The newest record of a kind in the attempt in hand; nullopt if there is none.
template <typename Kind>
std::optional<Kind> newest(const Order& order, Stage stage) {
    std::optional<Kind> found;
    for (const StageRecord& record : recordsOf(order, stage))
        if (const auto* kind = std::get_if<Kind>(&record)) found = *kind;
    return found;
}

/// The ids of the rules whose cautions nobody has taken responsibility for yet.
std::vector<std::string> untakenCautions(const Order& order);

/// Who must act next.
WaitsFor waitsFor(const Order& order);

/// Time spent waiting for one of them up to `now`, in microseconds; a clock that went back counts
/// nothing.
std::int64_t spentFor(const Order& order, WaitsFor whom, Instant now);

/// The laboratory's own time: it stands still while the dentist, or another site, is waited for.
std::int64_t laboratoryTime(const Order& order, Instant now);

/// What holds the order up, in a few words: "2 questions", "to accept", "survey: in hand".
std::string holdUp(const Order& order);

/// Everybody who worked on the device with their hands: none of them may inspect it.
std::vector<PersonCode> makersOf(const Order& order);

}  // namespace domain
