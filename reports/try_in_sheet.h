/// The try-in sheet: leaves with a framework or a set-up, comes back with what the dentist found.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "domain/base/id.h"
#include "domain/prescription/enclosure.h"
#include "reports/cautions.h"
#include "reports/paper.h"

namespace reports {

enum class TryInKind : std::uint8_t {
    Framework,
    Teeth,  ///< set up in wax
};

struct TryIn {
    TryInKind kind{};
    domain::OrderNumber number;
    std::string patientReference{};
    std::string prescriber{};
    std::string description{};  ///< of the case in one line
    std::optional<domain::Date> wantedBack{};
    std::vector<std::string> parcel{};     ///< what is sent
    std::vector<std::string> questions{};  ///< of the laboratory, to be answered at the chair
    std::optional<domain::Disinfection> disinfection{};  ///< as it left
    Hazards hazards{};
};

/// What to look at in the mouth, what was found, what next, signature and disinfection.
Paper tryInSheet(const PaperHead& head, const TryIn& tryIn);

}  // namespace reports
