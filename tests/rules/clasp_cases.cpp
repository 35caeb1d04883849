#include "tests/rules/rule_cases.h"

namespace rule_cases {

using namespace domain;
using namespace support;
using P = Prescription;

namespace {

void setUndercut(P& p, Tooth tooth, UndercutPlace place, Microns depth) {
    on(tooth, p.clasps).undercut = Undercut{place, depth};
}

/// A second retentive clasp on 16, facing the given way.
void addSecondClasp(P& p, UndercutPlace place) {
    Clasp second = on(16_fdi, p.clasps);
    second.retentiveArm = faceOf(place);
    second.undercut = Undercut{place, 250_um};
    second.reciprocation = Reciprocation{ReciprocalKind::Arm, opposite(faceOf(place))};
    p.clasps.push_back(second);
}

/// Everything on the tooth but its clasp and what opposes that.
void bare(P& p, Tooth tooth) {
    remove(tooth, p.rests);
    remove(tooth, p.guidePlates);
}

constexpr RuleCase kCases[] = {
    {"clasp.present", "no clasp at all", upperClassIIIMod1, [](P& p) { p.clasps.clear(); },
     [](P& p) {
         remove(13_fdi, p.clasps);
         remove(27_fdi, p.clasps);
     }},
    {"clasp.present", "clasps on one side alone", upperClassIIIMod1,
     [](P& p) {
         remove(23_fdi, p.clasps);
         remove(27_fdi, p.clasps);
     },
     [](P& p) { remove(27_fdi, p.clasps); }},
    {"clasp.opposed-by", "a guide plate that is not in the design", upperClassIIIMod1,
     [](P& p) {
         remove(13_fdi, p.guidePlates);
         on(13_fdi, p.clasps).reciprocation->kind = ReciprocalKind::GuidePlate;
     },
     [](P& p) { on(16_fdi, p.clasps).reciprocation->kind = ReciprocalKind::GuidePlate; }},
    {"clasp.opposed-by", "a plate, and the connector is a bar", lowerClassI,
     [](P& p) {
         on(34_fdi, p.clasps).reciprocation =
             Reciprocation{ReciprocalKind::Plate, Surface::Lingual};
     },
     [](P& p) {
         p.majorConnector->kind = ConnectorKind::LingualPlate;
         on(34_fdi, p.clasps).reciprocation =
             Reciprocation{ReciprocalKind::Plate, Surface::Lingual};
     }},
    {"clasp.undercut-across", "the tip beside the rest the arm starts from", upperClassIIIMod1,
     [](P& p) { setUndercut(p, 16_fdi, UndercutPlace::MesioBuccal, 250_um); },
     [](P& p) { setUndercut(p, 16_fdi, UndercutPlace::DistoBuccal, 250_um); }},
    {"clasp.undercut-across", "the same on the tongue side", upperClassIIIMod1,
     [](P& p) { setUndercut(p, 16_fdi, UndercutPlace::MesioLingual, 250_um); },
     [](P& p) { setUndercut(p, 16_fdi, UndercutPlace::MidLingual, 250_um); }},
    {"clasp.on-bridge", "a clasp on a tooth that a bridge replaces", upperClassIIIMod1,
     [](P& p) { p.dentition.set(27_fdi, ToothState::Bridged); },
     [](P& p) { p.dentition.set(17_fdi, ToothState::Bridged); }},
    {"clasp.reciprocation", "an arm that nothing opposes", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).reciprocation = {}; },
     [](P& p) {
         on(16_fdi, p.clasps).reciprocation =
             Reciprocation{ReciprocalKind::Plate, Surface::Lingual};
     }},
    {"clasp.reciprocation", "both arms on the buccal face", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).reciprocation->face = Surface::Buccal; },
     [](P& p) {
         setUndercut(p, 16_fdi, UndercutPlace::DistoLingual, 250_um);
         on(16_fdi, p.clasps).retentiveArm = Surface::Lingual;
         on(16_fdi, p.clasps).reciprocation->face = Surface::Buccal;
     }},
    // Krol 1973: the proximal plate opposes the bar of a mesial-rest clasp.
    {"clasp.reciprocation", "a guide plate opposing an arm that is no bar", lowerClassI,
     [](P& p) {
         on(34_fdi, p.clasps).kind = ClaspKind::Circumferential;
         on(34_fdi, p.clasps).reciprocation =
             Reciprocation{ReciprocalKind::GuidePlate, Surface::Distal};
     },
     [](P& p) {
         on(34_fdi, p.clasps).reciprocation =
             Reciprocation{ReciprocalKind::GuidePlate, Surface::Distal};
     }},
    {"clasp.one-retentive-arm", "retentive arms on both faces", upperClassIIIMod1,
     [](P& p) { addSecondClasp(p, UndercutPlace::MesioLingual); },
     [](P& p) { addSecondClasp(p, UndercutPlace::MesioBuccal); }},
    {"clasp.encirclement", "a bar and a plate, and nothing between them", upperClassIIIMod1,
     [](P& p) { bare(p, 13_fdi); }, [](P& p) { remove(13_fdi, p.rests); }},
    {"clasp.rest", "a clasped tooth without a rest", upperClassIIIMod1,
     [](P& p) { remove(16_fdi, p.rests); },
     [](P& p) { on(16_fdi, p.rests).side = Surface::Distal; }},
    // Krol 1973: the rest of this clasp is mesial.
    {"clasp.rest", "a mesial-rest clasp with a distal rest", lowerClassI,
     [](P& p) { on(34_fdi, p.rests).side = Surface::Distal; },
     [](P& p) {
         on(34_fdi, p.rests).side = Surface::Distal;
         on(34_fdi, p.clasps).kind = ClaspKind::IBar;
     }},
    {"clasp.undercut-given", "no undercut", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).undercut = {}; },
     [](P& p) { setUndercut(p, 16_fdi, UndercutPlace::MidBuccal, 250_um); }},
    {"clasp.undercut-given", "an undercut without depth", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).undercut->depth = {}; },
     [](P& p) { on(16_fdi, p.clasps).undercut->depth = 100_um; }},
    {"clasp.undercut-given", "an undercut of 0 mm", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).undercut->depth = 0_um; },
     [](P& p) { on(16_fdi, p.clasps).undercut->depth = 1_um; }},
    {"clasp.undercut-given", "no face of the arm", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).retentiveArm = {}; },
     [](P& p) { on(16_fdi, p.clasps).material = {}; }},
    // A ring clasp runs round the tooth, so its tip may lie on the other face.
    {"clasp.undercut-given", "the arm on one face, the undercut on the other", lowerClassIIIMod1,
     [](P& p) { on(47_fdi, p.clasps).undercut->place = UndercutPlace::DistoLingual; },
     [](P& p) { on(37_fdi, p.clasps).retentiveArm = Surface::Buccal; }},
    {"clasp.undercut-measured", "0.01 mm less than asked", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.survey.abutments).undercuts.front().depth = 240_um; },
     [](P& p) { on(16_fdi, p.survey.abutments).undercuts.front().depth = 250_um; }},
    {"clasp.undercut-measured", "an undercut at another place", upperClassIIIMod1,
     [](P& p) {
         on(16_fdi, p.survey.abutments).undercuts.front().place = UndercutPlace::MesioBuccal;
     },
     [](P& p) {
         on(16_fdi, p.survey.abutments)
             .undercuts.insert(on(16_fdi, p.survey.abutments).undercuts.begin(),
                               {UndercutPlace::MesioBuccal, 100_um});
     }},
    // Cast cobalt-chromium 0.25 mm, that is 0.010 inch or 0.254 mm (University of Western
    // Australia, DENT1158, project 4).
    {"clasp.undercut-material", "cast cobalt-chromium in 0.5 mm", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).undercut->depth = 500_um; },
     [](P& p) { on(16_fdi, p.clasps).undercut->depth = 254_um; }},
    {"clasp.undercut-material", "cast cobalt-chromium, taken from the framework", upperClassIIIMod1,
     [](P& p) {
         on(16_fdi, p.clasps).material = {};
         on(16_fdi, p.clasps).undercut->depth = 500_um;
     },
     [](P& p) {
         on(16_fdi, p.clasps).material = ArmMaterial::WroughtWire;
         on(16_fdi, p.clasps).undercut->depth = 500_um;
     }},
    // Gold 0.38 to 0.50 mm by school; 0.020 inch is 0.508 mm.
    {"clasp.undercut-material", "gold in 0.75 mm", upperClassIIIMod1,
     [](P& p) {
         on(16_fdi, p.clasps).material = ArmMaterial::CastGold;
         on(16_fdi, p.clasps).undercut->depth = 750_um;
     },
     [](P& p) {
         on(16_fdi, p.clasps).material = ArmMaterial::CastGold;
         on(16_fdi, p.clasps).undercut->depth = 500_um;
     }},
    // Wrought wire 0.50 mm in one school, 0.75 mm in another.
    {"clasp.undercut-material", "wrought wire in 1 mm", interimUpper,
     [](P& p) { on(14_fdi, p.clasps).undercut->depth = 1000_um; },
     [](P& p) { on(14_fdi, p.clasps).undercut->depth = 750_um; }},
    {"clasp.count", "two clasps in Class II", upperClassIIMod1,
     [](P& p) { remove(24_fdi, p.clasps); },
     [](P& p) {
         p = lowerClassI();
         p.dentition.set(41_fdi, ToothState::Closed);
     }},
    // Class II: one beside the free end and an embrasure clasp, which grips two teeth.
    {"clasp.count", "one clasp and one simple one in Class II", upperClassIIMod1,
     [](P& p) {
         remove(24_fdi, p.clasps);
         on(27_fdi, p.clasps).kind = ClaspKind::Circumferential;
     },
     [](P& p) {
         remove(24_fdi, p.clasps);
         on(27_fdi, p.clasps).kind = ClaspKind::Embrasure;
     }},
    {"clasp.count", "two clasps in Class IV", upperClassIV,
     [](P& p) {
         remove(26_fdi, p.clasps);
         remove(27_fdi, p.clasps);
     },
     [](P& p) { remove(26_fdi, p.clasps); }},
    {"clasp.count", "one clasp in Class III", upperClassIIIMod1,
     [](P& p) {
         for (const Tooth tooth : {13_fdi, 16_fdi, 23_fdi}) remove(tooth, p.clasps);
     },
     [](P& p) {
         for (const Tooth tooth : {16_fdi, 23_fdi}) remove(tooth, p.clasps);
     }},
    // University of Oklahoma, review question 30.
    {"clasp.wrought-embrasure", "an embrasure clasp of wire", upperClassIV,
     [](P& p) { on(16_fdi, p.clasps).material = ArmMaterial::WroughtWire; },
     [](P& p) { on(16_fdi, p.clasps).material = ArmMaterial::CastGold; }},
    {"clasp.embrasure-rests", "a rest on one of the two teeth", upperClassIV,
     [](P& p) { remove(17_fdi, p.rests); }, [](P& p) { remove(17_fdi, p.clasps); }},
    {"clasp.embrasure-rests", "two rests, one of them on the far side", upperClassIV,
     [](P& p) { on(17_fdi, p.rests).side = Surface::Distal; },
     [](P& p) {
         p.rests.push_back(on(17_fdi, p.rests));
         p.rests.back().side = Surface::Distal;
     }},
    // At least 1.5 mm of room: Dalhousie University manual, page 27.
    {"clasp.embrasure-rests", "1.4 mm of room", upperClassIV,
     [](P& p) { on(16_fdi, p.rests).clearance = 1400_um; },
     [](P& p) { on(16_fdi, p.rests).clearance = 1500_um; }},
    {"clasp.ring-rest", "a ring clasp without its auxiliary rest", lowerClassIIIMod1,
     [](P& p) { p.rests.pop_back(); },
     [](P& p) {
         p.rests.pop_back();
         on(37_fdi, p.clasps).kind = ClaspKind::Circumferential;
     }},
    {"clasp.bar-sulcus", "a bar clasp and no depth", lowerClassI,
     [](P& p) { p.survey.sulcusDepth = {}; },
     [](P& p) {
         p.survey.sulcusDepth = {};
         for (const Tooth tooth : {34_fdi, 44_fdi}) on(tooth, p.clasps).kind = ClaspKind::Rpa;
     }},
    // The setting is 5 mm by default.
    {"clasp.bar-sulcus", "4.9 mm", lowerClassI, [](P& p) { p.survey.sulcusDepth = 4900_um; },
     [](P& p) { p.survey.sulcusDepth = 5000_um; }},
    {"clasp.free-end-torque", "a cast arm in a mesial undercut", lowerClassIIMod1,
     [](P& p) {
         on(34_fdi, p.clasps).kind = ClaspKind::Circumferential;
         on(34_fdi, p.clasps).material = ArmMaterial::CastCobaltChromium;
     },
     [](P& p) { on(34_fdi, p.clasps).kind = ClaspKind::Circumferential; }},
    {"clasp.free-end-torque", "a cast arm where only the other end is free", lowerClassIIMod1,
     [](P& p) { on(34_fdi, p.clasps).material = ArmMaterial::CastGold; },
     [](P& p) { on(45_fdi, p.clasps).material = ArmMaterial::CastGold; }},
    // University of Oklahoma, review question 6.
    {"clasp.tooth-supported-cast", "a wrought arm in Class III", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).material = ArmMaterial::WroughtWire; },
     [](P& p) { on(16_fdi, p.clasps).material = ArmMaterial::CastGold; }},
    {"clasp.tooth-supported-cast", "a combination clasp in Class III", lowerClassIIIMod1,
     [](P& p) {
         on(35_fdi, p.clasps).kind = ClaspKind::Combination;
         on(35_fdi, p.clasps).material = {};
     },
     [](P& p) { p = lowerClassIIMod1(); }},
    // An addition of a clasp is a clasp as well.
    {"clasp.undercut-given", "an added clasp without undercut", interimUpper,
     [](P& p) {
         p.appliance = Appliance::Addition;
         p.clasps.front().undercut = {};
     },
     [](P& p) { p.clasps.front().undercut = {}; }},
    {"clasp.reciprocation", "an added clasp that nothing opposes", interimUpper,
     [](P& p) {
         p.appliance = Appliance::Addition;
         p.clasps.front().reciprocation = {};
     },
     [](P& p) { p.appliance = Appliance::Addition; }},
    // Cast cobalt-chromium 14 mm in one school, 15 mm in another; wrought wire 7 or 8 mm.
    {"clasp.arm-length", "a cast arm of 13.9 mm", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).arm.length = 13'900_um; },
     [](P& p) { on(16_fdi, p.clasps).arm.length = 14'000_um; }},
    {"clasp.arm-length", "a wrought arm of 6.9 mm", lowerClassIIMod1,
     [](P& p) { on(34_fdi, p.clasps).arm.length = 6900_um; },
     [](P& p) { on(34_fdi, p.clasps).arm.length = 7000_um; }},
    {"clasp.arm-length", "a cast arm shorter than one from the gingiva may be", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).arm.length = 10'000_um; },
     [](P& p) { on(13_fdi, p.clasps).arm.length = 10'000_um; }},
    {"clasp.arm-length", "a cast arm shorter than one of gold may be", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).arm.length = 10'000_um; },
     [](P& p) {
         on(16_fdi, p.clasps).arm.length = 10'000_um;
         on(16_fdi, p.clasps).material = ArmMaterial::CastGold;
     }},
    // Round, 1.2 mm wide and 10 mm long, pushed 0.25 mm aside: 990 MPa at the root if straight,
    // beyond 662 MPa (beam theory; data sheet of a generic alloy).
    {"clasp.elastic-limit", "a thick short arm", upperClassIIIMod1,
     [](P& p) {
         on(16_fdi, p.clasps).arm = {.section = ArmSection::Round,
                                     .width = 1200_um,
                                     .tip = 1'000'000_ppm,
                                     .length = 10'000_um};
     },
     [](P& p) {
         on(16_fdi, p.clasps).arm = {.section = ArmSection::Round,
                                     .width = 800_um,
                                     .tip = 800'000_ppm,
                                     .length = 15'000_um};
     }},
    {"clasp.elastic-limit", "a thick short bar, and one whose length is derived", upperClassIIIMod1,
     [](P& p) {
         on(13_fdi, p.clasps).arm = {.section = ArmSection::Round,
                                     .width = 1200_um,
                                     .tip = 1'000'000_ppm,
                                     .length = 10'000_um};
     },
     [](P& p) { on(13_fdi, p.clasps).arm.width = 3900_um; }},
    // Settings: 1.2 N to 16.3 N by default.
    {"clasp.force", "an arm like a hair", upperClassIIIMod1,
     [](P& p) {
         on(16_fdi, p.clasps).arm = {.section = ArmSection::HalfRound,
                                     .width = 800_um,
                                     .tip = 500'000_ppm,
                                     .length = 15'000_um};
     },
     [](P& p) { on(16_fdi, p.clasps).arm.length = 14'000_um; }},
    {"clasp.force", "an arm like a bolt", upperClassIIIMod1,
     [](P& p) {
         on(16_fdi, p.clasps).arm = {.section = ArmSection::Round,
                                     .width = 3000_um,
                                     .tip = 1'000'000_ppm,
                                     .length = 8000_um};
     },
     [](P& p) { on(16_fdi, p.clasps).undercut = {}; }},
    // At most 1 mm (after McCracken, secondary source).
    {"clasp.bar-tissue-undercut", "tissue undercut by 1.1 mm", lowerClassI,
     [](P& p) { on(44_fdi, p.survey.abutments).tissueUndercut = 1001_um; },
     [](P& p) { on(44_fdi, p.survey.abutments).tissueUndercut = 1000_um; }},
    {"clasp.bar-tissue-undercut", "a high frenum", lowerClassI,
     [](P& p) { on(44_fdi, p.survey.abutments).highFrenum = true; },
     [](P& p) { on(44_fdi, p.survey.abutments).highFrenum = false; }},
    {"clasp.bar-tissue-undercut", "a high frenum before a bar, and before an arm from above",
     lowerClassI, [](P& p) { on(34_fdi, p.survey.abutments).highFrenum = true; },
     [](P& p) {
         on(34_fdi, p.survey.abutments).highFrenum = true;
         on(34_fdi, p.clasps).kind = ClaspKind::Rpa;
     }},
};

}  // namespace

std::span<const RuleCase> claspCases() { return kCases; }

}  // namespace rule_cases
