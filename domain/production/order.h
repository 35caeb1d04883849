/// The state of one order, folded from its events.
#pragma once

#include "domain/production/event.h"

namespace domain {

enum class OrderStatus : std::uint8_t { Received, InWork, Delivered };
template <>
inline constexpr std::array<EnumCode<OrderStatus>, 3> enumCodes<OrderStatus>{{
    {OrderStatus::Received, "received"},
    {OrderStatus::InWork, "in-work"},
    {OrderStatus::Delivered, "delivered"},
}};

/// Whom an order waits for.
enum class WaitsFor : std::uint8_t { Nobody, Manager, Bench, Dentist };
template <>
inline constexpr std::array<EnumCode<WaitsFor>, 4> enumCodes<WaitsFor>{{
    {WaitsFor::Nobody, "nobody"},
    {WaitsFor::Manager, "manager"},
    {WaitsFor::Bench, "bench"},
    {WaitsFor::Dentist, "dentist"},
}};

struct StageStep {
    Stage stage{};
    StageStatus status{};
    std::optional<PersonCode> person{};  ///< who last started or finished it
    std::optional<Instant> since{};
    friend bool operator==(const StageStep&, const StageStep&) = default;
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
    std::vector<StageStep> steps{};
    std::vector<OpenFlag> flags{};
    std::vector<std::string> cautionsTaken{};
    std::vector<SealedText> cautionReasons{};
    std::optional<PersonCode> acceptedBy{};

    const Prescription& prescription() const noexcept { return revision.prescription; }
    friend bool operator==(const Order&, const Order&) = default;
};

/// The first stage not done; nullptr before acceptance and after delivery.
const StageStep* currentStep(const Order& order);

/// The ids of the rules whose cautions nobody has taken responsibility for yet.
std::vector<std::string> untakenCautions(const Order& order);

/// Who must act next.
WaitsFor waitsFor(const Order& order);

/// What holds the order up, in a few words: "2 questions", "to accept", "survey: in hand".
std::string holdUp(const Order& order);

}  // namespace domain
