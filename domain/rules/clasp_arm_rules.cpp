#include <algorithm>
#include <cmath>

#include "domain/design/support.h"
#include "domain/rules/each_clasp.h"
#include "domain/rules/sources.h"

namespace domain {

namespace {

// The undercut it engages.

/// Only these run round the tooth, so that the tip may lie on the face opposite to the arm's start.
bool runsRound(ClaspKind kind) { return kind == ClaspKind::Ring || kind == ClaspKind::BackAction; }

void undercutIsGiven(const Examination& /*examination*/, const Clasp& clasp, Findings& findings) {
    if (!clasp.retentiveArm)
        findings.add(clasp.tooth, named(clasp) + ": the face of its retentive arm is not said");
    if (!clasp.undercut) return findings.add(clasp.tooth, named(clasp) + ": no undercut is named");
    const Undercut& undercut = *clasp.undercut;
    if (!undercut.depth || *undercut.depth <= 0_um)
        findings.add(clasp.tooth, named(clasp) + ": no depth of its undercut");
    if (clasp.retentiveArm && !runsRound(clasp.kind) &&
        *clasp.retentiveArm != faceOf(undercut.place))
        findings.contradict(clasp.tooth, named(clasp) + ": the arm runs " +
                                             wordsOf(*clasp.retentiveArm) + ", the undercut lies " +
                                             wordsOf(undercut.place));
}

/// nullopt: in the middle of the face.
std::optional<Surface> endOf(UndercutPlace place) {
    switch (place) {
        case UndercutPlace::MesioBuccal:
        case UndercutPlace::MesioLingual:
            return Surface::Mesial;
        case UndercutPlace::DistoBuccal:
        case UndercutPlace::DistoLingual:
            return Surface::Distal;
        case UndercutPlace::MidBuccal:
        case UndercutPlace::MidLingual:
            return {};
    }
    return {};
}

/// These start from above, beside their rest.
bool startsAtItsRest(ClaspKind kind) {
    return kind == ClaspKind::Circumferential || kind == ClaspKind::ReverseCircumferential ||
           kind == ClaspKind::Combination;
}

void tipLiesAcross(const Examination& examination, const Clasp& clasp, Findings& findings) {
    if (!startsAtItsRest(clasp.kind) || !clasp.undercut) return;
    const auto end = endOf(clasp.undercut->place);
    if (end && hasRest(examination.prescription, clasp.tooth, *end) &&
        !hasRest(examination.prescription, clasp.tooth, opposite(*end)))
        findings.add(clasp.tooth, named(clasp) + ": its arm starts at the " + wordsOf(*end) +
                                      " rest, and its undercut lies " +
                                      wordsOf(clasp.undercut->place));
}

void undercutIsThere(const Examination& examination, const Clasp& clasp, Findings& findings) {
    const AbutmentSurvey* surveyed = surveyOf(examination.prescription, clasp.tooth);
    if (!clasp.undercut || !clasp.undercut->depth || !surveyed || surveyed->undercuts.empty())
        return;
    const auto found =
        std::ranges::find(surveyed->undercuts, clasp.undercut->place, &Undercut::place);
    if (found == surveyed->undercuts.end())
        findings.add(clasp.tooth, named(clasp) + ": the survey found no undercut " +
                                      wordsOf(clasp.undercut->place));
    else if (found->depth && *found->depth < *clasp.undercut->depth)
        findings.add(clasp.tooth, named(clasp) + ": " + text(*clasp.undercut->depth) +
                                      " asked; the survey found " + text(*found->depth));
}

/// The deepest undercut an arm of that material bears; gauges are cut in hundredths of an inch in
/// some schools, so 0.010 inch (0.254 mm) counts as 0.25 mm.
Microns deepestUndercut(ArmMaterial material, const HouseLimits& limits) {
    switch (material) {
        case ArmMaterial::CastCobaltChromium:
        case ArmMaterial::CastNickelChromium:
            return 254_um;
        case ArmMaterial::CastGold:
            return limits.goldUndercut;
        case ArmMaterial::WroughtWire:
            return limits.wroughtUndercut;
        case ArmMaterial::CastTitanium:
        case ArmMaterial::Polymer:
            return 762_um;
    }
    return {};
}

void undercutSuitsMaterial(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    for (const Clasp& clasp : prescription.clasps) {
        const auto material = armMaterial(prescription, clasp);
        if (!material || !clasp.undercut || !clasp.undercut->depth) continue;
        const Microns deepest = deepestUndercut(*material, examination.limits);
        if (*clasp.undercut->depth > deepest)
            findings.add(clasp.tooth, named(clasp) + ": " + text(*clasp.undercut->depth) +
                                          " given; an arm of " + wordsOf(*material) +
                                          " bears at most " + text(deepest));
    }
}

void freeEndIsNotTwisted(const Examination& examination, const Clasp& clasp, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    const auto material = armMaterial(prescription, clasp);
    // These approach from the gingiva or from the mesial, or let go as the base sinks.
    const bool releases = isBar(clasp.kind) || clasp.kind == ClaspKind::Rpa ||
                          clasp.kind == ClaspKind::ReverseCircumferential;
    const bool yields =
        !material || material == ArmMaterial::WroughtWire || material == ArmMaterial::Polymer;
    if (releases || yields || !clasp.undercut) return;
    const UndercutPlace place = clasp.undercut->place;
    const bool mesial = place == UndercutPlace::MesioBuccal || place == UndercutPlace::MesioLingual;
    if (mesial && isBesideFreeEnd(examination.design, clasp.tooth))
        findings.add(clasp.tooth, named(clasp) + ": a cast arm into a " + wordsOf(place) +
                                      " undercut beside a free end");
}

void toothSupportedClaspsAreCast(const Examination& examination, const Clasp& clasp,
                                 Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (examination.design.support == Support::Tooth && isWrought(prescription, clasp))
        findings.add(clasp.tooth, named(clasp) + ": a wrought arm in a tooth-supported denture");
}

// The arm as a spring.

std::string rangeText(Range range, const char* unit) {
    return tenths(range.least) + " to " + tenths(range.most) + ' ' + unit;
}

void armIsLongEnough(const Examination& examination, const Clasp& clasp, Findings& findings) {
    if (!clasp.arm.length || isBar(clasp.kind)) return;
    const auto material = armMaterial(examination.prescription, clasp);
    const auto least = [&]() -> std::optional<Microns> {
        if (material == ArmMaterial::CastCobaltChromium) return examination.limits.castArmLength;
        if (material == ArmMaterial::WroughtWire) return examination.limits.wroughtArmLength;
        return {};
    }();
    if (least && *clasp.arm.length < *least)
        findings.add(clasp.tooth,
                     named(clasp) + ", its arm: " + tooLittle(*clasp.arm.length, *least));
}

void armStaysElastic(const Examination& examination, const Clasp& clasp, Findings& findings) {
    // From derived sizes the stress is too uncertain to refuse by.
    if (!clasp.arm.length || !clasp.arm.width) return;
    const auto mechanics = mechanicsOf(examination.prescription, clasp);
    if (!mechanics || mechanics->setMargin.most >= 1) return;
    constexpr const char* kMegapascals = "MPa";
    findings.add(clasp.tooth,
                 named(clasp) + ": by calculation the arm as prescribed is stressed to " +
                     std::to_string(std::lround(mechanics->largestStress.least)) + " to " +
                     std::to_string(std::lround(mechanics->largestStress.most)) + ' ' +
                     kMegapascals + "; " + std::string{mechanics->material->name} + " bears " +
                     std::to_string(std::lround(mechanics->material->strength.range.most)) + ' ' +
                     kMegapascals + " at most");
}

void claspHoldsRightly(const Examination& examination, const Clasp& clasp, Findings& findings) {
    const auto mechanics = mechanicsOf(examination.prescription, clasp);
    if (!mechanics) return;
    const HouseLimits& limits = examination.limits;
    const auto newtons = [](Newtons force) { return static_cast<double>(force.count()) / 1000; };
    // From derived sizes only what is out by a factor of two is worth a question.
    const double doubt = mechanics->arm.isDerived() ? 2 : 1;
    const Range asked{newtons(limits.leastClaspForce) / doubt,
                      newtons(limits.mostClaspForce) * doubt};
    if (!mechanics->removal.overlaps(asked))
        findings.add(clasp.tooth, named(clasp) + ": it resists a pull of " +
                                      rangeText(mechanics->removal, "N") +
                                      (mechanics->arm.isDerived() ? ", its sizes derived" : "") +
                                      "; this laboratory asks " + text(limits.leastClaspForce) +
                                      " to " + text(limits.mostClaspForce));
}

// The arm from the gingiva.

void tissueLetsBarPass(const Examination& examination, const Clasp& clasp, Findings& findings) {
    constexpr Microns kDeepTissueUndercut = 1000_um;
    if (!isBar(clasp.kind)) return;
    const AbutmentSurvey* surveyed = surveyOf(examination.prescription, clasp.tooth);
    if (surveyed == nullptr) return;
    const bool undercut =
        surveyed->tissueUndercut && *surveyed->tissueUndercut > kDeepTissueUndercut;
    const bool frenum = surveyed->highFrenum == true;
    const std::string below = undercut ? ": the tissue below is undercut by " +
                                             text(*surveyed->tissueUndercut) + "; at most " +
                                             text(kDeepTissueUndercut) + " is usual"
                                       : "";
    if (undercut && frenum)
        findings.add(clasp.tooth, named(clasp) + below + ", and a high frenum crosses its way");
    else if (undercut)
        findings.advise(clasp.tooth, named(clasp) + below);
    else if (frenum)
        findings.advise(clasp.tooth, named(clasp) + ": a high frenum crosses its way");
}

void barHasSulcus(const Examination& examination, const Clasp& clasp, Findings& findings) {
    if (!isBar(clasp.kind)) return;
    const auto& depth = examination.prescription.survey.sulcusDepth;
    const Microns limit = examination.limits.barClaspSulcus;
    if (!depth)
        findings.add(clasp.tooth, named(clasp) + ": the depth of the sulcus is not given");
    else if (*depth < limit)
        findings.add(clasp.tooth,
                     named(clasp) + ", depth of the sulcus: " + tooLittle(*depth, limit));
}

constexpr Rule kRules[] = {
    {.id = "clasp.undercut-given",
     .severity = Severity::Caution,
     .ground = Ground::Definition,
     .requirement = "Face, place and depth of the undercut each retentive arm engages are given.",
     .question = "On which face does the retentive arm run, and which undercut shall it engage: "
                 "where, and how deep?",
     .source =
         "Daya and Owen, South African Dental Journal 2022;77(8): 1 of 114 casts was surveyed "
         "by the dentist, so what is left open the laboratory surveys; that face and undercut "
         "agree, by definition",
     .check = eachNewClasp<undercutIsGiven>},
    {.id = "clasp.undercut-measured",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement =
         "The survey found the undercut the arm engages, at that place and at least that "
         "deep.",
     .question =
         "The survey does not show this undercut there. Shall the arm engage another one, or "
         "shall the path of insertion be tilted?",
     .source = "by definition of surveying, Glossary of Prosthodontic Terms",
     .check = eachClasp<undercutIsThere>},
    {.id = "clasp.undercut-across",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "An arm from above ends at the other side of its face than the one it starts "
                    "from.",
     .question = "The arm starts where its tip shall lie. Does the rest lie on the other side, or "
                 "which undercut is meant?",
     .source = "by definition of the circumferential clasp, Glossary of Prosthodontic Terms: it "
               "encircles the tooth from its rest to the undercut",
     .check = eachClasp<tipLiesAcross>},
    {.id = "clasp.undercut-material",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "The depth of the undercut suits the material of the arm: cast "
                    "cobalt-chromium 0.25 mm, gold 0.38 to 0.50 mm, wrought wire 0.50 to 0.75 mm.",
     .question = "The undercut is deeper than an arm of this material bears. Shall the arm be of "
                 "another material, or engage a shallower undercut?",
     .source = "cast cobalt-chromium 0.25 mm: University of Western Australia, course notes "
               "DENT1158, project 4; gold and wrought wire differ by school (teaching notes after "
               "Davenport et al. and McCracken; secondary sources), the deepest of them is the "
               "limit; nickel-chromium as cobalt-chromium, from memory",
     .check = undercutSuitsMaterial},
    {.id = "clasp.arm-length",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "The retentive arm is long enough for its material.",
     .question =
         "The arm is shorter than is usual for its material. Shall it be of wrought wire, or "
         "approach from the gingiva?",
     .source = "cast cobalt-chromium 14 or 15 mm, wrought wire 7 or 8 mm by school (teaching notes "
               "after Davenport et al., British Dental Journal 2001;190:71-81, and from memory); "
               "settings of the laboratory, 14 and 7 mm by default",
     .check = eachClasp<armIsLongEnough>},
    {.id = "clasp.elastic-limit",
     .severity = Severity::Caution,
     .ground = Ground::Published,
     .requirement =
         "An arm of prescribed length and section stays below the strength of its material "
         "when it springs over the height of contour.",
     .question =
         "By calculation this arm is stressed beyond its material when the denture is put in. "
         "Shall it be longer, thinner, of another material, or engage a shallower undercut?",
     .source =
         "beam theory, with the largest stress at the root of an even arm: Chen, BMC Oral Health "
         "2024;24; strengths: ISO 22674 and the table of materials",
     .check = eachClasp<armStaysElastic>},
    {.id = "clasp.force",
     .severity = Severity::Caution,
     .ground = Ground::Published,
     .requirement = "Each clasp resists a pull within the range the laboratory asks.",
     .question = "By calculation this clasp holds less or more than is usual. Is it intended?",
     .source =
         "measured per arm 1.2 N (half of a twin clasp: International Journal of Prosthodontics "
         "2006;19:371-2) to 16.3 N (Tannous et al., Dental Materials 2012;28:273-8); 3 to 7.5 N "
         "recommended, from memory; settings of the laboratory",
     .check = eachClasp<claspHoldsRightly>},
    {.id = "clasp.bar-sulcus",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "Where an arm approaches from the gingiva, the depth of the sulcus is measured "
                    "and is enough.",
     .question =
         "How deep is the buccal sulcus where the bar clasp would run? If it is too shallow: "
         "which clasp shall be used instead?",
     .source = "4 to 5 mm in one school, 7 mm in another (teaching notes after McCracken and after "
               "Davenport et al.; secondary sources); a setting of the laboratory, 5 mm by default",
     .check = eachClasp<barHasSulcus>},
    {.id = "clasp.bar-tissue-undercut",
     .severity = Severity::Conflict,
     .ground = Ground::Safety,
     .requirement =
         "No arm approaches from the gingiva over tissue undercut by more than 1 mm, or over a "
         "high frenum; over both it has no way at all.",
     .question =
         "The tissue does not let a bar pass here. Which clasp from above shall be used instead?",
     .source =
         "patient safety: a bar over an undercut or a frenum presses or traps it; 1 mm by teaching "
         "notes after McCracken, secondary source",
     .check = eachClasp<tissueLetsBarPass>},
    {.id = "clasp.free-end-torque",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "No cast circumferential arm engages a mesial undercut beside a free end: it "
                    "twists the tooth when the base sinks.",
     .question =
         "Beside the free end a cast arm in a mesial undercut twists the tooth. Shall it be "
         "of wrought wire, or a bar clasp with a mesial rest?",
     .source = "McCracken's Removable Partial Prosthodontics, from memory",
     .check = eachClasp<freeEndIsNotTwisted>},
    {.id = "clasp.tooth-supported-cast",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "The clasps of a tooth-supported denture are cast rather than wrought.",
     .question = "In a tooth-supported denture cast clasps are usual. Is the wrought arm intended?",
     .source = "University of Oklahoma, removable partial denture review questions, question 6",
     .check = eachClasp<toothSupportedClaspsAreCast>},
};

}  // namespace

std::span<const Rule> claspArmRules() { return kRules; }

}  // namespace domain
