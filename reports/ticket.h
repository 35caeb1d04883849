/// The ticket that travels with the case through the laboratory.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "domain/base/id.h"
#include "domain/route/stage.h"
#include "reports/cautions.h"
#include "reports/paper.h"

namespace reports {

struct TicketStage {
    domain::Stage stage{};
    domain::StageStatus status{};
    std::string person{};              ///< code; empty: nobody yet
    std::optional<domain::Date> on{};  ///< the day it was started or done
};

struct Ticket {
    domain::OrderNumber number;
    std::string patientCode{};  ///< never a name: a ticket lies open on benches
    std::string description{};  ///< of the case in one line
    std::optional<domain::Date> needed{};
    std::vector<TicketStage> stages{};  ///< of its route, in order
    Hazards hazards{};
};

/// Bars to scan, and for each stage a box to tick with who and when. The order number of the head
/// is that of the ticket.
Paper ticketOf(const PaperHead& head, const Ticket& ticket);

}  // namespace reports
