/// One of each paper of the production, made from invented cases.
#pragma once

#include "reports/bench_sheet.h"
#include "reports/delivery_note.h"
#include "reports/device_statement.h"
#include "reports/recall_letter.h"
#include "reports/ticket.h"
#include "reports/try_in_sheet.h"

namespace samples {

domain::OrderNumber number(int count = 12);

reports::Ticket ticket();
reports::TryIn tryIn(reports::TryInKind kind);
reports::IssuedStatement issuedStatement();
/// Of one order, or of two.
reports::Delivery delivery(bool two = false);
reports::Recall recall();
reports::Bench bench();

struct Sample {
    std::string name;  ///< of its golden text, without ".txt"
    reports::Paper paper;
};
inline void PrintTo(const Sample& sample, std::ostream* stream) { *stream << sample.name; }
/// All of them, drawn up under the head the tests share.
std::vector<Sample> all();

}  // namespace samples
