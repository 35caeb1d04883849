#include <algorithm>

#include "domain/design/design_view.h"
#include "domain/design/possible_sizes.h"
#include "domain/design/support.h"
#include "domain/rules/rule.h"
#include "domain/rules/sources.h"

namespace domain {

namespace {

/// The teeth of the arch the chart says something about.
ToothSet chartedTeeth(const Prescription& prescription) {
    ToothSet teeth;
    for (const Arch arch : {Arch::Upper, Arch::Lower})
        for (int position = 0; position < kTeethInArch; ++position)
            if (const Tooth tooth = Tooth::at(arch, position);
                prescription.dentition.of(tooth) != Dentition::unnamed(tooth))
                teeth.add(tooth);
    return teeth;
}

void notationIsDeclared(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (prescription.notation) return;
    ToothSet named = chartedTeeth(prescription);
    for (const NamedTooth& tooth : namedTeeth(prescription)) named.add(tooth.tooth);
    std::string ambiguous;
    for (const Tooth tooth : named.teeth())
        if (isAmbiguous(tooth)) ambiguous += (ambiguous.empty() ? "" : ", ") + findings.name(tooth);
    if (!ambiguous.empty())
        findings.add(ambiguous + ": these are numbers of ISO 3950 and of the Universal notation");
}

void teethAreInTheArch(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    for (const NamedTooth& named : namedTeeth(prescription))
        if (named.tooth.arch() != prescription.arch)
            findings.add(named.tooth, std::string{named.what} + " on " +
                                          findings.name(named.tooth) +
                                          "; the appliance is for the " +
                                          std::string{codeOf(prescription.arch)} + " arch");
}

void everyGapIsAnswered(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isNewDenture(prescription)) return;
    const ToothSet replaced = replacedTeeth(prescription);
    for (int position = 0; position < kTeethInArch; ++position) {
        const Tooth tooth = toothAt(prescription, position);
        const ToothState state = prescription.dentition.of(tooth);
        const bool gap = state == ToothState::Missing || state == ToothState::ToBeExtracted;
        if (gap && !tooth.isThirdMolar() && !replaced.has(tooth))
            findings.add(tooth,
                         findings.name(tooth) + " is " + wordsOf(state) + " and in no saddle");
    }
}

void archIsPartlyToothless(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isNewDenture(prescription)) return;
    if (replacedTeeth(prescription).empty()) findings.add("no tooth is to be replaced");
    bool remains = false;
    for (int position = 0; position < kTeethInArch; ++position) {
        const ToothState state = prescription.dentition.of(toothAt(prescription, position));
        remains = remains || state == ToothState::Present || state == ToothState::Bridged;
    }
    if (!remains) findings.add("no tooth remains in the arch");
}

void replacedTeethAreMissing(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    for (const Tooth tooth : replacedTeeth(prescription).teeth()) {
        const ToothState state = prescription.dentition.of(tooth);
        // A third molar nobody charts counts as not replaced until a saddle names it.
        const bool gone = state == ToothState::Missing || state == ToothState::ToBeExtracted ||
                          (tooth.isThirdMolar() && state == ToothState::NotReplaced);
        if (!gone)
            findings.add(tooth,
                         findings.name(tooth) + " is in a saddle and charted as " + wordsOf(state));
    }
}

void partsLeanOnStandingTeeth(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    for (const NamedTooth& named : namedTeeth(prescription)) {
        const ToothState state = prescription.dentition.of(named.tooth);
        if (named.leans && state != ToothState::Present && state != ToothState::Bridged)
            findings.add(named.tooth, std::string{named.what} + " on " +
                                          findings.name(named.tooth) + ", which is charted as " +
                                          wordsOf(state));
    }
}

void statedClassIsTheDerivedOne(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isNewDenture(prescription) || !prescription.statedClass) return;
    const auto stated = Kennedy::parse(*prescription.statedClass);
    const auto& derived = examination.design.kennedy;
    if (!stated)
        findings.add("the class stated cannot be read as one, as \"III mod 1\"");
    else if (!derived)
        findings.add(stated->text() + " stated; nothing is to be replaced");
    else if (*stated != *derived)
        findings.add(stated->text() + " stated; the chart gives " + derived->text());
}

void statedSupportIsTheDerivedOne(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    const auto& stated = prescription.statedSupport;
    const auto& derived = examination.design.support;
    if (!isNewDenture(prescription) || !stated || !derived || *stated == *derived) return;
    // How long a bounded space two teeth may carry alone is one school against another.
    const bool anyFreeEnd =
        std::ranges::any_of(examination.design.areas, &EdentulousArea::isFreeEnd);
    if (!anyFreeEnd && *stated != Support::Tissue && *derived != Support::Tissue) return;
    findings.add(wordsOf(*stated) + " stated; the design gives " + wordsOf(*derived));
}

void alteredCastHasFreeEnd(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (prescription.alteredCast == true && examination.design.kennedy &&
        std::ranges::none_of(examination.design.areas, &EdentulousArea::isFreeEnd))
        findings.add("an altered cast is wanted, and no space has a free end");
}

void saddlesLieInOneSpace(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    for (const Saddle& saddle : prescription.saddles) {
        if (saddle.teeth.empty()) continue;
        const auto ends = std::ranges::minmax_element(saddle.teeth, {}, &Tooth::position);
        const Tooth first = *ends.min;
        const Tooth last = *ends.max;
        if (first.arch() != last.arch()) continue;  // for dentition.arch to say
        for (int position = first.position() + 1; position < last.position(); ++position) {
            const Tooth tooth = Tooth::at(first.arch(), position);
            if (prescription.dentition.stands(tooth))
                findings.add(tooth, "a saddle reaches from " + findings.name(first) + " to " +
                                        findings.name(last) + ", and " + findings.name(tooth) +
                                        " stands between");
        }
    }
}

void teethAreReplacedOnce(const Examination& examination, Findings& findings) {
    ToothSet seen;
    for (const Saddle& saddle : examination.prescription.saddles)
        for (const Tooth tooth : saddle.teeth) {
            if (seen.has(tooth)) findings.add(tooth, findings.name(tooth) + " is replaced twice");
            seen.add(tooth);
        }
}

/// Calls `use` with each part of a list that stands there before as well.
template <typename Part, typename Same, typename Use>
void eachRepeated(const std::vector<Part>& parts, Same same, Use use) {
    for (auto part = parts.begin(); part != parts.end(); ++part)
        if (std::any_of(parts.begin(), part,
                        [&](const Part& before) { return same(before, *part); }))
            use(*part);
}

void partsAreNamedOnce(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    const auto twice = [&](std::string_view what) {
        return [&findings, what](const auto& part) {
            findings.add(part.tooth, "two " + std::string{what} + " at the same place on " +
                                         findings.name(part.tooth));
        };
    };
    eachRepeated(
        prescription.rests,
        [](const Rest& a, const Rest& b) {
            return a.tooth == b.tooth && a.side == b.side && a.kind == b.kind;
        },
        twice("rests"));
    eachRepeated(
        prescription.clasps,
        [](const Clasp& a, const Clasp& b) {
            return a.tooth == b.tooth && retentiveFace(a) == retentiveFace(b);
        },
        twice("clasps"));
    eachRepeated(
        prescription.guidePlates,
        [](const GuidePlate& a, const GuidePlate& b) {
            return a.tooth == b.tooth && a.face == b.face;
        },
        twice("guide plates"));
}

/// Asks of one length after the other whether it can be.
class SizeCheck {
public:
    explicit SizeCheck(Findings& findings) : findings_{findings} {}

    template <typename Size>
    void of(Tooth tooth, std::string_view what, const std::optional<Size>& size,
            possible::Bounds<Size> bounds) {
        if (size && !bounds.holds(*size))
            findings_.add(tooth, std::string{what} + " on " + findings_.name(tooth) + ": " +
                                     said(*size, bounds));
    }
    void of(std::string_view what, const std::optional<Microns>& size,
            possible::Bounds<Microns> bounds) {
        if (size && !bounds.holds(*size))
            findings_.add(std::string{what} + ": " + said(*size, bounds));
    }

private:
    template <typename Size>
    static std::string said(Size size, possible::Bounds<Size> bounds) {
        return text(size) + " given; " + text(bounds.least) + " to " + text(bounds.most) +
               " can be";
    }
    Findings& findings_;
};

void sizesCanBe(const Examination& examination, Findings& findings) {
    using namespace possible;
    const Prescription& prescription = examination.prescription;
    SizeCheck size{findings};
    for (const Rest& rest : prescription.rests) {
        size.of(rest.tooth, "depth of the seat", rest.seatDepth, kSeat);
        size.of(rest.tooth, "room over the rest", rest.clearance, kRoom);
    }
    for (const Clasp& clasp : prescription.clasps) {
        if (clasp.undercut)
            size.of(clasp.tooth, "undercut of the clasp", clasp.undercut->depth, kUndercut);
        size.of(clasp.tooth, "length of the arm", clasp.arm.length, kArmLength);
        size.of(clasp.tooth, "width of the arm", clasp.arm.width, kArmWidth);
        size.of(clasp.tooth, "tip of the arm", clasp.arm.tip, kArmTip);
    }
    for (const GuidePlate& plate : prescription.guidePlates)
        size.of(plate.tooth, "height of the guide plane", plate.planeHeight, kGuidePlane);
    if (const auto& connector = prescription.majorConnector) {
        size.of("width of the connector", connector->width, kConnectorWidth);
        size.of("distance of the connector", connector->gingivalClearance, kClearance);
        size.of("opening of the connector", connector->opening, kOpening);
    }
    for (const AbutmentSurvey& surveyed : prescription.survey.abutments) {
        for (const Undercut& undercut : surveyed.undercuts)
            size.of(surveyed.tooth, "surveyed undercut", undercut.depth, kUndercut);
        size.of(surveyed.tooth, "undercut of the tissue", surveyed.tissueUndercut, kTissue);
    }
    size.of("depth to the floor of the mouth", prescription.survey.lingualDepth, kDepth);
    size.of("depth of the sulcus", prescription.survey.sulcusDepth, kDepth);
    size.of("width of the arch", prescription.survey.archWidth, kArchWidth);
    size.of("depth of the arch", prescription.survey.archDepth, kArchDepth);
}

constexpr Rule kRules[] = {
    {.id = "dentition.notation",
     .severity = Severity::Missing,
     .ground = Ground::Definition,
     .requirement = "The notation is declared where a tooth number is valid in two of them: 11-18, "
                    "21-28, 31 and 32.",
     .question = "In which notation are the tooth numbers written: ISO 3950 (two digits, quadrant "
                 "first) or Universal (1 to 32)?",
     .source =
         "ISO 3950; HL7 dental data exchange implementation guide, crosswalk D1 (ISO 3950 and "
         "Universal)",
     .check = notationIsDeclared},
    {.id = "dentition.arch",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "Every tooth named is in the arch of the appliance.",
     .question = "The appliance is for one arch and a tooth of the other is named. Which is meant?",
     .source = "ISO 3950: the first digit is the quadrant",
     .check = teethAreInTheArch},
    {.id = "dentition.complete",
     .severity = Severity::Missing,
     .ground = Ground::Definition,
     .requirement = "Every missing tooth is to be replaced, closed, bridged, or said not to be "
                    "replaced; third molars excepted.",
     .question = "Is this missing tooth to be replaced? If not, please say so.",
     .source = "Applegate's rules 2 and 4, as restated in teaching notes; Ankara University open "
               "textbook of prosthodontics: the class follows the decision which spaces to restore",
     .check = everyGapIsAnswered},
    {.id = "dentition.partial",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "At least one tooth is to be replaced and at least one remains.",
     .question = "Which teeth is the denture to replace, and which remain?",
     .source = "Kennedy (1925), by definition of a partly toothless arch",
     .check = archIsPartlyToothless},
    {.id = "dentition.replaced-present",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "A tooth to be replaced is missing or planned for extraction.",
     .question = "This tooth is to be replaced, yet the chart does not show it as missing. Will it "
                 "be extracted?",
     .source = source::kApplegate,
     .check = replacedTeethAreMissing},
    {.id = "dentition.part-on-absent",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "No rest, clasp, plate or connector lies on a tooth that is missing or to be "
                    "extracted.",
     .question = "A part is drawn on a tooth that is not there or will go. On which tooth shall it "
                 "be?",
     .source = source::kApplegate,
     .check = partsLeanOnStandingTeeth},
    {.id = "design.kennedy-stated",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "A stated Kennedy class and modification is the one the chart gives.",
     .question = "The class you state is not the one the chart gives. Is a tooth missing in the "
                 "chart, or one not to be replaced?",
     .source = "Kennedy (1925) and Applegate's eight rules, as restated in teaching notes",
     .check = statedClassIsTheDerivedOne},
    {.id = "design.support-stated",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "A stated support is the one the design gives.",
     .question = "The support you state is not the one the design gives. Which is meant?",
     .source = "Ankara University open textbook of prosthodontics: free ends rest on teeth and "
               "tissue",
     .check = statedSupportIsTheDerivedOne},
    {.id = "design.part-twice",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "No part is named twice at the same place of a tooth.",
     .question = "This part is named twice. Is another tooth or another face meant?",
     .source = "by definition: a part is at its place once",
     .check = partsAreNamedOnce},
    {.id = "design.sizes",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "No length is one that no mouth and no denture has.",
     .question = "This length cannot be meant. Which is it, in millimetres?",
     .source =
         "by definition: no length of a mouth or a denture; the bounds are ours and lie far beyond "
         "every size the other rules name",
     .check = sizesCanBe},
    {.id = "design.altered-cast",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "An altered cast is made where a free end is to be impressed under load.",
     .question = "There is no free end here. Is the altered cast wanted all the same?",
     .source = "by its purpose: Frank et al., Journal of Prosthetic Dentistry 2004, on mandibular "
               "free ends",
     .check = alteredCastHasFreeEnd},
    {.id = "saddle.one-space",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "The teeth of a saddle lie in one space: no tooth stands between them.",
     .question = "A tooth stands within this saddle. Are these two saddles, or will the tooth be "
                 "extracted?",
     .source = "by definition of the saddle (denture base), Glossary of Prosthodontic Terms",
     .check = saddlesLieInOneSpace},
    {.id = "saddle.once",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "Each tooth is replaced by one saddle, once.",
     .question = "This tooth is named twice. In which saddle shall it be?",
     .source = "by definition of the saddle (denture base), Glossary of Prosthodontic Terms",
     .check = teethAreReplacedOnce},
};

}  // namespace

std::span<const Rule> dentitionRules() { return kRules; }

}  // namespace domain
