#include <algorithm>
#include <array>
#include <initializer_list>

#include "domain/rules/each_clasp.h"
#include "domain/rules/rule.h"
#include "domain/rules/sources.h"

namespace domain {

namespace {

// Whether the design as a whole is held.

void claspsHoldBothSides(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isMetal(prescription)) return;
    if (prescription.clasps.empty()) return findings.add("no clasp");
    for (const Side side : {Side::Right, Side::Left}) {
        const bool held = std::ranges::any_of(
            prescription.clasps, [&](const Clasp& clasp) { return clasp.tooth.side() == side; });
        if (!held && hasAbutment(prescription, side))
            findings.advise(std::string{"no clasp on the patient's "} +
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
    const auto kennedyClass = examination.design.kennedyClass();
    if (!isMetal(prescription) || !kennedyClass || prescription.clasps.empty()) return;
    const std::size_t count = claspedTeeth(prescription);
    const std::size_t fewest = fewestClasps(*kennedyClass);
    if (count < fewest)
        findings.add(std::to_string(count) + " given; Class " + std::string{codeOf(*kennedyClass)} +
                     " asks " + std::to_string(fewest));
}

/// What opposes an arm must be among the parts: a guide plate on the tooth, a connector that is a
/// plate there. An arm and a minor connector come with the clasp itself.
void whatOpposesIsThere(const Examination& examination, const Clasp& clasp, Findings& findings) {
    if (!clasp.reciprocation) return;
    const Prescription& prescription = examination.prescription;
    const auto& connector = prescription.majorConnector;
    const auto isBarAlone = [](ConnectorKind kind) {
        return kind == ConnectorKind::LingualBar || kind == ConnectorKind::SublingualBar ||
               kind == ConnectorKind::LabialBar || kind == ConnectorKind::PalatalBar;
    };
    if (clasp.reciprocation->kind == ReciprocalKind::GuidePlate &&
        std::ranges::count(prescription.guidePlates, clasp.tooth, &GuidePlate::tooth) == 0)
        findings.add(clasp.tooth, named(clasp) + ": opposed by a guide plate, and none is on " +
                                      findings.name(clasp.tooth));
    if (clasp.reciprocation->kind == ReciprocalKind::Plate && connector &&
        isBarAlone(connector->kind))
        findings.add(clasp.tooth, named(clasp) + ": opposed by a plate, and the connector is a " +
                                      wordsOf(connector->kind));
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

/// The faces on which something of the denture touches the tooth; its arm must be opposed.
int facesTouched(const Prescription& prescription, const Clasp& clasp) {
    std::array<bool, 4> touched{};
    const auto touch = [&](std::optional<Surface> face) {
        if (face) touched.at(static_cast<std::size_t>(*face)) = true;
    };
    touch(retentiveFace(clasp));
    touch(clasp.reciprocation->face);
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

/// Whether a rest on a neighbour faces the tooth.
bool isCarriedBeside(const Prescription& prescription, Tooth tooth) {
    return std::ranges::any_of(std::array{Surface::Mesial, Surface::Distal}, [&](Surface side) {
        const auto next = neighbour(tooth, side);
        return next && hasRest(prescription, *next, facing(tooth, side));
    });
}

void claspedToothIsCarried(const Examination& examination, const Clasp& clasp, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!hasRest(prescription, clasp.tooth)) {
        if (isCarriedBeside(prescription, clasp.tooth))
            return findings.advise(clasp.tooth, named(clasp) + ": a rest beside the tooth alone");
        return findings.add(clasp.tooth, named(clasp) + ": no rest on the tooth");
    }
    const bool mesialByName = clasp.kind == ClaspKind::Rpi || clasp.kind == ClaspKind::Rpa;
    if (mesialByName && !hasRest(prescription, clasp.tooth, Surface::Mesial))
        findings.add(clasp.tooth, named(clasp) + ": its rest is not mesial");
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

/// On a bridge the clasp may hold on a tooth that carries nothing itself.
void claspedToothIsItsOwn(const Examination& examination, const Clasp& clasp, Findings& findings) {
    if (examination.prescription.dentition.of(clasp.tooth) == ToothState::Bridged)
        findings.add(clasp.tooth, named(clasp) + " on " + findings.name(clasp.tooth) +
                                      ", which is charted as bridged");
}

void ringClaspHasAuxiliaryRest(const Examination& examination, const Clasp& clasp,
                               Findings& findings) {
    if (clasp.kind != ClaspKind::Ring) return;
    for (const Surface side : {Surface::Mesial, Surface::Distal})
        if (!hasRest(examination.prescription, clasp.tooth, side))
            findings.add(clasp.tooth, named(clasp) + ": no " + wordsOf(side) + " rest");
}

constexpr Rule kRules[] = {
    {.id = "clasp.present",
     .severity = Severity::Missing,
     .ground = Ground::Published,
     .requirement = "A metal framework has clasps, on both sides of the arch where teeth allow.",
     .question = "Which teeth shall be clasped, on the right and on the left, and with which "
                 "clasps?",
     .source =
         "Sui et al., Journal of Prosthodontics 2014;23(8): type and position of clasps as an "
         "item of the prescription; South Carolina R.39-8(A)(4)",
     .check = claspsHoldBothSides},
    {.id = "clasp.reciprocation",
     .severity = Severity::Conflict,
     .ground = Ground::Published,
     .requirement = "Every retentive arm is opposed on the other side of the tooth by something "
                    "rigid.",
     .question = "What opposes the retentive arm across this tooth: an arm, a plate, a guide plate "
                 "or a minor connector?",
     .source =
         "Kumbuloglu, Meandros Medical and Dental Journal 2018;19:25-31: reciprocation is one "
         "of the six requirements of a clasp; Krol, Dental Clinics of North America 1973 for "
         "the mesial-rest clasps",
     .check = eachNewClasp<armIsOpposed>},
    {.id = "clasp.opposed-by",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "What is said to oppose an arm is a part of the denture.",
     .question = "The part that opposes this arm is not in the design. Shall it be added, or what "
                 "opposes the arm?",
     .source = "by definition of reciprocation, Glossary of Prosthodontic Terms",
     .check = eachClasp<whatOpposesIsThere>},
    {.id = "clasp.one-retentive-arm",
     .severity = Severity::Conflict,
     .ground = Ground::Published,
     .requirement = "Only one arm on a tooth is retentive.",
     .question = "Two retentive arms face each other on this tooth. Which of them is to hold, and "
                 "which to oppose it?",
     .source = "University of Oklahoma, removable partial denture review questions",
     .check = oneArmIsRetentive},
    {.id = "clasp.encirclement",
     .severity = Severity::Caution,
     .ground = Ground::School,
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
     .ground = Ground::Published,
     .requirement = "A clasped tooth carries a rest, where the kind of clasp says it lies.",
     .question = "The clasped tooth has no rest where this kind of clasp needs one. Where shall it "
                 "lie, and is the seat prepared?",
     .source =
         "Kumbuloglu, Meandros Medical and Dental Journal 2018;19:25-31: support is one of the "
         "six requirements of a clasp; Krol, Dental Clinics of North America 1973: mesial rest",
     .check = eachClasp<claspedToothIsCarried>},
    {.id = "clasp.count",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement =
         "The number of retentive clasps suits the class: two in Class I, three in Class "
         "II, two to four in Class III, four in Class IV.",
     .question = "There are fewer clasps than is usual for this class. Is that intended?",
     .source = "usage of the textbook schools after McCracken, from memory",
     .check = claspsSuitClass},
    {.id = "clasp.wrought-embrasure",
     .severity = Severity::Conflict,
     .ground = Ground::Published,
     .requirement = "An embrasure clasp is not of wrought wire.",
     .question = "An embrasure clasp cannot be of wrought wire. Shall it be cast, or another clasp "
                 "be used?",
     .source = "University of Oklahoma, removable partial denture review questions, question 30",
     .check = eachClasp<embrasureClaspIsCast>},
    {.id = "clasp.embrasure-rests",
     .severity = Severity::Conflict,
     .ground = Ground::Published,
     .requirement = "An embrasure clasp has two rests side by side in its embrasure, and at least "
                    "1.5 mm of room there.",
     .question = "The embrasure clasp needs a rest on each of the two teeth, and 1.5 mm of room "
                 "between the opposing teeth. Are both seats prepared that far?",
     .source = "Dalhousie University, removable partial denture manual, page 27",
     .check = eachClasp<embrasureClaspHasTwoRests>},
    {.id = "clasp.on-bridge",
     .severity = Severity::Caution,
     .ground = Ground::Practice,
     .requirement = "A clasp holds on a natural tooth, not on one that a bridge replaces.",
     .question = "This tooth is replaced by a bridge. Does its retainer carry the load of a clasp?",
     .source = source::kCommonPractice,
     .check = eachClasp<claspedToothIsItsOwn>},
    {.id = "clasp.ring-rest",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "A ring clasp has a rest at both ends of the tooth: its own and the auxiliary "
                    "one that ends its strut.",
     .question =
         "A ring clasp needs a second rest at the far side of the tooth. Is a seat prepared "
         "there?",
     .source = source::kMcCracken,
     .check = eachClasp<ringClaspHasAuxiliaryRest>},
};

}  // namespace

std::span<const Rule> claspRules() { return kRules; }

}  // namespace domain
