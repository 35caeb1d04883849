#include <algorithm>
#include <array>
#include <initializer_list>

#include "domain/design/support.h"
#include "domain/design/design_view.h"
#include "domain/rules/rule.h"
#include "domain/rules/sources.h"

namespace domain {

namespace {

std::string named(const Clasp& clasp) { return wordsOf(clasp.kind) + " clasp"; }

/// The check of one clasp of a metal framework.
template <void (*check)(const Examination&, const Clasp&, Findings&)>
void eachClasp(const Examination& examination, Findings& findings) {
    if (!isMetal(examination.prescription)) return;
    for (const Clasp& clasp : examination.prescription.clasps) check(examination, clasp, findings);
}

bool isWrought(const Prescription& prescription, const Clasp& clasp) {
    return armMaterial(prescription, clasp) == ArmMaterial::WroughtWire;
}

// Whether the design as a whole is held.

bool canBeClasped(const Prescription& prescription, Side side) {
    for (int position = 0; position < kTeethInArch; ++position) {
        const Tooth tooth = toothAt(prescription, position);
        if (tooth.side() == side && tooth.kind() != ToothKind::Incisor && !tooth.isThirdMolar() &&
            prescription.dentition.stands(tooth))
            return true;
    }
    return false;
}

void claspsHoldBothSides(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isMetal(prescription)) return;
    if (prescription.clasps.empty()) return findings.add("no clasp");
    for (const Side side : {Side::Right, Side::Left}) {
        const bool held = std::ranges::any_of(
            prescription.clasps, [&](const Clasp& clasp) { return clasp.tooth.side() == side; });
        if (!held && canBeClasped(prescription, side))
            findings.add(std::string{"no clasp on the patient's "} +
                         (side == Side::Right ? "right" : "left") + ", where teeth stand");
    }
}

std::size_t fewestClasps(KennedyClass kennedyClass) {
    switch (kennedyClass) {
        case KennedyClass::I:
            return 2;
        case KennedyClass::II:
            return 3;
        case KennedyClass::III:
            return 2;
        case KennedyClass::IV:
            return 4;
    }
    return 0;
}

/// An embrasure clasp grips two teeth, whether one or both of them are named.
std::size_t claspedTeeth(const Prescription& prescription) {
    std::size_t count = prescription.clasps.size();
    for (const Clasp& clasp : prescription.clasps) {
        const bool named = std::ranges::any_of(prescription.clasps, [&](const Clasp& other) {
            return other.kind == ClaspKind::Embrasure &&
                   (neighbour(clasp.tooth, Surface::Mesial) == other.tooth ||
                    neighbour(clasp.tooth, Surface::Distal) == other.tooth);
        });
        if (clasp.kind == ClaspKind::Embrasure && !named) ++count;
    }
    return count;
}

void claspsSuitClass(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    const auto kennedyClass = classOf(prescription);
    if (!isMetal(prescription) || !kennedyClass || prescription.clasps.empty()) return;
    const std::size_t count = claspedTeeth(prescription);
    const std::size_t fewest = fewestClasps(*kennedyClass);
    if (count < fewest)
        findings.add(std::to_string(count) + " given; Class " + std::string{codeOf(*kennedyClass)} +
                     " asks " + std::to_string(fewest));
}

void oneArmIsRetentive(const Examination& examination, Findings& findings) {
    const auto& clasps = examination.prescription.clasps;
    for (auto first = clasps.begin(); first != clasps.end(); ++first)
        for (auto second = first + 1; second != clasps.end(); ++second) {
            const auto face = retentiveFace(*first);
            const auto otherFace = retentiveFace(*second);
            if (first->tooth == second->tooth && face && otherFace && *otherFace == opposite(*face))
                findings.add(first->tooth,
                             "retentive arms on both faces of " + findings.name(first->tooth));
        }
}

// Each clasp on its tooth.

/// In the mesial-rest clasps the proximal plate and the minor connector of the rest oppose the arm.
bool isOpposedFromTheSides(const Clasp& clasp) {
    const bool mesialRest = clasp.kind == ClaspKind::Rpi || clasp.kind == ClaspKind::Rpa;
    const ReciprocalKind kind = clasp.reciprocation->kind;
    return mesialRest &&
           (kind == ReciprocalKind::GuidePlate || kind == ReciprocalKind::MinorConnector);
}

void armIsOpposed(const Examination& /*examination*/, const Clasp& clasp, Findings& findings) {
    if (!clasp.reciprocation)
        return findings.add(clasp.tooth, named(clasp) + ": nothing opposes its retentive arm");
    const auto face = retentiveFace(clasp);
    if (face && clasp.reciprocation->face != opposite(*face) && !isOpposedFromTheSides(clasp))
        findings.add(clasp.tooth, named(clasp) + ": the arm runs " + wordsOf(*face) +
                                      ", what should oppose it lies " +
                                      wordsOf(clasp.reciprocation->face));
}

/// The faces on which something of the denture touches the tooth.
int facesTouched(const Prescription& prescription, const Clasp& clasp) {
    std::array<bool, 4> touched{};
    const auto touch = [&](std::optional<Surface> face) {
        if (face) touched.at(static_cast<std::size_t>(*face)) = true;
    };
    touch(retentiveFace(clasp));
    if (clasp.reciprocation) touch(clasp.reciprocation->face);
    for (const Rest& rest : prescription.rests)
        if (rest.tooth == clasp.tooth) touch(rest.side);
    for (const GuidePlate& plate : prescription.guidePlates)
        if (plate.tooth == clasp.tooth) touch(plate.face);
    for (const MinorConnector& connector : prescription.minorConnectors)
        if (connector.tooth == clasp.tooth) touch(connector.side);
    return static_cast<int>(std::ranges::count(touched, true));
}

void toothIsEncircled(const Examination& examination, const Clasp& clasp, Findings& findings) {
    constexpr int kFewestContacts = 3;
    // The arms of a circumferential clasp meet round a corner of the tooth; a bar only touches it.
    if (!isBar(clasp.kind) || !clasp.reciprocation || !retentiveFace(clasp)) return;
    const int touched = facesTouched(examination.prescription, clasp);
    if (touched < kFewestContacts)
        findings.add(clasp.tooth, named(clasp) + ": the denture touches " +
                                      std::to_string(touched) + " faces of the tooth; " +
                                      std::to_string(kFewestContacts) + " are asked");
}

void claspedToothIsCarried(const Examination& examination, const Clasp& clasp, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!hasRest(prescription, clasp.tooth))
        return findings.add(clasp.tooth, named(clasp) + ": no rest on the tooth");
    const bool mesialByName = clasp.kind == ClaspKind::Rpi || clasp.kind == ClaspKind::Rpa;
    if (mesialByName && !hasRest(prescription, clasp.tooth, Surface::Mesial))
        findings.add(clasp.tooth, named(clasp) + ": its rest is not mesial");
}

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

/// The deepest undercut the schools allow an arm of that material; gauges are cut in hundredths of
/// an inch in some of them, so 0.010 inch (0.254 mm) counts as 0.25 mm.
Microns deepestUndercut(ArmMaterial material) {
    switch (material) {
        case ArmMaterial::CastCobaltChromium:
        case ArmMaterial::CastNickelChromium:
            return 254_um;
        case ArmMaterial::CastGold:
            return 508_um;
        case ArmMaterial::CastTitanium:
        case ArmMaterial::WroughtWire:
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
        const Microns deepest = deepestUndercut(*material);
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
    if (mesial && isBesideFreeEnd(prescription, clasp.tooth))
        findings.add(clasp.tooth, named(clasp) + ": a cast arm into a " + wordsOf(place) +
                                      " undercut beside a free end");
}

void toothSupportedClaspsAreCast(const Examination& examination, const Clasp& clasp,
                                 Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (supportOf(prescription) == Support::Tooth && isWrought(prescription, clasp))
        findings.add(clasp.tooth, named(clasp) + ": a wrought arm in a tooth-supported denture");
}

// What a kind of clasp asks of its own.

void embrasureClaspIsCast(const Examination& examination, const Clasp& clasp, Findings& findings) {
    if (clasp.kind == ClaspKind::Embrasure && isWrought(examination.prescription, clasp))
        findings.add(clasp.tooth, named(clasp) + ": of wrought wire");
}

std::optional<Microns> leastRoom(const Prescription& prescription, Tooth tooth, Surface side) {
    std::optional<Microns> least;
    for (const Rest& rest : prescription.rests)
        if (rest.tooth == tooth && rest.side == side && rest.clearance)
            least = least ? std::min(*least, *rest.clearance) : *rest.clearance;
    return least;
}

void embrasureClaspHasTwoRests(const Examination& examination, const Clasp& clasp,
                               Findings& findings) {
    constexpr Microns kRoom = 1500_um;
    if (clasp.kind != ClaspKind::Embrasure) return;
    const Prescription& prescription = examination.prescription;
    bool paired = false;
    for (const Surface side : {Surface::Mesial, Surface::Distal}) {
        const auto next = neighbour(clasp.tooth, side);
        if (!next || !hasRest(prescription, clasp.tooth, side) ||
            !hasRest(prescription, *next, facing(clasp.tooth, side)))
            continue;
        paired = true;
        if (const auto room = leastRoom(prescription, clasp.tooth, side); room && *room < kRoom)
            findings.add(clasp.tooth, named(clasp) + ": " + text(*room) + " of room; " +
                                          text(kRoom) + " are asked");
    }
    if (!paired)
        findings.add(clasp.tooth, named(clasp) + ": no two rests side by side in its embrasure");
}

void ringClaspHasAuxiliaryRest(const Examination& examination, const Clasp& clasp,
                               Findings& findings) {
    if (clasp.kind != ClaspKind::Ring) return;
    for (const Surface side : {Surface::Mesial, Surface::Distal})
        if (!hasRest(examination.prescription, clasp.tooth, side))
            findings.add(clasp.tooth, named(clasp) + ": no " + wordsOf(side) + " rest");
}

void barHasSulcus(const Examination& examination, const Clasp& clasp, Findings& findings) {
    if (!isBar(clasp.kind)) return;
    const auto& depth = examination.prescription.survey.sulcusDepth;
    const Microns limit = examination.limits.barClaspSulcus;
    if (!depth)
        findings.add(clasp.tooth, named(clasp) + ": the depth of the sulcus is not given");
    else if (*depth < limit)
        findings.contradict(clasp.tooth,
                            named(clasp) + ", depth of the sulcus: " + tooLittle(*depth, limit));
}

constexpr Rule kRules[] = {
    {.id = "clasp.present",
     .severity = Severity::Missing,
     .requirement = "A metal framework has clasps, on both sides of the arch where teeth allow.",
     .question = "Which teeth shall be clasped, on the right and on the left, and with which "
                 "clasps?",
     .source =
         "Sui et al., Journal of Prosthodontics 2014;23(8): type and position of clasps as an "
         "item of the prescription; South Carolina R.39-8(A)(4)",
     .check = claspsHoldBothSides},
    {.id = "clasp.reciprocation",
     .severity = Severity::Conflict,
     .requirement = "Every retentive arm is opposed on the other side of the tooth by something "
                    "rigid.",
     .question = "What opposes the retentive arm across this tooth: an arm, a plate, a guide plate "
                 "or a minor connector?",
     .source =
         "Kumbuloglu, Meandros Medical and Dental Journal 2018;19:25-31: reciprocation is one "
         "of the six requirements of a clasp; Krol, Dental Clinics of North America 1973 for "
         "the mesial-rest clasps",
     .check = eachClasp<armIsOpposed>},
    {.id = "clasp.one-retentive-arm",
     .severity = Severity::Conflict,
     .requirement = "Only one arm on a tooth is retentive.",
     .question = "Two retentive arms face each other on this tooth. Which of them is to hold, and "
                 "which to oppose it?",
     .source = "University of Oklahoma, removable partial denture review questions",
     .check = oneArmIsRetentive},
    {.id = "clasp.encirclement",
     .severity = Severity::Conflict,
     .requirement =
         "Arms, plates and rest together hold more than half the way round the tooth, or "
         "touch it in at least three places.",
     .question = "The parts on this tooth touch it on too few sides, so that it could move out. "
                 "Which part may be added: a guide plate, a lingual plate, a rest?",
     .source = "Kumbuloglu, Meandros Medical and Dental Journal 2018;19:25-31: encirclement is one "
               "of the six requirements of a clasp",
     .check = eachClasp<toothIsEncircled>},
    {.id = "clasp.rest",
     .severity = Severity::Conflict,
     .requirement = "A clasped tooth carries a rest, where the kind of clasp says it lies.",
     .question = "The clasped tooth has no rest where this kind of clasp needs one. Where shall it "
                 "lie, and is the seat prepared?",
     .source =
         "Kumbuloglu, Meandros Medical and Dental Journal 2018;19:25-31: support is one of the "
         "six requirements of a clasp; Krol, Dental Clinics of North America 1973: mesial rest",
     .check = eachClasp<claspedToothIsCarried>},
    {.id = "clasp.undercut-given",
     .severity = Severity::Missing,
     .requirement = "Face, place and depth of the undercut each retentive arm engages are given.",
     .question = "On which face does the retentive arm run, and which undercut shall it engage: "
                 "where, and how deep?",
     .source = source::kCommonPractice,
     .check = eachClasp<undercutIsGiven>},
    {.id = "clasp.undercut-measured",
     .severity = Severity::Conflict,
     .requirement =
         "The survey found the undercut the arm engages, at that place and at least that "
         "deep.",
     .question =
         "The survey does not show this undercut there. Shall the arm engage another one, or "
         "shall the path of insertion be tilted?",
     .source = "by definition of surveying, Glossary of Prosthodontic Terms",
     .check = eachClasp<undercutIsThere>},
    {.id = "clasp.undercut-material",
     .severity = Severity::Conflict,
     .requirement = "The depth of the undercut suits the material of the arm: cast "
                    "cobalt-chromium 0.25 mm, gold 0.38 to 0.50 mm, wrought wire 0.50 to 0.75 mm.",
     .question = "The undercut is deeper than an arm of this material bears. Shall the arm be of "
                 "another material, or engage a shallower undercut?",
     .source = "cast cobalt-chromium 0.25 mm: University of Western Australia, course notes "
               "DENT1158, project 4; gold and wrought wire differ by school (teaching notes after "
               "Davenport et al. and McCracken; secondary sources), the deepest of them is the "
               "limit; nickel-chromium as cobalt-chromium, from memory",
     .check = undercutSuitsMaterial},
    {.id = "clasp.count",
     .severity = Severity::Caution,
     .requirement =
         "The number of retentive clasps suits the class: two in Class I, three in Class "
         "II, two to four in Class III, four in Class IV.",
     .question = "There are fewer clasps than is usual for this class. Is that intended?",
     .source = "usage of the textbook schools after McCracken, from memory",
     .check = claspsSuitClass},
    {.id = "clasp.wrought-embrasure",
     .severity = Severity::Conflict,
     .requirement = "An embrasure clasp is not of wrought wire.",
     .question = "An embrasure clasp cannot be of wrought wire. Shall it be cast, or another clasp "
                 "be used?",
     .source = "University of Oklahoma, removable partial denture review questions, question 30",
     .check = eachClasp<embrasureClaspIsCast>},
    {.id = "clasp.embrasure-rests",
     .severity = Severity::Conflict,
     .requirement = "An embrasure clasp has two rests side by side in its embrasure, and at least "
                    "1.5 mm of room there.",
     .question = "The embrasure clasp needs a rest on each of the two teeth, and 1.5 mm of room "
                 "between the opposing teeth. Are both seats prepared that far?",
     .source = "Dalhousie University, removable partial denture manual, page 27",
     .check = eachClasp<embrasureClaspHasTwoRests>},
    {.id = "clasp.ring-rest",
     .severity = Severity::Conflict,
     .requirement = "A ring clasp has a rest at both ends of the tooth: its own and the auxiliary "
                    "one that ends its strut.",
     .question =
         "A ring clasp needs a second rest at the far side of the tooth. Is a seat prepared "
         "there?",
     .source = source::kMcCracken,
     .check = eachClasp<ringClaspHasAuxiliaryRest>},
    {.id = "clasp.bar-sulcus",
     .severity = Severity::Missing,
     .requirement = "Where an arm approaches from the gingiva, the depth of the sulcus is measured "
                    "and is enough.",
     .question =
         "How deep is the buccal sulcus where the bar clasp would run? If it is too shallow: "
         "which clasp shall be used instead?",
     .source = "4 to 5 mm in one school, 7 mm in another (teaching notes after McCracken and after "
               "Davenport et al.; secondary sources); a setting of the laboratory, 5 mm by default",
     .check = eachClasp<barHasSulcus>},
    {.id = "clasp.free-end-torque",
     .severity = Severity::Caution,
     .requirement = "No cast circumferential arm engages a mesial undercut beside a free end: it "
                    "twists the tooth when the base sinks.",
     .question =
         "Beside the free end a cast arm in a mesial undercut twists the tooth. Shall it be "
         "of wrought wire, or a bar clasp with a mesial rest?",
     .source = "McCracken's Removable Partial Prosthodontics, from memory",
     .check = eachClasp<freeEndIsNotTwisted>},
    {.id = "clasp.tooth-supported-cast",
     .severity = Severity::Caution,
     .requirement = "The clasps of a tooth-supported denture are cast rather than wrought.",
     .question = "In a tooth-supported denture cast clasps are usual. Is the wrought arm intended?",
     .source = "University of Oklahoma, removable partial denture review questions, question 6",
     .check = eachClasp<toothSupportedClaspsAreCast>},
};

}  // namespace

std::span<const Rule> claspRules() { return kRules; }

}  // namespace domain
