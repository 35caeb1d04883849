/// The stages an order passes through, and how far it is in each.
#pragma once

#include <span>
#include <string_view>

#include "domain/base/codes.h"
#include "domain/route/demand.h"

namespace domain {

enum class Stage : std::uint8_t {
    Receipt,
    Survey,
    BlockOut,
    Duplication,
    WaxUp,
    Investing,
    Casting,
    DigitalDesign,
    Milling,
    Printing,
    Finishing,
    FrameworkTryIn,
    ToothSetUp,
    ToothTryIn,
    Joining,
    Processing,
    Polishing,
    Inspection,
    Delivery,
    SaddleImpression,
    AlteredCast,
    FaultReview,
};
template <>
inline constexpr std::array<EnumCode<Stage>, 22> enumCodes<Stage>{{
    {Stage::Receipt, "receipt"},
    {Stage::Survey, "survey"},
    {Stage::BlockOut, "block-out"},
    {Stage::Duplication, "duplication"},
    {Stage::WaxUp, "wax-up"},
    {Stage::Investing, "investing"},
    {Stage::Casting, "casting"},
    {Stage::DigitalDesign, "digital-design"},
    {Stage::Milling, "milling"},
    {Stage::Printing, "printing"},
    {Stage::Finishing, "finishing"},
    {Stage::FrameworkTryIn, "framework-try-in"},
    {Stage::ToothSetUp, "tooth-set-up"},
    {Stage::ToothTryIn, "tooth-try-in"},
    {Stage::Joining, "joining"},
    {Stage::Processing, "processing"},
    {Stage::Polishing, "polishing"},
    {Stage::Inspection, "inspection"},
    {Stage::Delivery, "delivery"},
    {Stage::SaddleImpression, "saddle-impression"},
    {Stage::AlteredCast, "altered-cast"},
    {Stage::FaultReview, "fault-review"},
}};

/// Who or what the stage keeps busy.
enum class StageKind : std::uint8_t { Hands, MachineBatch, Waiting, AtPractice };
template <>
inline constexpr std::array<EnumCode<StageKind>, 4> enumCodes<StageKind>{{
    {StageKind::Hands, "hands"},
    {StageKind::MachineBatch, "machine-batch"},
    {StageKind::Waiting, "waiting"},
    {StageKind::AtPractice, "at-practice"},
}};

struct StageRow {
    Stage stage{};
    StageKind kind{};
    bool makes{};           ///< whoever works it makes the device, and may not inspect it
    std::string_view work;  ///< what is done there, in one phrase
    /// What law or safety demands of its gate; a laboratory may add others, not drop these.
    std::span<const Demand> stays{};
};

/// Every stage once, in the order of the enum.
std::span<const StageRow> stages();
const StageRow& rowOf(Stage stage);

enum class StageStatus : std::uint8_t { ToDo, InHand, Done };
template <>
inline constexpr std::array<EnumCode<StageStatus>, 3> enumCodes<StageStatus>{{
    {StageStatus::ToDo, "to-do"},
    {StageStatus::InHand, "in-hand"},
    {StageStatus::Done, "done"},
}};

}  // namespace domain
