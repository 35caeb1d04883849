#include "tests/rules/rule_cases.h"

namespace rule_cases {

using namespace domain;
using namespace support;
using P = Prescription;

namespace {

Date day(std::string_view text) { return Date::parse(text).value(); }

Enclosure plain(EnclosureKind kind) { return {.kind = kind, .disinfection = {}, .sha256 = {}}; }

void removeKind(P& p, EnclosureKind kind) {
    std::erase_if(p.enclosures, [&](const Enclosure& e) { return e.kind == kind; });
}

void makeRepair(P& p) {
    p = interimUpper();
    p.appliance = Appliance::Repair;
    p.saddles.clear();
    p.clasps.clear();
}

/// A repair of a denture that came.
P aRepair() {
    P p;
    makeRepair(p);
    p.enclosures.push_back({.kind = EnclosureKind::PresentDenture,
                            .disinfection = Disinfection{"sodium hypochlorite 0.5 %", 10_min}});
    return p;
}

// The items: Montana Code 37-4-501, Maine Title 32 section 1090, Florida 64B5-17.006, South
// Carolina R.39-8, Regulation (EU) 2017/745 Annex XIII section 1.
constexpr RuleCase kCases[] = {
    {"admin.prescriber", "a contact of spaces", upperClassIIIMod1,
     [](P& p) { p.identity.prescriberContact = "  "; },
     [](P& p) { p.identity.prescriberContact = "1"; }},
    {"admin.prescriber", "no name", lowerClassI, [](P& p) { p.identity.prescriberName = {}; },
     [](P& p) { p.identity.patientName = {}; }},
    {"admin.prescriber", "no address", lowerClassI, [](P& p) { p.identity.prescriberAddress = {}; },
     [](P& p) { p.identity.remarks = {}; }},
    {"admin.registration", "an empty number", upperClassIIIMod1,
     [](P& p) { p.identity.prescriberRegistration = ""; },
     [](P& p) { p.identity.prescriberRegistration = "7"; }},
    // A code alone will do: Annex XIII section 1.
    {"admin.patient-reference", "neither name nor code", upperClassIIIMod1,
     [](P& p) { p.identity.patientName = p.identity.patientReference = {}; },
     [](P& p) { p.identity.patientName = {}; }},
    {"admin.date-issued", "no date", upperClassIIIMod1, [](P& p) { p.issued = {}; },
     [](P& p) { p.issued = day("2026-11-25"); }},
    {"admin.date-issued", "dated tomorrow", upperClassIIIMod1,
     [](P& p) { p.issued = day("2026-11-26"); }, [](P& p) { p.issued = day("2026-11-25"); }},
    {"admin.date-needed", "no day", upperClassIIIMod1, [](P& p) { p.needed = {}; },
     [](P& p) { p.needed = day("2026-11-26"); }},
    {"admin.date-needed", "needed on the day it came", upperClassIIIMod1,
     [](P& p) { p.needed = day("2026-11-25"); }, [](P& p) { p.needed = day("2026-11-26"); }},
    {"admin.signature", "no signature", upperClassIIIMod1, [](P& p) { p.signature = {}; },
     [](P& p) { p.signature->date = {}; }},
    // An electronic signature is allowed: Florida Administrative Code 64B5-17.006(f).
    {"admin.signature", "on paper and seen by nobody", upperClassIIIMod1,
     [](P& p) { p.signature->seenBy = {}; },
     [](P& p) { p.signature = Signature{SignatureKind::Electronic, {}, {}}; }},
    {"admin.description", "the kind of work not said", upperClassIIIMod1,
     [](P& p) { p.appliance = {}; }, [](P& p) { p.identity.remarks = {}; }},
    {"admin.description", "a repair of nothing named", interimUpper,
     [](P& p) {
         makeRepair(p);
         p.identity.remarks = {};
     },
     [](P& p) {
         makeRepair(p);
         p.identity.remarks = "The base has cracked in the midline.";
     }},

    {"enclosure.working", "only the opposing arch came", upperClassIIIMod1,
     [](P& p) { removeKind(p, EnclosureKind::WorkingImpression); },
     [](P& p) { p.enclosures.front().kind = EnclosureKind::WorkingCast; }},
    {"enclosure.working", "nothing came to a repair", interimUpper,
     [](P& p) {
         makeRepair(p);
         p.enclosures.clear();
     },
     [](P& p) {
         makeRepair(p);
         p.enclosures = {plain(EnclosureKind::PresentDenture)};
     }},
    {"enclosure.opposing", "nothing of the opposing arch", upperClassIIIMod1,
     [](P& p) { removeKind(p, EnclosureKind::OpposingImpression); },
     [](P& p) {
         removeKind(p, EnclosureKind::OpposingImpression);
         p.occlusion.opposed = false;
     }},
    {"enclosure.opposing", "not said, and the chart shows an antagonist", lowerClassIIIMod1,
     [](P& p) {
         p.occlusion.opposed = {};
         removeKind(p, EnclosureKind::OpposingImpression);
     },
     [](P& p) {
         p.occlusion.opposed = {};
         removeKind(p, EnclosureKind::OpposingImpression);
         for (const Tooth tooth : {16_fdi, 26_fdi}) p.dentition.set(tooth, ToothState::NotReplaced);
     }},
    {"enclosure.jaw-relation", "a record named that did not come", upperClassIIMod1,
     [](P& p) { removeKind(p, EnclosureKind::JawRelationRecord); },
     [](P& p) {
         removeKind(p, EnclosureKind::JawRelationRecord);
         p.occlusion.jawRelation = JawRelation::StableStops;
     }},
    {"enclosure.jaw-relation", "not said how the jaws meet", upperClassIIIMod1,
     [](P& p) { p.occlusion.jawRelation = {}; },
     [](P& p) { p.occlusion.jawRelation = JawRelation::OcclusionRims; }},
    {"enclosure.jaw-relation", "a bite scan without any scan", upperClassIIIMod1,
     [](P& p) { p.occlusion.jawRelation = JawRelation::BiteScan; },
     [](P& p) {
         p = upperClassIV();
         p.occlusion.jawRelation = JawRelation::BiteScan;
     }},
    // South Carolina R.39-8(B): marked; CDC 2003: a photograph was never in the mouth.
    {"enclosure.disinfection", "an impression of which nothing is said", upperClassIIIMod1,
     [](P& p) { p.enclosures.front().disinfection = {}; },
     [](P& p) { p.enclosures.push_back(plain(EnclosureKind::Photograph)); }},
    {"enclosure.disinfection", "an agent and no time", upperClassIIIMod1,
     [](P& p) { p.enclosures.front().disinfection->contact = 0_min; },
     [](P& p) { p.enclosures.front().disinfection->contact = 1_min; }},
    // Which digest a scan has is for the laboratory to find: none is asked.
    {"enclosure.digest", "an empty digest", upperClassIV,
     [](P& p) { p.enclosures.front().sha256 = ""; },
     [](P& p) { p.enclosures.front().sha256 = {}; }},
    {"enclosure.digest", "a digest one digit short", upperClassIV,
     [](P& p) { p.enclosures.front().sha256 = std::string(63, 'a'); },
     [](P& p) { p.enclosures.front().sha256 = std::string(64, 'a'); }},
    {"enclosure.digest", "a digest in capitals", upperClassIV,
     [](P& p) { p.enclosures.front().sha256 = std::string(64, 'A'); },
     [](P& p) { p.enclosures.back().sha256 = {}; }},  // the photograph
    // Ten working days for a framework by default: from Wednesday 2026-11-25 to Wednesday 12-09.
    {"admin.date-achievable", "nine working days for a framework", upperClassIIIMod1,
     [](P& p) { p.needed = day("2026-12-08"); }, [](P& p) { p.needed = day("2026-12-09"); }},
    {"admin.date-achievable", "a weekend between", interimUpper,
     [](P& p) { p.needed = day("2026-12-01"); }, [](P& p) { p.needed = day("2026-12-02"); }},
    {"admin.date-achievable", "two days do for a repair but not for an interim denture", aRepair,
     [](P& p) {
         p.needed = day("2026-11-27");
         p.appliance = Appliance::InterimResin;
     },
     [](P& p) { p.needed = day("2026-11-26"); }},
    {"admin.date-achievable", "nothing to add where the day is past", upperClassIIIMod1,
     [](P& p) { p.needed = day("2026-11-26"); }, [](P& p) { p.needed = day("2026-11-25"); }},
    {"remake.reason", "made again, and not said why", upperClassIIIMod1,
     [](P& p) { p.remake = Remake{}; }, [](P& p) { p.remake = Remake{RemakeReason::DoesNotFit}; }},
    {"enclosure.present-denture", "a repair of a denture that did not come", aRepair,
     [](P& p) { removeKind(p, EnclosureKind::PresentDenture); },
     [](P& p) {
         p = interimUpper();
         removeKind(p, EnclosureKind::PresentDenture);
     }},
    // Oklahoma Statutes 59-328.36a.
    {"enclosure.identified", "a cast of another prescription", upperClassIIIMod1,
     [](P& p) { p.enclosures.front().identified = false; },
     [](P& p) { p.enclosures.front().identified = true; }},
};

}  // namespace

std::span<const RuleCase> adminCases() { return kCases; }

}  // namespace rule_cases
