/// The bench sheet: the values one stage of one order is worked by.
#pragma once

#include <string>
#include <vector>

#include "domain/base/id.h"
#include "domain/route/stage.h"
#include "reports/cautions.h"
#include "reports/paper.h"

namespace reports {

struct BenchValue {
    std::string label{};
    std::string value{};  ///< with its unit
};

struct Bench {
    domain::OrderNumber number;
    std::string patientCode{};
    std::string description{};  ///< of the case in one line
    domain::Stage stage{};
    std::vector<BenchValue> values{};
    std::vector<std::string> notes{};  ///< where the values come from, what they assume
    Hazards hazards{};
};

/// Each value beside room for what was done instead.
Paper benchSheet(const PaperHead& head, const Bench& bench);

}  // namespace reports
