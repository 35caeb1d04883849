/// The sub-order: what another laboratory is asked to make of an order, with all the law asks of a
/// work authorization. It carries the patient's code and never a name.
#pragma once

#include <optional>
#include <string>

#include "domain/base/id.h"
#include "domain/prescription/prescription.h"
#include "domain/route/stage.h"
#include "domain/workshop/equipment.h"
#include "reports/paper.h"

namespace reports {

struct SubOrder {
    domain::OrderNumber number;
    domain::Site site{};
    domain::Stage stage{};
    std::string patientCode{};
    std::optional<domain::Date> wantedBack{};
};

/// Sources of its fields: the state laws on work authorizations, North Carolina 90-29.2 and Florida
/// 64B5-17.006 on work that is passed on.
Paper subOrder(const PaperHead& head, const SubOrder& order,
               const domain::Prescription& prescription);

}  // namespace reports
