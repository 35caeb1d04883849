/// The delivery note: what goes out to a prescriber, and what the patient should know of it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "domain/base/id.h"
#include "domain/prescription/enclosure.h"
#include "reports/cautions.h"
#include "reports/lot_table.h"
#include "reports/paper.h"

namespace reports {

struct DeliveredOrder {
    domain::OrderNumber number;
    int revision{1};
    std::string patientReference{};
    std::string device{};           ///< in one line
    std::string statementNumber{};  ///< empty: none goes with it
    std::vector<LotLine> lots{};
};

struct Delivery {
    std::string prescriber{};
    std::string prescriberAddress{};
    domain::Date on;                       ///< the day it leaves
    std::vector<DeliveredOrder> orders{};  ///< one at least
    std::vector<std::string> sentBack{};   ///< casts, records, an old denture
    std::optional<domain::Disinfection> disinfection{};
    Hazards hazards{};
};

/// Of one order, the header names it; of several, the table does.
Paper deliveryNote(const PaperHead& head, const Delivery& delivery);

}  // namespace reports
