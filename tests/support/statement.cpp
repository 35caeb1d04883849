#include "tests/support/statement.h"

namespace support {

using namespace domain;

Statement completeStatement() {
    return {.manufacturer = {"Foundry Walk Dental Workshop", "7 Foundry Walk, Westhaven"},
            .sites = {{{"Foundry Walk Dental Workshop", "7 Foundry Walk, Westhaven"},
                       "survey, wax-up, resin work, finishing"},
                      {{"Harbour Street Casting Shop", "2 Harbour Street, Easthaven"},
                       "casting of the framework"}},
            .representative = NotApplicable{},
            .device = OrderNumber::make(26, 12),
            .description = "Removable partial denture, metal framework, upper arch",
            .patientReference = "P-1044",
            .exclusiveUse = true,
            .prescriber = {.name = "Dr Inés Quintañar",
                           .qualification = "dentist, register of Westhaven, no. 4471",
                           .institution = std::string{"Practice at the Old Pier"}},
            .characteristics = {.lines = {"Upper arch, Kennedy class III mod 1, tooth supported",
                                          "Cobalt-chromium framework, cast; single palatal strap",
                                          "Clasps on 16, 13, 23 and 27; rests on the same teeth"},
                                .revision = 2,
                                .digest = "9f86d081884c7d659a2feaa0c55ad015"
                                          "a3bf4f1b2b0b822cd15d6c15b0f00a08"},
            .conformity =
                ConformityDeclaration{
                    {{.requirement = "Annex I, 10.4.1: substances that can cause cancer",
                      .grounds = "The prescription asks for a cobalt-chromium alloy; benefit and "
                                 "risk were weighed by the prescriber."}}},
            .substances = NotApplicable{}};
}

}  // namespace support
