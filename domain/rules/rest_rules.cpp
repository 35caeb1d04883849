#include <algorithm>

#include "domain/design/design_view.h"
#include "domain/rules/rule.h"
#include "domain/rules/sources.h"

namespace domain {

namespace {

constexpr std::size_t kFewestRests = 3;

/// Whether the end of an area is carried there. An incisor may be too weak to carry a rest: then
/// the next tooth away from the space will do.
bool isCarried(const Prescription& prescription, Tooth abutment) {
    if (hasRest(prescription, abutment)) return true;
    if (abutment.kind() != ToothKind::Incisor) return false;
    const auto beside = [&](int step) {
        return hasRest(prescription, Tooth::at(abutment.arch(), abutment.position() + step));
    };
    return beside(-1) || beside(1);
}

bool isClasped(const Prescription& prescription, Tooth tooth) {
    return std::ranges::count(prescription.clasps, tooth, &Clasp::tooth) > 0;
}

void restAtEnds(const Examination& examination, bool freeEnd, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isMetal(prescription)) return;
    for (const EdentulousArea& area : examination.design.areas) {
        if (area.isFreeEnd() != freeEnd) continue;
        for (const Tooth abutment : abutmentsOf(examination.design, area).teeth()) {
            // What carries a clasped tooth is for clasp.rest to say.
            if (isCarried(prescription, abutment) || isClasped(prescription, abutment)) continue;
            std::string found = "no rest on " + findings.name(abutment) + ", beside the space of " +
                                findings.name(toothAt(prescription, area.first));
            if (area.first != area.last)
                found += " to " + findings.name(toothAt(prescription, area.last));
            if (!freeEnd && prescription.statedSupport == Support::Tooth)
                findings.contradict(abutment,
                                    std::move(found) + ", and support by teeth is stated");
            else
                findings.add(abutment, std::move(found));
        }
    }
}

/// A rest on its far side tips a molar or premolar towards the space.
void restsFaceTheirSaddle(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isMetal(prescription)) return;
    for (const EdentulousArea& area : examination.design.areas) {
        if (area.isFreeEnd()) continue;
        for (const Tooth abutment : abutmentsOf(examination.design, area).teeth()) {
            const bool posterior =
                abutment.kind() == ToothKind::Premolar || abutment.kind() == ToothKind::Molar;
            const auto towards = [&](Surface side) {
                const auto next = neighbour(abutment, side);
                return next && isIn(examination.design, area, *next);
            };
            const Surface side = towards(Surface::Mesial) ? Surface::Mesial : Surface::Distal;
            if (posterior && hasRest(prescription, abutment) &&
                !hasRest(prescription, abutment, side))
                findings.advise(abutment, "the rest on " + findings.name(abutment) +
                                              " lies on its far side from the saddle");
        }
    }
}

void boundedSaddlesAreCarried(const Examination& examination, Findings& findings) {
    restAtEnds(examination, false, findings);
    restsFaceTheirSaddle(examination, findings);
}

void freeEndAbutmentsCarryRests(const Examination& examination, Findings& findings) {
    restAtEnds(examination, true, findings);
}

void restsAreEnough(const Examination& examination, Findings& findings) {
    const auto count = examination.prescription.rests.size();
    if (isMetal(examination.prescription) && count < kFewestRests)
        findings.add(std::to_string(count) + " given; at least " + std::to_string(kFewestRests) +
                     " are asked");
}

void seatsAreSaid(const Examination& examination, Findings& findings) {
    if (!isMetal(examination.prescription)) return;
    for (const Rest& rest : examination.prescription.rests)
        if (!rest.seatPrepared)
            findings.add(rest.tooth, wordsOf(rest.kind) + " rest on " + findings.name(rest.tooth) +
                                         ": not said whether its seat is prepared");
}

void seatsAreDeepEnough(const Examination& examination, Findings& findings) {
    if (!isMetal(examination.prescription)) return;
    const Microns limit = examination.limits.restThickness;
    for (const Rest& rest : examination.prescription.rests)
        if (rest.seatDepth && *rest.seatDepth < limit)
            findings.add(rest.tooth, "seat on " + findings.name(rest.tooth) + ": " +
                                         tooLittle(*rest.seatDepth, limit));
}

void opposingTeethLeaveRoom(const Examination& examination, Findings& findings) {
    if (!isMetal(examination.prescription)) return;
    const Microns limit = examination.limits.restThickness;
    for (const Rest& rest : examination.prescription.rests)
        if (rest.clearance && *rest.clearance < limit)
            findings.add(rest.tooth, "room over the rest on " + findings.name(rest.tooth) + ": " +
                                         tooLittle(*rest.clearance, limit));
}

void restSuitsTooth(const Examination& examination, Findings& findings) {
    for (const Rest& rest : examination.prescription.rests) {
        const ToothKind kind = rest.tooth.kind();
        const bool posterior = kind == ToothKind::Premolar || kind == ToothKind::Molar;
        if (posterior != (rest.kind == RestKind::Occlusal))
            findings.add(rest.tooth, wordsOf(rest.kind) + " rest on " + findings.name(rest.tooth));
    }
}

void lowerIncisorsAreSpared(const Examination& examination, Findings& findings) {
    for (const Rest& rest : examination.prescription.rests)
        if (rest.kind == RestKind::Cingulum && rest.tooth.arch() == Arch::Lower &&
            rest.tooth.kind() == ToothKind::Incisor)
            findings.add(rest.tooth, "cingulum rest on " + findings.name(rest.tooth));
}

void floorsHoldTheRest(const Examination& examination, Findings& findings) {
    constexpr Millidegrees kRightAngle = 90'000_mdeg;
    if (!isMetal(examination.prescription)) return;
    for (const Rest& rest : examination.prescription.rests)
        if (rest.floorAngle && *rest.floorAngle >= kRightAngle)
            findings.add(rest.tooth, "floor of the rest on " + findings.name(rest.tooth) + ": " +
                                         text(*rest.floorAngle) + " given; less than " +
                                         text(kRightAngle) + " is asked");
}

constexpr Rule kRules[] = {
    {.id = "rest.bounded-saddle",
     .severity = Severity::Caution,
     .ground = Ground::Definition,
     .requirement = "A bounded saddle of a metal framework has a rest at each end, on the side of "
                    "the saddle; where the neighbour is an incisor, on it or on the tooth beyond. "
                    "Support by teeth alone asks it.",
     .question = "The saddle has no rest at this end. On which tooth may we place one, and is a "
                 "seat prepared?",
     .source = "where support by teeth is stated, by definition of it; else common practice, no "
               "source: of prescriptions in the United States one in five had no rests",
     .check = boundedSaddlesAreCarried},
    {.id = "rest.free-end",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "The abutment of a free-end saddle carries a rest.",
     .question = "The last tooth before the free end has no rest. Shall it carry one, mesial or "
                 "distal, and is a seat prepared?",
     .source =
         "Krol, Dental Clinics of North America 1973 (mesial rest); that it carries one at all "
         "is common practice, no source",
     .check = freeEndAbutmentsCarryRests},
    {.id = "rest.count",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "A framework has at least three rests, widely spaced.",
     .question = "The framework has fewer than three rests. Is that intended?",
     .source = source::kMcCracken,
     .check = restsAreEnough},
    {.id = "rest.seat",
     .severity = Severity::Missing,
     .ground = Ground::Published,
     .requirement = "For every rest it is said whether its seat is prepared.",
     .question = "Is the seat of this rest prepared in the tooth?",
     .source = "of 81 rests surveyed in dentures 11 lay in prepared seats (South African Dental "
               "Journal 2022); that it must be said is common practice, no source",
     .check = seatsAreSaid},
    {.id = "rest.seat-depth",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "A seat is deep enough for the thickness the rest needs.",
     .question =
         "The seat is shallower than the rest is thick. Can it be deepened, or is a thinner "
         "rest intended?",
     .source =
         "1.0 mm in one school, 1.5 mm in another (teaching notes after Davenport et al., "
         "British Dental Journal series, and after McCracken; secondary sources); a setting of "
         "the laboratory, 1.0 mm by default",
     .check = seatsAreDeepEnough},
    {.id = "rest.kind",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "An occlusal rest lies on a premolar or molar; a cingulum or incisal rest on a "
                    "canine or incisor.",
     .question = "This kind of rest does not fit this tooth. Which rest, or which tooth, is meant?",
     .source = "by definition of the rests, Glossary of Prosthodontic Terms",
     .check = restSuitsTooth},
    {.id = "rest.lower-incisor",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "No cingulum rest lies on a lower incisor: its enamel is mostly too thin for a "
                    "seat.",
     .question = "A cingulum rest on a lower incisor is seldom possible in enamel. Is it intended?",
     .source = source::kMcCracken,
     .check = lowerIncisorsAreSpared},
    {.id = "rest.clearance",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "The opposing tooth leaves room for the thickness of the rest.",
     .question = "The opposing tooth leaves too little room for this rest. Can room be made?",
     .source =
         "1.0 mm in one school, 1.5 mm in another (teaching notes after Davenport et al., "
         "British Dental Journal series, and after McCracken; secondary sources); a setting of "
         "the laboratory, 1.0 mm by default",
     .check = opposingTeethLeaveRoom},
    {.id = "rest.floor-angle",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "The floor of a rest and its minor connector meet at less than 90 degrees.",
     .question = "At 90 degrees or more the rest slips and pushes the tooth. Can the floor of the "
                 "seat be inclined towards the middle of the tooth?",
     .source = "teaching notes on rest seats after McCracken, secondary source",
     .check = floorsHoldTheRest},
};

}  // namespace

std::span<const Rule> restRules() { return kRules; }

}  // namespace domain
