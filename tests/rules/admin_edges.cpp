#include "tests/rules/edges.h"

namespace edges {

using namespace domain;
using namespace support;
using P = Prescription;

namespace {

Date day(std::string_view text) { return Date::parse(text).value(); }

void strip(P& p) {
    p.saddles.clear();
    p.clasps.clear();
    p.rests.clear();
    p.identity.remarks = {};
}

void send(P& p, std::initializer_list<EnclosureKind> kinds) {
    const Enclosure first = p.enclosures.front();
    p.enclosures.clear();
    for (const EnclosureKind kind : kinds) {
        p.enclosures.push_back(first);
        p.enclosures.back().kind = kind;
    }
}

// The day of the examination is 2026-11-25; the designs are issued on 2026-11-20.
constexpr Edge kEdges[] = {
    {"admin.patient-reference", "a name and no code", upperClassIIIMod1,
     [](P& p) { p.identity.patientReference = {}; }, 0},
    {"admin.patient-reference", "a code of spaces", upperClassIIIMod1,
     [](P& p) {
         p.identity.patientReference = " \t\r\n";
         p.identity.patientName = {};
     },
     1},
    {"admin.date-issued", "dated tomorrow", upperClassIIIMod1,
     [](P& p) { p.issued = day("2026-11-26"); }, 1, Severity::Conflict},
    {"admin.date-needed", "needed today", upperClassIIIMod1,
     [](P& p) { p.needed = day("2026-11-25"); }, 1, Severity::Conflict},
    {"admin.date-needed", "needed before it was issued", upperClassIIIMod1,
     [](P& p) {
         p.issued = day("2026-12-20");
         p.needed = day("2026-12-19");
     },
     1, Severity::Conflict},
    {"admin.date-needed", "needed on the day it was issued", upperClassIIIMod1,
     [](P& p) { p.issued = p.needed = day("2026-12-19"); }, 0},
    {"admin.date-needed", "a repair needed today", upperClassIIIMod1,
     [](P& p) {
         order(p, Appliance::Repair);
         p.needed = day("2026-11-25");
     },
     0},
    {"admin.date-needed", "a repair needed yesterday", upperClassIIIMod1,
     [](P& p) {
         order(p, Appliance::Repair);
         p.issued = p.needed = day("2026-11-24");
     },
     1, Severity::Conflict},
    {"admin.date-needed", "no day", upperClassIIIMod1, [](P& p) { p.needed = {}; }, 1,
     Severity::Caution},
    {"admin.signature", "signed after the day of receipt", upperClassIIIMod1,
     [](P& p) { p.signature->date = day("2026-11-26"); }, 1, Severity::Conflict},
    {"admin.signature", "signed on the day of receipt", upperClassIIIMod1,
     [](P& p) { p.signature->date = day("2026-11-25"); }, 0},
    {"admin.date-needed", "needed on the day after", upperClassIIIMod1,
     [](P& p) {
         p.issued = day("2026-12-19");
         p.needed = day("2026-12-20");
     },
     0},
    {"admin.date-needed", "the day of issue not given", upperClassIIIMod1,
     [](P& p) { p.issued = {}; }, 0},
    {"admin.signature", "electronic, and seen", upperClassIV,
     [](P& p) { p.signature->seenBy = "MK"; }, 0},
    {"admin.description", "an addition of nothing", upperClassIIIMod1,
     [](P& p) {
         order(p, Appliance::Addition);
         strip(p);
     },
     1},
    {"admin.description", "an addition of a saddle", upperClassIIIMod1,
     [](P& p) {
         const auto saddles = p.saddles;
         order(p, Appliance::Addition);
         strip(p);
         p.saddles = saddles;
     },
     0},
    {"admin.description", "an addition of a clasp", upperClassIIIMod1,
     [](P& p) {
         const auto clasps = p.clasps;
         order(p, Appliance::Addition);
         strip(p);
         p.clasps = clasps;
     },
     0},
    {"admin.description", "an addition of a rest", upperClassIIIMod1,
     [](P& p) {
         const auto rests = p.rests;
         order(p, Appliance::Addition);
         strip(p);
         p.rests = rests;
     },
     0},
    {"admin.description", "a framework of nothing", upperClassIIIMod1, strip, 0},
    {"shade.given", "an addition of teeth without a shade", upperClassIIIMod1,
     [](P& p) {
         order(p, Appliance::Addition);
         p.shades.clear();
     },
     1},
    {"shade.given", "a reline without a shade", upperClassIIIMod1,
     [](P& p) {
         order(p, Appliance::Reline);
         p.shades.clear();
     },
     0},
    {"shade.given", "a guide and no tab", interimUpper, [](P& p) { p.shades.front().tab = " "; },
     4},
    {"shade.mould", "an addition of no tooth", upperClassIIIMod1,
     [](P& p) {
         order(p, Appliance::Addition);
         p.saddles.clear();
         p.teeth.mould = {};
     },
     0},
    {"enclosure.working", "a denture for a new framework", upperClassIIIMod1,
     [](P& p) { send(p, {EnclosureKind::PresentDenture}); }, 1},
    {"enclosure.working", "a denture for nothing named", upperClassIIIMod1,
     [](P& p) {
         p = P{};
         p.enclosures = upperClassIIIMod1().enclosures;
         send(p, {EnclosureKind::PresentDenture});
     },
     1},
    {"enclosure.working", "a scan", upperClassIIIMod1,
     [](P& p) { send(p, {EnclosureKind::WorkingScan}); }, 0},
    {"enclosure.opposing", "a cast", upperClassIIIMod1,
     [](P& p) { send(p, {EnclosureKind::WorkingCast, EnclosureKind::OpposingCast}); }, 0},
    {"enclosure.opposing", "a scan", upperClassIIIMod1,
     [](P& p) { send(p, {EnclosureKind::WorkingCast, EnclosureKind::OpposingScan}); }, 0},
    {"enclosure.opposing", "a repair of an opposed denture", upperClassIIIMod1,
     [](P& p) {
         order(p, Appliance::Repair);
         send(p, {EnclosureKind::PresentDenture});
     },
     0},
    {"enclosure.opposing", "the chart of the lower arch shows an antagonist", upperClassIIIMod1,
     [](P& p) {
         p.occlusion.opposed = {};
         send(p, {EnclosureKind::WorkingImpression});
     },
     1},
    {"enclosure.opposing", "the chart of the lower arch shows none", upperClassIIIMod1,
     [](P& p) {
         p.occlusion.opposed = {};
         send(p, {EnclosureKind::WorkingImpression});
         chart(p, {44_fdi, 45_fdi, 34_fdi, 35_fdi, 36_fdi}, ToothState::NotReplaced);
     },
     0},
    {"enclosure.jaw-relation", "not said, and nothing to meet", upperClassIIIMod1,
     [](P& p) {
         p.occlusion.jawRelation = {};
         p.occlusion.opposed = false;
     },
     0},
    {"enclosure.jaw-relation", "not said for a repair", interimUpper,
     [](P& p) {
         p.occlusion.jawRelation = {};
         order(p, Appliance::Repair);
     },
     0},
    {"enclosure.jaw-relation", "a bite scan, and a record came", upperClassIIIMod1,
     [](P& p) {
         p.occlusion.jawRelation = JawRelation::BiteScan;
         send(p, {EnclosureKind::JawRelationRecord});
     },
     0},
    {"enclosure.jaw-relation", "a bite scan, and a scan of the opposing arch", upperClassIIIMod1,
     [](P& p) {
         p.occlusion.jawRelation = JawRelation::BiteScan;
         send(p, {EnclosureKind::OpposingScan});
     },
     0},
    {"enclosure.disinfection", "an agent of spaces", upperClassIIIMod1,
     [](P& p) { p.enclosures.front().disinfection->agent = " "; }, 1},
    {"enclosure.digest", "a scan of the opposing arch without one", upperClassIV,
     [](P& p) { p.enclosures[1].sha256 = {}; }, 0},
    {"enclosure.digest", "one digit too many", upperClassIV,
     [](P& p) { *p.enclosures[1].sha256 += '0'; }, 1},
};

}  // namespace

std::span<const Edge> adminEdges() { return kEdges; }

}  // namespace edges
