#include <algorithm>
#include <cmath>

#include "domain/design/design_view.h"
#include "domain/rules/rule.h"
#include "domain/rules/sources.h"

namespace domain {

namespace {

constexpr Microns kStrapWidth = 8000_um;
constexpr Microns kStrapOpening = 15'000_um;

/// The check of the major connector of a metal framework.
template <void (*check)(const Examination&, const MajorConnector&, Findings&)>
void onConnector(const Examination& examination, Findings& findings) {
    const auto& connector = examination.prescription.majorConnector;
    if (isMetal(examination.prescription) && connector) check(examination, *connector, findings);
}

std::string atLeast(Microns given, Microns limit) {
    return text(given) + " given; at least " + text(limit) + " is asked";
}

void connectorIsNamed(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (isMetal(prescription) && !prescription.majorConnector)
        findings.add("no major connector is named");
}

void connectorSuitsArch(const Examination& examination, const MajorConnector& connector,
                        Findings& findings) {
    if (archOf(connector.kind) != examination.prescription.arch)
        findings.add(wordsOf(connector.kind) + " in the " +
                     std::string{codeOf(examination.prescription.arch)} + " arch");
}

void barHasSpace(const Examination& examination, const MajorConnector& connector,
                 Findings& findings) {
    if (connector.kind != ConnectorKind::LingualBar &&
        connector.kind != ConnectorKind::DoubleLingualBar)
        return;
    const auto& depth = examination.prescription.survey.lingualDepth;
    const Microns limit = examination.limits.lingualBarSpace;
    if (!depth)
        findings.add(
            "the depth from the gingival margin to the raised floor of the mouth is not "
            "given");
    else if (*depth < limit)
        findings.add("depth for a " + wordsOf(connector.kind) + ": " + tooLittle(*depth, limit));
}

void connectorClearsGingiva(const Examination& examination, const MajorConnector& connector,
                            Findings& findings) {
    // A plate and a cingulum bar lie on the teeth themselves.
    if (connector.kind == ConnectorKind::LingualPlate ||
        connector.kind == ConnectorKind::CingulumBar)
        return;
    const Microns limit = examination.prescription.arch == Arch::Upper
                              ? examination.limits.upperClearance
                              : examination.limits.lowerClearance;
    if (connector.gingivalClearance && *connector.gingivalClearance < limit)
        findings.add("border to gingival margin: " +
                     tooLittle(*connector.gingivalClearance, limit));
}

void strapIsWide(const Examination& /*examination*/, const MajorConnector& connector,
                 Findings& findings) {
    if (connector.kind == ConnectorKind::PalatalStrap && connector.width &&
        *connector.width < kStrapWidth)
        findings.add(atLeast(*connector.width, kStrapWidth));
}

void doubleStrapIsOpen(const Examination& /*examination*/, const MajorConnector& connector,
                       Findings& findings) {
    if (connector.kind != ConnectorKind::DoublePalatalStrap) return;
    if (connector.opening && *connector.opening < kStrapOpening)
        findings.add("opening: " + atLeast(*connector.opening, kStrapOpening));
    // One width is given for both straps, so it must do for the posterior one.
    if (connector.width && *connector.width < kStrapWidth)
        findings.add("posterior strap: " + atLeast(*connector.width, kStrapWidth));
}

bool replacesSeveralIncisors(const Prescription& prescription) {
    return std::ranges::count_if(replacedTeeth(prescription).teeth(), [](Tooth tooth) {
               return tooth.kind() == ToothKind::Incisor;
           }) >= 2;
}

void connectorSuitsClass(const Examination& examination, const MajorConnector& connector,
                         Findings& findings) {
    const Prescription& prescription = examination.prescription;
    const bool torus = prescription.survey.torus == true;
    switch (connector.kind) {
        case ConnectorKind::PalatalBar:
            return findings.add("a single palatal bar is too thick where it is rigid");
        case ConnectorKind::PalatalStrap:
            if (examination.design.kennedyClass() == KennedyClass::I)
                findings.add("a single palatal strap carries two free ends");
            return;
        case ConnectorKind::Horseshoe:
            if (!torus && !replacesSeveralIncisors(prescription))
                findings.add("a horseshoe, with neither a torus nor several incisors replaced");
            return;
        case ConnectorKind::LabialBar:
            if (!torus) findings.add("a labial bar, and no torus that forbids a lingual one");
            return;
        case ConnectorKind::DoublePalatalStrap:
        case ConnectorKind::PalatalPlate:
        case ConnectorKind::LingualBar:
        case ConnectorKind::LingualPlate:
        case ConnectorKind::SublingualBar:
        case ConnectorKind::CingulumBar:
        case ConnectorKind::DoubleLingualBar:
            return;
    }
}

/// Whether a torus lies under it: the palatine one in the middle of the palate, the mandibular ones
/// on the tongue side below the teeth.
bool crossesTorus(ConnectorKind kind) {
    switch (kind) {
        case ConnectorKind::PalatalStrap:
        case ConnectorKind::PalatalBar:
        case ConnectorKind::PalatalPlate:
        case ConnectorKind::LingualBar:
        case ConnectorKind::LingualPlate:
        case ConnectorKind::SublingualBar:
        case ConnectorKind::DoubleLingualBar:
            return true;
        case ConnectorKind::DoublePalatalStrap:
        case ConnectorKind::Horseshoe:
        case ConnectorKind::CingulumBar:
        case ConnectorKind::LabialBar:
            return false;
    }
    return false;
}

void torusIsRelieved(const Examination& examination, const MajorConnector& connector,
                     Findings& findings) {
    if (crossesTorus(connector.kind) && examination.prescription.survey.torus == true &&
        connector.relief != true)
        findings.add("a torus, and a " + wordsOf(connector.kind) + " across it without relief");
}

void plateEndsInRests(const Examination& examination, const MajorConnector& connector,
                      Findings& findings) {
    if (connector.kind != ConnectorKind::LingualPlate) return;
    for (const Side side : {Side::Right, Side::Left})
        if (hasAbutment(examination.prescription, side) &&
            std::ranges::none_of(examination.prescription.rests,
                                 [&](const Rest& rest) { return rest.tooth.side() == side; }))
            findings.add(std::string{"no rest at its "} + (side == Side::Right ? "right" : "left") +
                         " end");
}

void beadingAndReliefSuitArch(const Examination& examination, const MajorConnector& connector,
                              Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (prescription.arch == Arch::Lower && connector.beading == true)
        findings.add("beading in the lower arch");
    if (prescription.arch == Arch::Upper && connector.relief == true &&
        prescription.survey.torus != true)
        findings.add("relief under an upper connector, and no torus is given");
}

/// A saddle whose teeth are all incisors and canines.
bool isInFront(const Saddle& saddle) {
    return !saddle.teeth.empty() && std::ranges::all_of(saddle.teeth, [](Tooth tooth) {
        return tooth.kind() == ToothKind::Incisor || tooth.kind() == ToothKind::Canine;
    });
}

void connectorReachesParts(const Examination& examination, const MajorConnector& connector,
                           Findings& findings) {
    const Prescription& prescription = examination.prescription;
    // What lies across the palate behind the rugae does not come to the front teeth.
    if (connector.kind == ConnectorKind::PalatalStrap ||
        connector.kind == ConnectorKind::PalatalBar)
        for (const Saddle& saddle : prescription.saddles)
            if (isInFront(saddle))
                findings.add(saddle.teeth.front(), "a " + wordsOf(connector.kind) +
                                                       " does not reach the saddle of " +
                                                       findings.name(saddle.teeth.front()));
}

/// A bar across the tongue side of the lower front teeth that lies on their cingula.
void barLiesOnTeeth(const Examination& examination, const MajorConnector& connector,
                    Findings& findings) {
    if (connector.kind != ConnectorKind::CingulumBar &&
        connector.kind != ConnectorKind::DoubleLingualBar)
        return;
    for (const Tooth tooth : replacedTeeth(examination.prescription).teeth())
        if (tooth.arch() == Arch::Lower && tooth.kind() == ToothKind::Incisor)
            findings.add(tooth, "a " + wordsOf(connector.kind) + ", and " + findings.name(tooth) +
                                    " on which it would lie is replaced");
}

void barIsHigh(const Examination& /*examination*/, const MajorConnector& connector,
               Findings& findings) {
    constexpr Microns kBarHeight = 4000_um;
    if (connector.kind == ConnectorKind::LingualBar && connector.width &&
        *connector.width < kBarHeight)
        findings.add(atLeast(*connector.width, kBarHeight));
}

void barFitsBelowGingiva(const Examination& examination, const MajorConnector& connector,
                         Findings& findings) {
    const auto& depth = examination.prescription.survey.lingualDepth;
    if (connector.kind == ConnectorKind::SublingualBar && depth && connector.width &&
        *connector.width > *depth)
        return findings.add("a bar of " + text(*connector.width) + "; the mouth has " +
                            text(*depth));
    if (connector.kind != ConnectorKind::LingualBar || !depth || !connector.width ||
        !connector.gingivalClearance)
        return;
    const Microns needed = *connector.width + *connector.gingivalClearance;
    if (needed > *depth)
        findings.add(text(*connector.gingivalClearance) + " of distance and " +
                     text(*connector.width) + " of bar need " + text(needed) + "; the mouth has " +
                     text(*depth));
}

void verticalPartsStandApart(const Examination& examination, Findings& findings) {
    constexpr double kApart = 5;     // mm
    constexpr double kOnePlace = 1;  // mm; two in one embrasure are one part
    const Prescription& prescription = examination.prescription;
    if (!isMetal(prescription)) return;
    const auto& connectors = prescription.minorConnectors;
    for (auto first = connectors.begin(); first != connectors.end(); ++first)
        for (auto second = first + 1; second != connectors.end(); ++second) {
            const double apart = std::abs(alongOf(examination.design.form, *first) -
                                          alongOf(examination.design.form, *second));
            if (apart < kApart && apart > kOnePlace)
                findings.add(first->tooth, "the minor connectors on " +
                                               findings.name(first->tooth) + " and " +
                                               findings.name(second->tooth) + " stand about " +
                                               std::to_string(std::lround(apart)) +
                                               " mm apart; at least 5 mm are asked");
        }
}

void partsAreJoined(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isMetal(prescription)) return;
    for (const Tooth tooth : abutments(prescription).teeth())
        if (!hasMinorConnector(prescription, tooth))
            findings.add(tooth, "nothing joins the parts on " + findings.name(tooth));
}

constexpr Rule kRules[] = {
    {.id = "connector.given",
     .severity = Severity::Missing,
     .ground = Ground::Published,
     .requirement = "A major connector is named.",
     .question = "Which major connector do you prescribe?",
     .source =
         "Nassani and Alotaibi, European Oral Research 2020: major connector, one of the four "
         "variables a prescription is scored by",
     .check = connectorIsNamed},
    {.id = "connector.arch",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "The major connector belongs to the arch of the appliance.",
     .question = "This connector is one of the other arch. Which connector is meant?",
     .source = "by definition of the connectors, Glossary of Prosthodontic Terms",
     .check = onConnector<connectorSuitsArch>},
    {.id = "connector.lingual-space",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement =
         "For a lingual bar the depth from the gingival margin to the raised floor of the "
         "mouth is measured and is enough.",
     .question = "How far is it from the gingival margin to the floor of the mouth when the tongue "
                 "is raised? If there is no room for a bar: shall we make a lingual plate?",
     .source = "at least 7 mm in one school (Stratton and Wiebelt 1988), 8 mm in another (teaching "
               "notes after McCracken; secondary sources); a setting of the laboratory, 7 mm by "
               "default; mean depth 7.44 mm at the central incisor: Cameron et al., Journal of "
               "Prosthodontics 2002",
     .check = onConnector<barHasSpace>},
    {.id = "connector.gingival-clearance",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "The border of the connector keeps its distance from the gingival margin, or "
                    "covers it as a plate.",
     .question = "The connector comes close to the gingival margin. Shall it stay there, or cover "
                 "the teeth as a plate?",
     .source = "upper 6 mm: University of Oklahoma, removable partial denture review questions, "
               "question 21; lower 3 or 4 mm by school (teaching notes after McCracken; secondary "
               "source); settings of the laboratory, 6 and 3 mm by default",
     .check = onConnector<connectorClearsGingiva>},
    {.id = "connector.strap-width",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "A palatal strap is at least 8 mm wide.",
     .question = "The strap is narrower than is usual for its stiffness. May it be 8 mm wide?",
     .source = source::kMcCracken,
     .check = onConnector<strapIsWide>},
    {.id = "connector.double-strap-opening",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "Between the two palatal straps at least 15 mm stay open, and they are wide "
                    "enough: 6 mm in front, 8 mm behind.",
     .question = "The opening between the straps, or the straps, are smaller than usual. Is that "
                 "intended?",
     .source = source::kMcCracken,
     .check = onConnector<doubleStrapIsOpen>},
    {.id = "connector.suits-class",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "The major connector suits the class, the span and the palate.",
     .question = "This connector is seldom used for such an arch. Is it intended?",
     .source = source::kMcCracken,
     .check = onConnector<connectorSuitsClass>},
    {.id = "connector.torus",
     .severity = Severity::Conflict,
     .ground = Ground::Safety,
     .requirement = "No strap, bar or plate crosses a torus without relief.",
     .question = "There is a torus under the connector. Shall it be relieved, or shall we take a "
                 "connector that leaves it free: above a horseshoe or a double strap, below a "
                 "labial bar?",
     .source = "patient safety: a rigid part on thin tissue over bone; teaching notes after "
               "McCracken, secondary source",
     .check = onConnector<torusIsRelieved>},
    {.id = "connector.plate-rests",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "A lingual plate has a rest at each end.",
     .question =
         "The lingual plate needs a rest at each end, else it presses the teeth outwards. On "
         "which teeth?",
     .source = source::kMcCracken,
     .check = onConnector<plateEndsInRests>},
    {.id = "connector.beading",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "No beading in the lower arch; no relief in the upper one without a torus or a "
                    "hard raphe.",
     .question =
         "Beading is usual only in the upper arch, relief only in the lower. Is it intended?",
     .source = source::kMcCracken,
     .check = onConnector<beadingAndReliefSuitArch>},
    {.id = "minor.joins",
     .severity = Severity::Caution,
     .ground = Ground::Practice,
     .requirement =
         "Every rest, clasp and guide plate has a minor connector on its tooth or in the "
         "embrasure beside it.",
     .question = "Where shall the minor connector of this tooth run?",
     .source = source::kCommonPractice,
     .check = partsAreJoined},
    {.id = "connector.reaches",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement =
         "The major connector reaches every saddle: a strap or bar across the palate does "
         "not come to a saddle of front teeth.",
     .question = "The connector does not reach all of the saddles. Which connector is meant?",
     .source = "Glossary of Prosthodontic Terms, major connector: it joins the parts on one side "
               "to those on the other; where a strap lies by teaching notes after McCracken, "
               "secondary source",
     .check = onConnector<connectorReachesParts>},
    {.id = "connector.lies-on-teeth",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "A bar on the cingula of the lower front teeth has these teeth to lie on.",
     .question = "The bar would lie on teeth that are missing. Which connector is meant?",
     .source = "by definition of the cingulum bar, Glossary of Prosthodontic Terms",
     .check = onConnector<barLiesOnTeeth>},
    {.id = "connector.bar-height",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "A lingual bar is at least 4 mm high.",
     .question = "The bar is lower than is usual for its stiffness. May it be 4 mm high?",
     .source = source::kMcCracken,
     .check = onConnector<barIsHigh>},
    {.id = "connector.bar-fits",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "The height of a lingual bar and its distance from the gingiva are together "
                    "not more than the depth measured, nor is a sublingual bar alone.",
     .question = "The bar and its distance from the gingiva need more room than there is. Shall "
                 "the bar be lower or nearer, or shall we make a lingual plate?",
     .source = "arithmetic of the three lengths given",
     .check = onConnector<barFitsBelowGingiva>},
    {.id = "minor.spacing",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "Minor connectors stand at least 5 mm apart, or share an embrasure.",
     .question = "Two minor connectors stand close together and trap food between them. May one "
                 "of them run elsewhere?",
     .source = source::kMcCracken,
     .check = verticalPartsStandApart},
};

}  // namespace

std::span<const Rule> connectorRules() { return kRules; }

}  // namespace domain
