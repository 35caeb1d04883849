/// What the laws of several places ask a prescription for a laboratory to say, taken together.
///
/// Source: the union of the statutes named in each row. Where the laboratory works, fewer may be
/// asked; which law applies is for the laboratory to know.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "domain/prescription/prescription.h"
#include "domain/production/required_row.h"

namespace domain {

/// A material by type and quality. No statute says what quality is; here it is what tells grades
/// of one type apart: how a framework is made, how a resin is cured (the types of ISO 20795-1), the
/// mould of teeth.
struct NamedMaterial {
    std::string part{};  ///< "framework"
    std::optional<std::string> type{};
    std::optional<std::string> quality{};
    friend bool operator==(const NamedMaterial&, const NamedMaterial&) = default;
};

struct LegalFacts {
    std::string laboratoryName{};
    std::string laboratoryAddress{};
    bool laboratoryMustRegister{};  ///< whether the law of the place registers laboratories
    std::optional<std::string> laboratoryRegistration{};
    std::optional<std::string> prescriberName{};
    std::optional<std::string> prescriberAddress{};
    std::optional<std::string> prescriberRegistration{};
    std::optional<std::string> prescriberContact{};
    std::optional<std::string> patient{};  ///< a name, a number or a code
    std::optional<Date> issued{};
    std::vector<std::string> pieces{};  ///< one description for each separate piece
    std::vector<NamedMaterial> materials{};
    WhereApplicable<std::vector<std::string>> clasps{};  ///< what is said of each clasp
    WhereApplicable<std::string> occlusion{};            ///< contacts in closure and excursions
    std::optional<Signature> signature{};
    friend bool operator==(const LegalFacts&, const LegalFacts&) = default;
};

/// As the prescription says them, `prescription` with its identity.
///
/// Clasps are not applicable where none is prescribed and none is expected: an interim denture, a
/// repair, an addition or a reline may do without, a metal framework may not. Contacts are not
/// applicable where a denture that exists is changed, or where no replaced tooth has an antagonist.
LegalFacts legalFactsOf(const Prescription& prescription, std::string laboratoryName,
                        std::string laboratoryAddress);

/// Empty: it says all that these laws ask. What was typed is never repeated in a finding.
std::vector<Finding> lackingIn(const LegalFacts& facts);

}  // namespace domain
