/// Printing: papers are written as PDF files into the laboratory's folder.
#pragma once

#include <filesystem>

#include "apps/actions/laboratory.h"
#include "apps/actions/who.h"

namespace actions {

enum class Paper : std::uint8_t {
    PrescriptionSheet,
    QuestionSheet,
    Ticket,
    BenchSheet,
    TryInSheet,
    Statement,
    DeliveryNote,
    SubOrder,
};

}  // namespace actions

template <>
inline constexpr std::array<domain::EnumCode<actions::Paper>, 8> domain::enumCodes<actions::Paper>{{
    {actions::Paper::PrescriptionSheet, "prescription"},
    {actions::Paper::QuestionSheet, "questions"},
    {actions::Paper::Ticket, "ticket"},
    {actions::Paper::BenchSheet, "bench"},
    {actions::Paper::TryInSheet, "try-in"},
    {actions::Paper::Statement, "statement"},
    {actions::Paper::DeliveryNote, "delivery"},
    {actions::Paper::SubOrder, "sub-order"},
}};

namespace actions {

/// Writes one paper of an order and returns where; `file` empty: papers/<order>-<paper>-r<n>.pdf
/// in the laboratory's folder. Refused: a paper whose time has not come, as a question sheet
/// without any question or a statement that was not issued; and a `file` that is anything but a new
/// name or an earlier print of this paper, or lies in the folder of the records.
domain::Result<std::filesystem::path> print(const Laboratory& laboratory,
                                            const domain::OrderNumber& number, Paper paper,
                                            const std::filesystem::path& file, const Who& who);

}  // namespace actions
