#include <algorithm>

#include "domain/design/design_view.h"
#include "domain/rules/rule.h"
#include "domain/rules/sources.h"

namespace domain {

namespace {

constexpr Millidegrees kSteepestTilt = Millidegrees::of(10'000);

/// The abutments a clasped design is guided and held by: those with a clasp or a guide plate, and
/// those beside a space. A rest far from any space needs no survey.
ToothSet surveyedTeeth(const Prescription& prescription, const Design& design) {
    ToothSet teeth;
    for (const Clasp& clasp : prescription.clasps) teeth.add(clasp.tooth);
    for (const GuidePlate& plate : prescription.guidePlates) teeth.add(plate.tooth);
    for (const EdentulousArea& area : design.areas)
        for (const Tooth tooth : abutmentsOf(design, area).teeth())
            if (hasRest(prescription, tooth)) teeth.add(tooth);
    return teeth;
}

/// Whether the undercuts its clasps engage are measured; one that the survey does not list at all
/// is for clasp.undercut-measured to say.
bool undercutsAreMeasured(const Prescription& prescription, const AbutmentSurvey& surveyed) {
    return std::ranges::all_of(prescription.clasps, [&](const Clasp& clasp) {
        if (clasp.tooth != surveyed.tooth) return true;
        if (surveyed.undercuts.empty()) return false;
        return std::ranges::none_of(surveyed.undercuts, [&](const Undercut& undercut) {
            return !undercut.depth && clasp.undercut && undercut.place == clasp.undercut->place;
        });
    });
}

void abutmentsAreSurveyed(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isMetal(prescription) || prescription.clasps.empty()) return;
    for (const Tooth tooth : surveyedTeeth(prescription, examination.design).teeth()) {
        const AbutmentSurvey* surveyed = surveyOf(prescription, tooth);
        if (!surveyed) {
            findings.add(tooth, "no survey of " + findings.name(tooth));
            continue;
        }
        if (surveyed->heightOfContour != true)
            findings.add(tooth, "no height of contour marked on " + findings.name(tooth));
        if (!undercutsAreMeasured(prescription, *surveyed))
            findings.add(
                tooth, "the undercut of the clasp on " + findings.name(tooth) + " is not measured");
    }
}

void pathIsRecorded(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isMetal(prescription)) return;
    if (!prescription.survey.path) findings.add("no path of insertion");
    if (prescription.survey.tripodMarked != true)
        findings.add("the cast is not said to be tripod-marked");
}

void tiltIsSmall(const Examination& examination, Findings& findings) {
    const auto& path = examination.prescription.survey.path;
    if (path && path->tilt > kSteepestTilt)
        findings.add(text(path->tilt) + " given; at most " + text(kSteepestTilt) + " is usual");
}

void guidePlanesAreSaid(const Examination& examination, Findings& findings) {
    if (!isMetal(examination.prescription)) return;
    for (const GuidePlate& plate : examination.prescription.guidePlates)
        if (!plate.planePrepared)
            findings.add(plate.tooth, "guide plate on " + findings.name(plate.tooth) +
                                          ": not said whether its guide plane is prepared");
}

void surveyAgreesWithItself(const Examination& examination, Findings& findings) {
    const auto& abutments = examination.prescription.survey.abutments;
    for (auto one = abutments.begin(); one != abutments.end(); ++one) {
        if (std::ranges::count(abutments.begin(), one, one->tooth, &AbutmentSurvey::tooth) > 0)
            findings.add(one->tooth, findings.name(one->tooth) + " is surveyed twice");
        const auto& undercuts = one->undercuts;
        for (auto place = undercuts.begin(); place != undercuts.end(); ++place)
            if (std::ranges::count(undercuts.begin(), place, place->place, &Undercut::place) > 0)
                findings.add(one->tooth, "two undercuts " + wordsOf(place->place) + " on " +
                                             findings.name(one->tooth));
    }
    const auto& path = examination.prescription.survey.path;
    if (path && (path->tilt > 0_mdeg) != (path->towards != TiltDirection::None))
        findings.add("tilted by " + text(path->tilt) + ", towards: " + wordsOf(path->towards));
}

void guidePlatesHaveRoom(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isMetal(prescription)) return;
    for (const GuidePlate& plate : prescription.guidePlates) {
        const auto next = neighbour(plate.tooth, plate.face);
        if (next && prescription.dentition.stands(*next))
            findings.add(plate.tooth, "guide plate on the " + wordsOf(plate.face) + " face of " +
                                          findings.name(plate.tooth) + ", and " +
                                          findings.name(*next) + " stands beside it");
    }
}

struct Heights {
    Microns least;
    Microns most;
};
constexpr Heights kBesideFreeEnd{1500_um, 2000_um};
/// 3 to 4 mm in one school, at least 2 mm in another: the wider range.
constexpr Heights kBounded{2000_um, 4000_um};

void guidePlaneHeightsSuit(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isMetal(prescription)) return;
    for (const GuidePlate& plate : prescription.guidePlates) {
        const bool freeEnd = isBesideFreeEnd(examination.design, plate.tooth);
        const Heights usual = freeEnd ? kBesideFreeEnd : kBounded;
        if (plate.planeHeight &&
            (*plate.planeHeight < usual.least || *plate.planeHeight > usual.most))
            findings.add(plate.tooth, text(*plate.planeHeight) + " given on " +
                                          findings.name(plate.tooth) + "; " + text(usual.least) +
                                          " to " + text(usual.most) + " is usual " +
                                          (freeEnd ? "beside a free end" : "beside other spaces"));
    }
}

constexpr Rule kRules[] = {
    {.id = "survey.present",
     .severity = Severity::Caution,
     .ground = Ground::Practice,
     .requirement = "Every abutment of a clasped design is surveyed: its height of contour is "
                    "marked, and where it is clasped its undercuts are measured.",
     .question = "Please survey this abutment and give its height of contour and the places and "
                 "depths of its undercuts; else we survey it.",
     .source = source::kSurveyedHere,
     .check = abutmentsAreSurveyed},
    {.id = "survey.path",
     .severity = Severity::Caution,
     .ground = Ground::Practice,
     .requirement = "The path of insertion is recorded, and the cast is tripod-marked.",
     .question =
         "Along which path shall the denture go in: at no tilt, or tilted which way and how "
         "far? Is the cast tripod-marked?",
     .source = source::kSurveyedHere,
     .check = pathIsRecorded},
    {.id = "survey.consistent",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "The survey does not contradict itself: each abutment and each place is "
                    "measured once, and a tilt has a direction.",
     .question = "The survey says two different things. Which holds?",
     .source = "by definition of surveying, Glossary of Prosthodontic Terms",
     .check = surveyAgreesWithItself},
    {.id = "survey.tilt",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "The cast is tilted by not more than 10 degrees.",
     .question = "The tilt is steeper than usual. Is it intended?",
     .source = "McCracken's Removable Partial Prosthodontics, from memory",
     .check = tiltIsSmall},
    {.id = "guide.plane",
     .severity = Severity::Caution,
     .ground = Ground::Practice,
     .requirement = "For every guide plate it is said whether its guide plane is prepared.",
     .question = "Is a guide plane prepared on this tooth?",
     .source = source::kCommonPractice,
     .check = guidePlanesAreSaid},
    {.id = "guide.contact",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "A guide plate lies on a face beside a space, not on one in contact with the "
                    "next tooth.",
     .question =
         "The next tooth stands against this face. On which face shall the guide plate lie?",
     .source = "by definition of the guiding plane, Glossary of Prosthodontic Terms: a proximal "
               "face that a part of the denture slides along",
     .check = guidePlatesHaveRoom},
    {.id = "guide.height",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "The height of a guide plane suits its place: 1.5 to 2 mm beside a free end, 2 "
                    "to 4 mm elsewhere.",
     .question = "The guide plane is lower or higher than usual here. Is it intended?",
     .source = "Dalhousie University, removable partial denture manual (at least 2 mm); 3 to 4 mm, "
               "and 1.5 to 2 mm beside a free end, by teaching notes after McCracken, secondary "
               "source",
     .check = guidePlaneHeightsSuit},
};

}  // namespace

std::span<const Rule> surveyRules() { return kRules; }

}  // namespace domain
