/// What the tables about clasps share; private to this folder.
#pragma once

#include "domain/design/design_view.h"
#include "domain/rules/rule.h"

namespace domain {

/// "I-bar clasp"
inline std::string named(const Clasp& clasp) { return wordsOf(clasp.kind) + " clasp"; }

using ClaspCheck = void (*)(const Examination&, const Clasp&, Findings&);

/// The check of each clasp of a metal framework.
template <ClaspCheck check>
void eachClasp(const Examination& examination, Findings& findings) {
    if (!isMetal(examination.prescription)) return;
    for (const Clasp& clasp : examination.prescription.clasps) check(examination, clasp, findings);
}

/// The check of each clasp, whether it is made with a framework or added to a denture that exists.
template <ClaspCheck check>
void eachNewClasp(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isMetal(prescription) && applianceOf(prescription) != Appliance::Addition) return;
    for (const Clasp& clasp : prescription.clasps) check(examination, clasp, findings);
}

inline bool isWrought(const Prescription& prescription, const Clasp& clasp) {
    return armMaterial(prescription, clasp) == ArmMaterial::WroughtWire;
}

}  // namespace domain
