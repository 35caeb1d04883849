#include <algorithm>

#include "domain/base/colour_difference.h"
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

/// "A-D scale A3": a guide and a tab the laboratory has. Anything else is a text somebody typed,
/// and is not repeated.
std::string named(const ShadeGuide& guide, const ShadeTab& tab) {
    return guide.name + ' ' + tab.name;
}

void tabIsInTheGuide(const Examination& examination, Findings& findings) {
    for (const Shade& shade : examination.prescription.shades) {
        if (isBlank(shade.guide) || isBlank(shade.tab)) continue;
        const ShadeGuide* guide = guideNamed(examination.guides, shade.guide);
        if (guide == nullptr)
            findings.advise("the guide named is none this laboratory has");
        else if (tabNamed(*guide, shade.tab) == nullptr)
            findings.add("the tab named is not in the guide " + guide->name);
    }
}

void tabLooksLikeTheTooth(const Examination& examination, Findings& findings) {
    for (const Shade& shade : examination.prescription.shades) {
        const ShadeGuide* guide = guideNamed(examination.guides, shade.guide);
        const ShadeTab* tab = guide == nullptr ? nullptr : tabNamed(*guide, shade.tab);
        if (tab == nullptr || !tab->colour || !shade.measured) continue;
        const double difference = colourDifference(*tab->colour, *shade.measured);
        if (difference <= kAcceptable) continue;
        const TabDistance nearest = nearestTabs(*guide, *shade.measured).front();
        findings.add(named(*guide, *tab) + " differs by " + tenths(difference) +
                     " from the tooth measured, and " + nearest.tab->name + ", the nearest, by " +
                     tenths(nearest.difference) + "; " + tenths(kAcceptable) +
                     " is accepted by half");
    }
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
     .ground = Ground::Published,
     .requirement = "Guide and tab of the shade are given for every tooth to be replaced.",
     .question = "Which shade shall the teeth have: which guide, and which tab?",
     .source = "Sui et al., Journal of Prosthodontics 2014;23(8): shade as an item of the "
               "prescription; South Carolina R.39-8(A)(4): aesthetics",
     .check = shadeIsGiven},
    {.id = "shade.tab-known",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "The tab is one of the guide named, and the guide one the laboratory has.",
     .question = "We do not find this tab in this guide. Which guide and which tab are meant?",
     .source = "by definition: the guides are data of the laboratory",
     .check = tabIsInTheGuide},
    {.id = "shade.match",
     .severity = Severity::Caution,
     .ground = Ground::Published,
     .requirement = "Where the tooth to be matched is measured, the tab differs from it by no more "
                    "than half of the observers accept (CIEDE2000 1.8).",
     .question = "The tab and the measured tooth differ visibly. Shall we take the nearer tab, or "
                 "the one prescribed?",
     .source = "Paravina et al., Journal of Esthetic and Restorative Dentistry 2015: half of the "
               "observers see 0.8 and accept 1.8; CIEDE2000 by Sharma et al. 2005",
     .check = tabLooksLikeTheTooth},
    {.id = "shade.mould",
     .severity = Severity::Caution,
     .ground = Ground::Published,
     .requirement = "The mould of the teeth is given, or that they are to match their neighbours.",
     .question = "Which mould shall the teeth have, or shall they match their neighbours?",
     .source = "survey of 600 prescriptions in Tabriz, 2016: mould as an item of the prescription; "
               "that the laboratory may choose one is common practice, no source",
     .check = mouldIsGiven},
    {.id = "shade.gingival",
     .severity = Severity::Caution,
     .ground = Ground::Practice,
     .requirement = "The colour of the base is given.",
     .question = "Which colour shall the gingival part have?",
     .source = source::kCommonPractice,
     .check = baseColourIsGiven},
    {.id = "occlusion.scheme",
     .severity = Severity::Caution,
     .ground = Ground::Law,
     .requirement = "The contacts in closure and in excursions are said.",
     .question = "How shall the teeth meet: as they do now, canine-guided, in group function, or "
                 "balanced on both sides?",
     .source = "South Carolina R.39-8(A)(4): occlusal contacts in centric and excursions",
     .check = contactsAreSaid},
};

}  // namespace

std::span<const Rule> appearanceRules() { return kRules; }

}  // namespace domain
