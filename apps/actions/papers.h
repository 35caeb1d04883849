/// Printing: papers are written as PDF files into the laboratory's folder.
#pragma once

#include "apps/actions/orders.h"

namespace actions {

enum class Paper : std::uint8_t { PrescriptionSheet, QuestionSheet };

}  // namespace actions

template <>
inline constexpr std::array<domain::EnumCode<actions::Paper>, 2> domain::enumCodes<actions::Paper>{{
    {actions::Paper::PrescriptionSheet, "prescription"},
    {actions::Paper::QuestionSheet, "questions"},
}};

namespace actions {

/// Writes one paper of an order and returns where; `file` empty: papers/<order>-<paper>-r<n>.pdf
/// in the laboratory's folder. A question sheet without any question is refused.
domain::Result<std::filesystem::path> print(const Laboratory& laboratory,
                                            const domain::OrderNumber& number, Paper paper,
                                            const std::filesystem::path& file, const Who& who);

}  // namespace actions
