/// The recall letter: tells one prescriber which devices hold a lot that is called back.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "domain/base/id.h"
#include "reports/paper.h"

namespace reports {

struct RecalledDevice {
    domain::OrderNumber number;
    std::string patientReference{};
    std::string device{};  ///< in one line
    std::optional<domain::Date> delivered{};
};

struct Recall {
    std::string prescriber{};
    std::string prescriberAddress{};
    domain::Date issued;
    std::string material{};
    std::string lot{};
    std::string maker{};
    std::string reason{};             ///< in sentences, as the maker or the authority gives it
    std::vector<std::string> toDo{};  ///< what is asked, step by step
    std::vector<RecalledDevice> devices{};  ///< of this prescriber alone
};

/// The contact is that of the head.
Paper recallLetter(const PaperHead& head, const Recall& recall);

}  // namespace reports
