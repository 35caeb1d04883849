#include <algorithm>

#include "domain/design/design_view.h"
#include "domain/rules/rule.h"
#include "domain/rules/sources.h"

namespace domain {

namespace {

/// Whether teeth are set up: in every new denture, and in an addition of a tooth.
bool setsTeeth(const Prescription& prescription) {
    return !prescription.saddles.empty() &&
           (isNewDenture(prescription) || applianceOf(prescription) == Appliance::Addition);
}

bool isShaded(const Prescription& prescription, Tooth tooth) {
    return std::ranges::any_of(prescription.shades, [&](const Shade& shade) {
        return !isBlank(shade.guide) && !isBlank(shade.tab) &&
               (shade.teeth.empty() || std::ranges::count(shade.teeth, tooth) > 0);
    });
}

void shadeIsGiven(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!setsTeeth(prescription)) return;
    if (prescription.shades.empty()) return findings.add("no shade");
    for (const Tooth tooth : replacedTeeth(prescription).teeth())
        if (!isShaded(prescription, tooth))
            findings.add(tooth, "no guide and tab for " + findings.name(tooth));
}

void mouldIsGiven(const Examination& examination, Findings& findings) {
    if (setsTeeth(examination.prescription) && isBlank(examination.prescription.teeth.mould))
        findings.add("no mould");
}

void baseColourIsGiven(const Examination& examination, Findings& findings) {
    if (setsTeeth(examination.prescription) && isBlank(examination.prescription.base.colour))
        findings.add("no colour of the base");
}

void contactsAreSaid(const Examination& examination, Findings& findings) {
    if (isNewDenture(examination.prescription) && !examination.prescription.occlusion.scheme)
        findings.add("no contacts in closure and excursions");
}

constexpr Rule kRules[] = {
    {.id = "shade.given",
     .severity = Severity::Missing,
     .requirement = "Guide and tab of the shade are given for every tooth to be replaced.",
     .question = "Which shade shall the teeth have: which guide, and which tab?",
     .source = "Sui et al., Journal of Prosthodontics 2014;23(8): shade as an item of the "
               "prescription; South Carolina R.39-8(A)(4): aesthetics",
     .check = shadeIsGiven},
    {.id = "shade.mould",
     .severity = Severity::Missing,
     .requirement = "The mould of the teeth is given, or that they are to match their neighbours.",
     .question = "Which mould shall the teeth have, or shall they match their neighbours?",
     .source = "survey of 600 prescriptions in Tabriz, 2016: mould as an item of the prescription",
     .check = mouldIsGiven},
    {.id = "shade.gingival",
     .severity = Severity::Caution,
     .requirement = "The colour of the base is given.",
     .question = "Which colour shall the gingival part have?",
     .source = source::kCommonPractice,
     .check = baseColourIsGiven},
    {.id = "occlusion.scheme",
     .severity = Severity::Caution,
     .requirement = "The contacts in closure and in excursions are said.",
     .question = "How shall the teeth meet: as they do now, canine-guided, in group function, or "
                 "balanced on both sides?",
     .source = "South Carolina R.39-8(A)(4): occlusal contacts in centric and excursions",
     .check = contactsAreSaid},
};

}  // namespace

std::span<const Rule> appearanceRules() { return kRules; }

}  // namespace domain
