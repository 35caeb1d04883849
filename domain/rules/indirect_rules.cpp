#include <algorithm>

#include "domain/design/fulcrum.h"
#include "domain/design/support.h"
#include "domain/design/design_view.h"
#include "domain/rules/rule.h"
#include "domain/rules/sources.h"

namespace domain {

namespace {

bool rocks(const Prescription& prescription) {
    const auto kennedyClass = classOf(prescription);
    if (!kennedyClass) return false;
    switch (*kennedyClass) {
        case KennedyClass::I:
        case KennedyClass::II:
            return true;
        case KennedyClass::III:
            return false;
        case KennedyClass::IV:
            return supportOf(prescription) != Support::Tooth;
    }
    return false;
}

void indirectRetainerIsNamed(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (isMetal(prescription) && rocks(prescription) && prescription.indirectRetainers.empty())
        findings.add("Class " + std::string{codeOf(*classOf(prescription))} +
                     ", and no indirect retainer is named");
}

void indirectRetainerIsAcross(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    const auto fulcrum = fulcrumOf(prescription);
    if (!isMetal(prescription) || !fulcrum) return;
    for (const IndirectRetainer& retainer : prescription.indirectRetainers) {
        const bool across = std::ranges::any_of(prescription.rests, [&](const Rest& rest) {
            return rest.tooth == retainer.tooth &&
                   fulcrum->isAcross(arcPlace(rest.tooth, rest.side));
        });
        if (!across && hasRest(prescription, retainer.tooth))
            findings.add(retainer.tooth, "the rest on " + findings.name(retainer.tooth) +
                                             " does not lie across the fulcrum line");
    }
}

bool isPlate(const Prescription& prescription) {
    if (!prescription.majorConnector) return false;
    const ConnectorKind kind = prescription.majorConnector->kind;
    return kind == ConnectorKind::LingualPlate || kind == ConnectorKind::CingulumBar ||
           kind == ConnectorKind::DoubleLingualBar;
}

void indirectRetainerIsSeated(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isMetal(prescription)) return;
    for (const IndirectRetainer& retainer : prescription.indirectRetainers) {
        const Tooth tooth = retainer.tooth;
        const bool unprepared = std::ranges::any_of(prescription.rests, [&](const Rest& rest) {
            return rest.tooth == tooth && rest.seatPrepared == false;
        });
        if (unprepared)
            findings.add(tooth,
                         "the rest on " + findings.name(tooth) + " lies in no prepared seat");
        else if (!hasRest(prescription, tooth) && !isPlate(prescription))
            findings.add(tooth, "no rest on " + findings.name(tooth));
    }
}

void plateAloneRetainsNothing(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isMetal(prescription) || !isPlate(prescription)) return;
    for (const IndirectRetainer& retainer : prescription.indirectRetainers)
        if (!hasRest(prescription, retainer.tooth))
            findings.add(retainer.tooth, "only the " + wordsOf(prescription.majorConnector->kind) +
                                             " lies on " + findings.name(retainer.tooth));
}

constexpr Rule kRules[] = {
    {.id = "indirect.required",
     .severity = Severity::Missing,
     .requirement = "A denture that rocks about a fulcrum line (Class I, II, and a long Class IV) "
                    "has an indirect retainer.",
     .question = "Which rest shall be the indirect retainer, across the fulcrum line from the free "
                 "end?",
     .source = "Avant: all extension-base partial dentures retained by clasps need indirect "
               "retention; Class IV by teaching notes after McCracken, secondary source",
     .check = indirectRetainerIsNamed},
    {.id = "indirect.position",
     .severity = Severity::Conflict,
     .requirement = "The indirect retainer lies on the other side of the fulcrum line from the "
                    "base.",
     .question =
         "This rest lies on the fulcrum line or on the side of the base, so it cannot resist "
         "the rocking. Which rest across the line shall do it?",
     .source = "Glossary of Prosthodontic Terms, indirect retainer; the line through the most "
               "posterior rest of each side by teaching notes after McCracken, secondary source",
     .check = indirectRetainerIsAcross},
    {.id = "indirect.seat",
     .severity = Severity::Conflict,
     .requirement = "An indirect retainer rests on a definite seat.",
     .question = "The indirect retainer needs a rest in a prepared seat. Is one prepared on this "
                 "tooth?",
     .source = source::kMcCracken,
     .check = indirectRetainerIsSeated},
    {.id = "indirect.plate-alone",
     .severity = Severity::Conflict,
     .requirement = "A lingual plate or a cingulum bar without rests is no indirect retainer.",
     .question = "The plate alone is no indirect retainer. On which tooth may it end in a rest?",
     .source = source::kMcCracken,
     .check = plateAloneRetainsNothing},
};

}  // namespace

std::span<const Rule> indirectRules() { return kRules; }

}  // namespace domain
