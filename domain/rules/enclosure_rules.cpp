#include <algorithm>
#include <initializer_list>

#include "domain/design/design_view.h"
#include "domain/rules/rule.h"

namespace domain {

namespace {

bool holdsAny(const Prescription& prescription, std::initializer_list<EnclosureKind> kinds) {
    return std::ranges::any_of(prescription.enclosures, [&](const Enclosure& enclosure) {
        return std::ranges::count(kinds, enclosure.kind) > 0;
    });
}

bool holdsWorkingArch(const Prescription& prescription) {
    return holdsAny(prescription, {EnclosureKind::WorkingCast, EnclosureKind::WorkingImpression,
                                   EnclosureKind::WorkingScan});
}

/// Whether there is a tooth to bite on, of its own or on a bridge.
bool bites(const Dentition& dentition, Tooth tooth) {
    return dentition.stands(tooth) || dentition.of(tooth) == ToothState::Bridged;
}

/// As the prescription says; where it does not, by the chart of the opposing arch.
bool isOpposed(const Prescription& prescription) {
    if (prescription.occlusion.opposed) return *prescription.occlusion.opposed;
    const Arch other = prescription.arch == Arch::Upper ? Arch::Lower : Arch::Upper;
    return std::ranges::any_of(replacedTeeth(prescription).teeth(), [&](Tooth tooth) {
        return bites(prescription.dentition, Tooth::at(other, tooth.position()));
    });
}

void workingArchCame(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    // Work on a denture that exists is done on that denture, or on the impression inside it.
    const bool dentureCame = applianceOf(prescription) && !isNewDenture(prescription) &&
                             holdsAny(prescription, {EnclosureKind::PresentDenture});
    if (!holdsWorkingArch(prescription) && !dentureCame)
        findings.add("no cast, impression or scan of the " +
                     std::string{codeOf(prescription.arch)} + " arch");
}

void opposingArchCame(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isNewDenture(prescription) || !isOpposed(prescription)) return;
    if (!holdsAny(prescription, {EnclosureKind::OpposingCast, EnclosureKind::OpposingImpression,
                                 EnclosureKind::OpposingScan}))
        findings.add("a replaced tooth has an antagonist, and nothing came of the opposing arch");
}

/// Pairs of opposing teeth on that side, both in place.
int pairsOn(const Dentition& dentition, Side side) {
    int pairs = 0;
    for (int position = 0; position < kTeethInArch; ++position) {
        const Tooth upper = Tooth::at(Arch::Upper, position);
        if (upper.side() == side && bites(dentition, upper) &&
            bites(dentition, Tooth::at(Arch::Lower, position)))
            ++pairs;
    }
    return pairs;
}

/// Casts stand together by hand on three places that are apart: some on each side.
void stopsAreThere(const Prescription& prescription, Findings& findings) {
    constexpr int kFewestPairs = 3;
    const int right = pairsOn(prescription.dentition, Side::Right);
    const int left = pairsOn(prescription.dentition, Side::Left);
    if (right + left < kFewestPairs || right == 0 || left == 0)
        findings.advise("stable stops are named; of the teeth that stand " + std::to_string(right) +
                        " on the right and " + std::to_string(left) +
                        " on the left meet one of the other arch");
}

void jawRelationCame(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isNewDenture(prescription) || !isOpposed(prescription)) return;
    const auto& relation = prescription.occlusion.jawRelation;
    if (!relation) return findings.add("not said how the jaws meet");
    const bool recordCame = holdsAny(prescription, {EnclosureKind::JawRelationRecord});
    const bool scanCame =
        holdsAny(prescription, {EnclosureKind::WorkingScan, EnclosureKind::OpposingScan});
    switch (*relation) {
        case JawRelation::StableStops:
            return stopsAreThere(prescription, findings);
        case JawRelation::OcclusionRims:  // made here, so the record comes later
            return;
        case JawRelation::InterocclusalRecord:
            if (!recordCame) findings.add("an interocclusal record is named and did not come");
            return;
        case JawRelation::BiteScan:
            if (!recordCame && !scanCame) findings.add("a bite scan is named and no scan came");
            return;
    }
}

void enclosuresAreDisinfected(const Examination& examination, Findings& findings) {
    for (const Enclosure& enclosure : examination.prescription.enclosures) {
        if (!isPhysical(enclosure.kind)) continue;
        const auto& disinfection = enclosure.disinfection;
        if (!disinfection || isBlank(disinfection->agent))
            findings.add(wordsOf(enclosure.kind) + ": not said with what it was disinfected");
        else if (disinfection->contact <= 0_min)
            findings.add(wordsOf(enclosure.kind) + ": not said for how long it was disinfected");
    }
}

bool isDigest(const std::string& text) {
    return text.size() == 64 && text.find_first_not_of("0123456789abcdef") == std::string::npos;
}

void scansAreTheOnesNamed(const Examination& examination, Findings& findings) {
    for (const Enclosure& enclosure : examination.prescription.enclosures) {
        if (enclosure.kind != EnclosureKind::WorkingScan &&
            enclosure.kind != EnclosureKind::OpposingScan)
            continue;
        if (enclosure.sha256 && !isDigest(*enclosure.sha256))
            findings.add(wordsOf(enclosure.kind) +
                         ": the digest noted for its file is not 64 lower-case hexadecimal digits");
    }
}

void presentDentureCame(const Examination& examination, Findings& findings) {
    const auto appliance = applianceOf(examination.prescription);
    if (!appliance || isNewDenture(examination.prescription)) return;
    if (!holdsAny(examination.prescription, {EnclosureKind::PresentDenture}))
        findings.add("a " + wordsOf(*appliance) + ", and the denture did not come");
}

void enclosuresBearTheRightMark(const Examination& examination, Findings& findings) {
    for (const Enclosure& enclosure : examination.prescription.enclosures)
        if (enclosure.identified == false)
            findings.add(wordsOf(enclosure.kind) + ": it bears the mark of another prescription");
}

constexpr Rule kRules[] = {
    {.id = "enclosure.working",
     .severity = Severity::Missing,
     .ground = Ground::Published,
     .requirement = "A cast, an impression or a scan of the working arch came; for work on a "
                    "denture that exists, the denture will do.",
     .question = "Please send a master cast, an impression or a scan of the arch to be treated.",
     .source =
         "UK national occupational standards SFHOH16 and SFHOH17 (2022): to make a denture needs "
         "an accurate cast or digital representation",
     .check = workingArchCame},
    {.id = "enclosure.opposing",
     .severity = Severity::Missing,
     .ground = Ground::Published,
     .requirement = "The opposing arch came, where a replaced tooth has an antagonist.",
     .question = "Please send a cast, an impression or a scan of the opposing arch, or say that no "
                 "replaced tooth has an antagonist.",
     .source =
         "UK national occupational standards SFHOH16 and SFHOH17 (2022): to make a denture needs "
         "an accurate record of the relationship between upper and lower jaw",
     .check = opposingArchCame},
    {.id = "enclosure.jaw-relation",
     .severity = Severity::Missing,
     .ground = Ground::Published,
     .requirement =
         "The jaw relation is known: by stable stops of the remaining teeth, by a record "
         "that came, or by rims still to be made.",
     .question = "Do the remaining teeth alone show how the jaws meet? If not, please send a jaw "
                 "relation record, or ask for occlusion rims.",
     .source =
         "UK national occupational standards SFHOH16 and SFHOH17 (2022): to make a denture needs "
         "an accurate record of the relationship between upper and lower jaw; how many stops "
         "are enough, from memory",
     .check = jawRelationCame},
    {.id = "enclosure.disinfection",
     .severity = Severity::Caution,
     .ground = Ground::Safety,
     .requirement = "It is said with what, and for how long, each thing that was in the mouth was "
                    "disinfected; else the laboratory disinfects it and records that.",
     .question = "With what, and for how long, were the enclosed items disinfected?",
     .source =
         "CDC, Guidelines for Infection Control in Dental Health-Care Settings (2003), dental "
         "laboratory; South Carolina R.39-8(B)",
     .check = enclosuresAreDisinfected},
    {.id = "enclosure.digest",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "A digest noted for a scan file is a SHA-256.",
     .question =
         "Please send the scan file again: we cannot tell whether this is the one you sent.",
     .source = "by definition of the digest, FIPS 180-4",
     .check = scansAreTheOnesNamed},
    {.id = "enclosure.present-denture",
     .severity = Severity::Missing,
     .ground = Ground::Definition,
     .requirement = "For a repair, an addition or a reline the denture itself came.",
     .question = "Please send the denture that is to be repaired, added to or relined.",
     .source = "by definition of the work",
     .check = presentDentureCame},
    {.id = "enclosure.identified",
     .severity = Severity::Conflict,
     .ground = Ground::Law,
     .requirement = "The mark on each cast, impression and record is that of this prescription.",
     .question = "An enclosed item bears the mark of another prescription. Which patient is it "
                 "from?",
     .source = "Oklahoma Statutes 59-328.36a: casts and appliances bear the identification of the "
               "prescription",
     .check = enclosuresBearTheRightMark},
};

}  // namespace

std::span<const Rule> enclosureRules() { return kRules; }

}  // namespace domain
