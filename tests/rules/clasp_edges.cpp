#include "tests/rules/edges.h"

namespace edges {

using namespace domain;
using namespace support;
using rule_cases::on;
using rule_cases::remove;
using P = Prescription;

namespace {

void arm(P& p, Tooth tooth, ArmMaterial material, Microns depth) {
    on(tooth, p.clasps).material = material;
    on(tooth, p.clasps).undercut->depth = depth;
}

/// The framework's own material serves an arm of which nothing is said.
void cast(P& p, FrameworkMaterial material, Microns depth) {
    p.framework.material = material;
    on(16_fdi, p.clasps).material = {};
    on(16_fdi, p.clasps).undercut->depth = depth;
}

constexpr Edge kEdges[] = {
    {"clasp.present", "no tooth on the left can be clasped", upperClassIIIMod1,
     [](P& p) {
         for (const Tooth tooth : {23_fdi, 27_fdi}) remove(tooth, p.clasps);
         chart(p, {23_fdi, 24_fdi, 25_fdi, 26_fdi, 27_fdi}, ToothState::Missing);
         chart(p, {28_fdi, 48_fdi}, ToothState::Present);
     },
     0},
    {"clasp.present", "only a second molar on the right", upperClassIIIMod1,
     [](P& p) {
         for (const Tooth tooth : {13_fdi, 16_fdi}) remove(tooth, p.clasps);
         chart(p, {11_fdi, 12_fdi, 13_fdi, 14_fdi, 15_fdi, 16_fdi}, ToothState::Missing);
     },
     1},
    {"clasp.present", "only a second molar on the left", upperClassIIIMod1,
     [](P& p) {
         for (const Tooth tooth : {23_fdi, 27_fdi}) remove(tooth, p.clasps);
         chart(p, {21_fdi, 22_fdi, 23_fdi, 24_fdi, 25_fdi, 26_fdi}, ToothState::Missing);
     },
     1},
    {"clasp.present",
     "none on the right, where teeth stand",
     upperClassIIIMod1,
     [](P& p) {
         for (const Tooth tooth : {13_fdi, 16_fdi}) remove(tooth, p.clasps);
     },
     1,
     {},
     "on the patient's right"},
    {"clasp.present",
     "none on the left, where teeth stand",
     upperClassIIIMod1,
     [](P& p) {
         for (const Tooth tooth : {23_fdi, 27_fdi}) remove(tooth, p.clasps);
     },
     1,
     {},
     "on the patient's left"},
    {"clasp.count", "an interim denture with one clasp", interimUpper,
     [](P& p) { p.clasps.resize(1); }, 0},
    {"clasp.count", "one clasp in Class I", lowerClassI, [](P& p) { p.clasps.pop_back(); }, 1},
    {"clasp.count", "two clasps in Class I", lowerClassI, [](P&) {}, 0},
    {"clasp.count", "three clasps in Class IV", upperClassIV,
     [](P& p) {
         for (Clasp& clasp : p.clasps) clasp.kind = ClaspKind::Circumferential;
         p.clasps.pop_back();
     },
     1},
    {"clasp.count", "an embrasure clasp that names its left neighbour alone", upperClassIV,
     [](P& p) {
         remove(17_fdi, p.clasps);
         remove(27_fdi, p.clasps);
     },
     0},
    {"clasp.count", "no class", upperClassIIIMod1,
     [](P& p) {
         p.saddles.clear();
         p.clasps.resize(1);
         for (int position = 0; position < kTeethInArch; ++position)
             p.dentition.set(Tooth::at(Arch::Upper, position), ToothState::Present);
     },
     0},
    {"clasp.count", "none at all, which clasp.present says", upperClassIIIMod1,
     [](P& p) { p.clasps.clear(); }, 0},
    {"clasp.one-retentive-arm", "the first arm's face unknown", upperClassIIIMod1,
     [](P& p) {
         p.clasps.push_back(p.clasps.front());
         p.clasps.front().retentiveArm = {};
         p.clasps.front().undercut = {};
     },
     0},
    {"clasp.one-retentive-arm", "the second arm's face unknown", upperClassIIIMod1,
     [](P& p) {
         p.clasps.push_back(p.clasps.front());
         p.clasps.back().retentiveArm = {};
         p.clasps.back().undercut = {};
     },
     0},
    {"clasp.one-retentive-arm", "opposite faces of two teeth", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).retentiveArm = Surface::Lingual; }, 0},
    {"clasp.reciprocation", "the plate of another mesial-rest clasp", lowerClassI,
     [](P& p) {
         on(34_fdi, p.clasps).kind = ClaspKind::Rpa;
         on(34_fdi, p.clasps).reciprocation =
             Reciprocation{ReciprocalKind::GuidePlate, Surface::Distal};
     },
     0},
    {"clasp.reciprocation", "the minor connector of a mesial-rest clasp", lowerClassI,
     [](P& p) {
         on(34_fdi, p.clasps).reciprocation =
             Reciprocation{ReciprocalKind::MinorConnector, Surface::Mesial};
     },
     0},
    {"clasp.reciprocation", "an arm on the side of a mesial-rest clasp", lowerClassI,
     [](P& p) {
         on(34_fdi, p.clasps).reciprocation = Reciprocation{ReciprocalKind::Arm, Surface::Distal};
     },
     1},
    {"clasp.reciprocation", "a guide plate beside another clasp", upperClassIIIMod1,
     [](P& p) {
         on(16_fdi, p.clasps).reciprocation =
             Reciprocation{ReciprocalKind::GuidePlate, Surface::Mesial};
     },
     1},
    {"clasp.reciprocation", "the face of the arm unknown", upperClassIIIMod1,
     [](P& p) {
         on(16_fdi, p.clasps).retentiveArm = {};
         on(16_fdi, p.clasps).undercut = {};
     },
     0},
    {"clasp.encirclement", "two faces", upperClassIIIMod1,
     [](P& p) {
         remove(13_fdi, p.guidePlates);
         remove(13_fdi, p.minorConnectors);
     },
     1},
    {"clasp.encirclement", "the third by a rest", upperClassIIIMod1,
     [](P& p) {
         remove(13_fdi, p.guidePlates);
         on(13_fdi, p.rests).side = Surface::Mesial;
     },
     0},
    {"clasp.encirclement", "the third by a minor connector", upperClassIIIMod1,
     [](P& p) {
         remove(13_fdi, p.guidePlates);
         on(13_fdi, p.minorConnectors).side = Surface::Mesial;
     },
     0},
    {"clasp.encirclement", "the parts of other teeth", upperClassIIIMod1,
     [](P& p) {
         remove(13_fdi, p.guidePlates);
         remove(13_fdi, p.rests);
         remove(13_fdi, p.minorConnectors);
     },
     1},
    {"clasp.encirclement", "nothing opposes it", upperClassIIIMod1,
     [](P& p) {
         remove(13_fdi, p.guidePlates);
         on(13_fdi, p.clasps).reciprocation = {};
     },
     0},
    {"clasp.encirclement", "the face of the arm unknown", upperClassIIIMod1,
     [](P& p) {
         remove(13_fdi, p.guidePlates);
         on(13_fdi, p.clasps).retentiveArm = {};
         on(13_fdi, p.clasps).undercut = {};
     },
     0},
    {"clasp.encirclement", "an arm that is no bar", upperClassIIIMod1,
     [](P& p) { remove(16_fdi, p.guidePlates); }, 0},
    {"clasp.rest", "the other mesial-rest clasp on a distal rest", lowerClassI,
     [](P& p) {
         on(34_fdi, p.clasps).kind = ClaspKind::Rpa;
         on(34_fdi, p.rests).side = Surface::Distal;
     },
     1},
    // A cingulum rest without a side counts for both; an occlusal one for neither.
    {"clasp.rest", "a mesial-rest clasp on a cingulum rest", upperClassIIIMod1,
     [](P& p) { on(13_fdi, p.clasps).kind = ClaspKind::Rpi; }, 0},
    {"clasp.rest", "a mesial-rest clasp on an occlusal rest of no side", lowerClassI,
     [](P& p) { on(34_fdi, p.rests).side = {}; }, 1},
    {"clasp.undercut-given", "the faces differ, and the arm runs round", lowerClassIIIMod1,
     [](P& p) {
         on(37_fdi, p.clasps).kind = ClaspKind::BackAction;
         on(37_fdi, p.clasps).retentiveArm = Surface::Buccal;
     },
     0},
    {"clasp.undercut-given", "the faces differ, and the arm does not run round", lowerClassIIIMod1,
     [](P& p) { on(47_fdi, p.clasps).retentiveArm = Surface::Lingual; }, 1, Severity::Conflict},
    {"clasp.undercut-given", "neither face nor undercut", upperClassIIIMod1,
     [](P& p) {
         on(16_fdi, p.clasps).retentiveArm = {};
         on(16_fdi, p.clasps).undercut = {};
     },
     2},
    {"clasp.undercut-measured", "one micron less than asked", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.survey.abutments).undercuts.front().depth = 249_um; }, 1},
    {"clasp.undercut-measured", "found and not measured", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.survey.abutments).undercuts.front().depth = {}; }, 0},
    {"clasp.undercut-measured", "nothing surveyed there", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.survey.abutments).undercuts.clear(); }, 0},
    {"clasp.undercut-measured", "no survey", upperClassIIIMod1,
     [](P& p) { p.survey.abutments.clear(); }, 0},
    {"clasp.undercut-measured", "no depth asked", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).undercut->depth = {}; }, 0},
    // 0.010, 0.020 and 0.030 inch to the micron.
    {"clasp.undercut-material", "cobalt-chromium, 255 um", upperClassIIIMod1,
     [](P& p) { arm(p, 16_fdi, ArmMaterial::CastCobaltChromium, 255_um); }, 1},
    {"clasp.undercut-material", "nickel-chromium, 255 um", upperClassIIIMod1,
     [](P& p) { arm(p, 16_fdi, ArmMaterial::CastNickelChromium, 255_um); }, 1},
    {"clasp.undercut-material", "nickel-chromium, 254 um", upperClassIIIMod1,
     [](P& p) { arm(p, 16_fdi, ArmMaterial::CastNickelChromium, 254_um); }, 0},
    {"clasp.undercut-material", "gold, 509 um", upperClassIIIMod1,
     [](P& p) { arm(p, 16_fdi, ArmMaterial::CastGold, 509_um); }, 1},
    {"clasp.undercut-material", "gold, 508 um", upperClassIIIMod1,
     [](P& p) { arm(p, 16_fdi, ArmMaterial::CastGold, 508_um); }, 0},
    {"clasp.undercut-material", "titanium, 763 um", upperClassIIIMod1,
     [](P& p) { arm(p, 16_fdi, ArmMaterial::CastTitanium, 763_um); }, 1},
    {"clasp.undercut-material", "wire, 762 um", upperClassIIIMod1,
     [](P& p) { arm(p, 16_fdi, ArmMaterial::WroughtWire, 762_um); }, 0},
    {"clasp.undercut-material", "a polymer, 763 um", upperClassIIIMod1,
     [](P& p) { arm(p, 16_fdi, ArmMaterial::Polymer, 763_um); }, 1},
    {"clasp.undercut-material", "framework of nickel-chromium, 255 um", upperClassIIIMod1,
     [](P& p) { cast(p, FrameworkMaterial::NickelChromium, 255_um); }, 1},
    {"clasp.undercut-material", "framework of gold, 508 um", upperClassIIIMod1,
     [](P& p) { cast(p, FrameworkMaterial::GoldTypeIv, 508_um); }, 0},
    {"clasp.undercut-material", "framework of gold, 509 um", upperClassIIIMod1,
     [](P& p) { cast(p, FrameworkMaterial::GoldTypeIv, 509_um); }, 1},
    {"clasp.undercut-material", "framework of titanium, 762 um", upperClassIIIMod1,
     [](P& p) { cast(p, FrameworkMaterial::Titanium, 762_um); }, 0},
    {"clasp.undercut-material", "framework of a titanium alloy, 763 um", upperClassIIIMod1,
     [](P& p) { cast(p, FrameworkMaterial::TitaniumAlloy, 763_um); }, 1},
    {"clasp.undercut-material", "framework of a polymer, 762 um", upperClassIIIMod1,
     [](P& p) { cast(p, FrameworkMaterial::Polyetheretherketone, 762_um); }, 0},
    {"clasp.undercut-material", "framework of acetal, 763 um", upperClassIIIMod1,
     [](P& p) { cast(p, FrameworkMaterial::Acetal, 763_um); }, 1},
    {"clasp.undercut-material", "framework of nothing named, 900 um", upperClassIIIMod1,
     [](P& p) {
         cast(p, FrameworkMaterial::Acetal, 900_um);
         p.framework.material = {};
     },
     0},
    {"clasp.undercut-material", "no undercut", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).undercut = {}; }, 0},
    {"clasp.undercut-material", "no depth", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).undercut->depth = {}; }, 0},
    {"clasp.free-end-torque", "a cast arm in a mesio-lingual undercut", lowerClassIIMod1,
     [](P& p) {
         arm(p, 34_fdi, ArmMaterial::CastGold, 500_um);
         on(34_fdi, p.clasps).undercut->place = UndercutPlace::MesioLingual;
     },
     1},
    {"clasp.free-end-torque", "a cast arm in a distal undercut", lowerClassIIMod1,
     [](P& p) {
         arm(p, 34_fdi, ArmMaterial::CastGold, 500_um);
         on(34_fdi, p.clasps).undercut->place = UndercutPlace::DistoBuccal;
     },
     0},
    {"clasp.free-end-torque", "a bar", lowerClassIIMod1,
     [](P& p) {
         arm(p, 34_fdi, ArmMaterial::CastGold, 500_um);
         on(34_fdi, p.clasps).kind = ClaspKind::TBar;
     },
     0},
    {"clasp.free-end-torque", "a mesial-rest clasp", lowerClassIIMod1,
     [](P& p) {
         arm(p, 34_fdi, ArmMaterial::CastGold, 500_um);
         on(34_fdi, p.clasps).kind = ClaspKind::Rpa;
     },
     0},
    {"clasp.free-end-torque", "a reverse circumferential arm", lowerClassIIMod1,
     [](P& p) {
         arm(p, 34_fdi, ArmMaterial::CastGold, 500_um);
         on(34_fdi, p.clasps).kind = ClaspKind::ReverseCircumferential;
     },
     0},
    {"clasp.free-end-torque", "a polymer arm", lowerClassIIMod1,
     [](P& p) { arm(p, 34_fdi, ArmMaterial::Polymer, 500_um); }, 0},
    {"clasp.free-end-torque", "an arm of nothing named", lowerClassIIMod1,
     [](P& p) {
         on(34_fdi, p.clasps).kind = ClaspKind::Circumferential;
         on(34_fdi, p.clasps).material = {};
         p.framework.material = {};
     },
     0},
    {"clasp.free-end-torque", "no undercut", lowerClassIIMod1,
     [](P& p) {
         arm(p, 34_fdi, ArmMaterial::CastGold, 500_um);
         on(34_fdi, p.clasps).undercut = {};
     },
     0},
    {"clasp.tooth-supported-cast", "a wrought arm beside a free end", lowerClassIIMod1, [](P&) {},
     0},
    {"clasp.wrought-embrasure", "another clasp of wire", upperClassIV,
     [](P& p) {
         on(16_fdi, p.clasps).kind = ClaspKind::Circumferential;
         on(16_fdi, p.clasps).material = ArmMaterial::WroughtWire;
     },
     0},
    {"clasp.embrasure-rests", "one micron less room", upperClassIV,
     [](P& p) { on(16_fdi, p.rests).clearance = 1499_um; }, 1},
    {"clasp.embrasure-rests", "no room measured", upperClassIV,
     [](P& p) { on(16_fdi, p.rests).clearance = {}; }, 0},
    {"clasp.embrasure-rests", "little room on another rest of the tooth", upperClassIV,
     [](P& p) {
         p.rests.push_back(on(16_fdi, p.rests));
         p.rests.back().side = Surface::Mesial;
         p.rests.back().clearance = 1000_um;
     },
     0},
    {"clasp.embrasure-rests", "two rests there, one with little room", upperClassIV,
     [](P& p) {
         p.rests.push_back(on(16_fdi, p.rests));
         p.rests.back().clearance = 1000_um;
     },
     1},
    {"clasp.embrasure-rests", "two rests there, one with more room", upperClassIV,
     [](P& p) {
         p.rests.push_back(on(16_fdi, p.rests));
         on(16_fdi, p.rests).clearance = 1000_um;
     },
     1},
    {"clasp.embrasure-rests", "a rest on one of the two teeth, and both are clasped", upperClassIV,
     [](P& p) { remove(17_fdi, p.rests); }, 2},
    {"clasp.embrasure-rests", "at the end of the arch", upperClassIV,
     [](P& p) {
         on(17_fdi, p.clasps).tooth = 18_fdi;
         on(17_fdi, p.rests).tooth = 18_fdi;
     },
     2},
    {"clasp.ring-rest", "no rest at all", lowerClassIIIMod1, [](P& p) { remove(37_fdi, p.rests); },
     2},
    {"clasp.bar-sulcus", "one micron less", upperClassIIIMod1,
     [](P& p) { p.survey.sulcusDepth = 4999_um; }, 2, Severity::Caution},
    // The setting is 1.2 to 16.3 N by default.
    {"clasp.force", "too little by less than half, from a derived length", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).arm = {.section = ArmSection::HalfRound, .width = 1200_um}; },
     0},
    {"clasp.force", "too little by less than half, as prescribed", upperClassIIIMod1,
     [](P& p) {
         on(16_fdi, p.clasps).arm = {.section = ArmSection::HalfRound,
                                     .width = 1200_um,
                                     .tip = 500'000_ppm,
                                     .length = 12'400_um};
     },
     1},
    {"clasp.force", "too little by far, from a derived length", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).arm = {.section = ArmSection::HalfRound, .width = 600_um}; },
     1},
    {"clasp.force", "too much by less than double, from a derived length", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).arm = {.section = ArmSection::Round, .width = 2400_um}; }, 0},
    {"clasp.force", "too much by far, from a derived length", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).arm = {.section = ArmSection::Round, .width = 4000_um}; }, 1},
};

}  // namespace

std::span<const Edge> claspEdges() { return kEdges; }

}  // namespace edges
