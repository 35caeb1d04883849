#include "tests/rules/rule_cases.h"

namespace rule_cases {

using namespace domain;
using namespace support;
using P = Prescription;

namespace {

void leaveTwoIncisorsMissing(P& p) {
    p.saddles.front().teeth = {11_fdi, 21_fdi};
    for (const Tooth tooth : {12_fdi, 22_fdi}) p.dentition.set(tooth, ToothState::Present);
}

constexpr RuleCase kCases[] = {
    {"indirect.required", "none in Class I", lowerClassI, [](P& p) { p.indirectRetainers.clear(); },
     [](P& p) { p.indirectRetainers.pop_back(); }},
    {"indirect.required", "none in Class II", upperClassIIMod1,
     [](P& p) { p.indirectRetainers.clear(); },
     // Class III needs none: University of Western Australia, DENT1158, project 4.
     [](P& p) { p = upperClassIIIMod1(); }},
    {"indirect.required", "none in a long Class IV", upperClassIV,
     [](P& p) { p.indirectRetainers.clear(); },
     [](P& p) {
         leaveTwoIncisorsMissing(p);
         p.indirectRetainers.clear();
     }},
    // The published example (Class II mod 1, fulcrum through the left second premolar and the right
    // second molar) puts it on the right first premolar, mesially.
    {"indirect.position", "on the fulcrum line itself", lowerClassIIMod1,
     [](P& p) { p.indirectRetainers = {{47_fdi}}; },
     [](P& p) { p.indirectRetainers = {{45_fdi}, {44_fdi}}; }},
    // At right angles to the line and as far away as practicable (after McCracken).
    {"indirect.position", "a seat much farther away is offered", lowerClassIIMod1,
     [](P& p) { p.indirectRetainers = {{45_fdi}}; },
     [](P& p) {
         p.indirectRetainers = {{45_fdi}};
         for (const Tooth tooth : {44_fdi, 43_fdi, 33_fdi})
             p.dentition.set(tooth, ToothState::NotReplaced);
     }},
    {"indirect.position", "in front of the line in Class IV", upperClassIV,
     [](P& p) { p.indirectRetainers = {{13_fdi}}; },
     [](P& p) { p.indirectRetainers = {{16_fdi}}; }},
    // Two rests on one tooth: the distal one carries the line, the mesial one lies across it.
    {"indirect.position", "the distal rest of the last tooth", lowerClassI,
     [](P& p) {
         on(34_fdi, p.rests).side = Surface::Distal;
         p.indirectRetainers = {{34_fdi}};
     },
     [](P& p) {
         p.rests.push_back(on(34_fdi, p.rests));
         p.rests.back().side = Surface::Distal;
         p.indirectRetainers = {{34_fdi}};
     }},
    {"indirect.seat", "no rest on the tooth", lowerClassI, [](P& p) { remove(33_fdi, p.rests); },
     [](P& p) { on(33_fdi, p.rests).kind = RestKind::Incisal; }},
    {"indirect.seat", "a rest in no seat", lowerClassI,
     [](P& p) { on(33_fdi, p.rests).seatPrepared = false; },
     [](P& p) { on(34_fdi, p.rests).seatPrepared = false; }},
    {"indirect.plate-alone", "a plate that ends in no rest", lowerClassIIMod1,
     [](P& p) { remove(44_fdi, p.rests); },
     [](P& p) { on(44_fdi, p.rests).side = Surface::Distal; }},

    {"connector.given", "none", upperClassIIIMod1, [](P& p) { p.majorConnector = {}; },
     [](P& p) { p.majorConnector->width = {}; }},
    {"connector.torus", "a lingual plate over a mandibular torus", lowerClassIIMod1,
     [](P& p) {
         p.survey.torus = true;
         p.majorConnector->relief = {};
     },
     [](P& p) {
         p.survey.torus = true;
         p.majorConnector->relief = true;
     }},
    {"connector.torus", "a sublingual bar over a mandibular torus", lowerClassI,
     [](P& p) {
         p.majorConnector->kind = ConnectorKind::SublingualBar;
         p.majorConnector->relief = false;
         p.survey.torus = true;
     },
     [](P& p) {
         p.majorConnector->kind = ConnectorKind::LabialBar;
         p.majorConnector->relief = false;
         p.survey.torus = true;
     }},
    {"connector.bar-fits", "a sublingual bar higher than the mouth is deep", lowerClassI,
     [](P& p) {
         p.majorConnector->kind = ConnectorKind::SublingualBar;
         p.majorConnector->width = 5000_um;
         p.survey.lingualDepth = 4900_um;
     },
     [](P& p) {
         p.majorConnector->kind = ConnectorKind::SublingualBar;
         p.majorConnector->width = 5000_um;
         p.survey.lingualDepth = 5000_um;
     }},
    {"guide.contact", "a guide plate against the next tooth", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.guidePlates).face = Surface::Distal; },
     [](P& p) {
         on(16_fdi, p.guidePlates).face = Surface::Distal;
         p.dentition.set(17_fdi, ToothState::NotReplaced);
     }},
    {"connector.arch", "a lingual bar in the upper arch", upperClassIIIMod1,
     [](P& p) { p.majorConnector->kind = ConnectorKind::LingualBar; },
     [](P& p) { p.majorConnector->kind = ConnectorKind::PalatalBar; }},
    {"connector.arch", "a palatal bar in the lower arch", lowerClassI,
     [](P& p) { p.majorConnector->kind = ConnectorKind::PalatalBar; },
     [](P& p) { p.majorConnector->kind = ConnectorKind::LingualPlate; }},
    {"connector.lingual-space", "a lingual bar and no depth", lowerClassI,
     [](P& p) { p.survey.lingualDepth = {}; },
     [](P& p) {
         p.survey.lingualDepth = {};
         p.majorConnector->kind = ConnectorKind::SublingualBar;
     }},
    // 7 mm by default: Stratton and Wiebelt 1988.
    {"connector.lingual-space", "6.9 mm", lowerClassI,
     [](P& p) { p.survey.lingualDepth = 6900_um; }, [](P& p) { p.survey.lingualDepth = 7000_um; }},
    {"connector.lingual-space", "6.9 mm for a double lingual bar", lowerClassI,
     [](P& p) {
         p.majorConnector->kind = ConnectorKind::DoubleLingualBar;
         p.survey.lingualDepth = 6900_um;
     },
     [](P& p) {
         p.majorConnector->kind = ConnectorKind::LingualPlate;
         p.survey.lingualDepth = 6900_um;
     }},
    // Upper 6 mm: University of Oklahoma, review question 21; lower 3 mm by default.
    {"connector.gingival-clearance", "5.9 mm in the upper arch", upperClassIIIMod1,
     [](P& p) { p.majorConnector->gingivalClearance = 5900_um; },
     [](P& p) { p.majorConnector->gingivalClearance = 6000_um; }},
    {"connector.gingival-clearance", "2.9 mm in the lower arch", lowerClassI,
     [](P& p) { p.majorConnector->gingivalClearance = 2900_um; },
     [](P& p) { p.majorConnector->gingivalClearance = 3000_um; }},
    // 8 mm; 15 mm of opening: teaching notes after McCracken.
    {"connector.strap-width", "6.9 mm", upperClassIIIMod1,
     [](P& p) { p.majorConnector->width = 6900_um; },
     [](P& p) { p.majorConnector->width = 8000_um; }},
    {"connector.double-strap-opening", "14.9 mm", upperClassIIMod1,
     [](P& p) { p.majorConnector->opening = 14'900_um; },
     [](P& p) { p.majorConnector->opening = 15'000_um; }},
    {"connector.double-strap-opening", "straps of 7.9 mm", upperClassIIMod1,
     [](P& p) { p.majorConnector->width = 6900_um; },
     [](P& p) { p.majorConnector->width = 8000_um; }},
    {"connector.suits-class", "a single palatal bar", upperClassIIIMod1,
     [](P& p) { p.majorConnector->kind = ConnectorKind::PalatalBar; },
     [](P& p) { p.majorConnector->kind = ConnectorKind::PalatalPlate; }},
    {"connector.suits-class", "a horseshoe without a reason", upperClassIIIMod1,
     [](P& p) { p.majorConnector->kind = ConnectorKind::Horseshoe; },
     [](P& p) {
         p.majorConnector->kind = ConnectorKind::Horseshoe;
         p.survey.torus = true;
     }},
    // Class IV: one school takes the horseshoe, the other a double strap; both are accepted.
    {"connector.suits-class", "a horseshoe for one incisor", upperClassIV,
     [](P& p) {
         p.saddles.front().teeth = {12_fdi};
         for (const Tooth tooth : {11_fdi, 21_fdi, 22_fdi})
             p.dentition.set(tooth, ToothState::Present);
     },
     [](P& p) { p.majorConnector->kind = ConnectorKind::DoublePalatalStrap; }},
    {"connector.suits-class", "one strap for two free ends", upperClassIIMod1,
     [](P& p) {
         p.majorConnector->kind = ConnectorKind::PalatalStrap;
         p.dentition.set(27_fdi, ToothState::Missing);
         p.saddles.back().teeth.push_back(27_fdi);
     },
     [](P& p) { p.majorConnector->kind = ConnectorKind::PalatalStrap; }},
    {"connector.suits-class", "a labial bar without a torus", lowerClassI,
     [](P& p) { p.majorConnector->kind = ConnectorKind::LabialBar; },
     [](P& p) {
         p.majorConnector->kind = ConnectorKind::LabialBar;
         p.survey.torus = true;
     }},
    {"connector.torus", "a strap across a torus", upperClassIIIMod1,
     [](P& p) { p.survey.torus = true; },
     [](P& p) {
         p.survey.torus = true;
         p.majorConnector->relief = true;
     }},
    {"connector.torus", "a palatal plate across a torus", upperClassIIIMod1,
     [](P& p) {
         p.majorConnector->kind = ConnectorKind::PalatalPlate;
         p.survey.torus = true;
     },
     [](P& p) {
         p.majorConnector->kind = ConnectorKind::DoublePalatalStrap;
         p.survey.torus = true;
     }},
    {"connector.plate-rests", "no rest on the left", lowerClassIIMod1,
     [](P& p) { remove(34_fdi, p.rests); },
     [](P& p) {
         for (const Tooth tooth : {44_fdi, 45_fdi}) remove(tooth, p.rests);
     }},
    {"connector.beading", "a beaded lower connector", lowerClassI,
     [](P& p) { p.majorConnector->beading = true; }, [](P& p) { p.majorConnector->relief = {}; }},
    {"connector.beading", "relief in the upper arch", upperClassIIIMod1,
     [](P& p) { p.majorConnector->relief = true; },
     [](P& p) {
         p.majorConnector->relief = true;
         p.survey.torus = true;
     }},
    {"minor.joins", "a rest that nothing joins", lowerClassI,
     [](P& p) { remove(33_fdi, p.minorConnectors); },
     [](P& p) {
         remove(33_fdi, p.minorConnectors);
         on(34_fdi, p.minorConnectors).side = Surface::Mesial;
     }},

    {"survey.present", "no survey", upperClassIIIMod1, [](P& p) { p.survey.abutments.clear(); },
     // A rest far from any space needs none.
     [](P& p) {
         p = lowerClassI();
         remove(33_fdi, p.survey.abutments);
     }},
    {"survey.present", "no height of contour", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.survey.abutments).heightOfContour = false; },
     [](P& p) {
         on(16_fdi, p.survey.abutments).undercuts.push_back({UndercutPlace::MesioLingual, {}});
     }},
    {"survey.present", "no undercut measured on a clasped tooth", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.survey.abutments).undercuts.front().depth = {}; },
     [](P& p) {
         remove(16_fdi, p.clasps);
         on(16_fdi, p.survey.abutments).undercuts.clear();
     }},
    {"survey.present", "no undercuts at all on a clasped tooth", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.survey.abutments).undercuts.clear(); },
     [](P& p) { on(16_fdi, p.survey.abutments).undercuts.front().depth = 1_um; }},
    {"survey.path", "no path of insertion", upperClassIIIMod1, [](P& p) { p.survey.path = {}; },
     [](P& p) { p.survey.path->tilt = Millidegrees::of(9000); }},
    {"survey.path", "no tripod marks", upperClassIIIMod1, [](P& p) { p.survey.tripodMarked = {}; },
     [](P& p) {
         p = interimUpper();
         p.survey.tripodMarked = {};
     }},
    // At most 10 degrees: McCracken, from memory.
    {"survey.tilt", "10.5 degrees", upperClassIIMod1,
     [](P& p) { p.survey.path->tilt = Millidegrees::of(10'500); },
     [](P& p) { p.survey.path->tilt = Millidegrees::of(10'000); }},
    {"guide.plane", "a plane of which nothing is said", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.guidePlates).planePrepared = {}; },
     [](P& p) { on(16_fdi, p.guidePlates).planePrepared = false; }},
    // At least 2 mm (Dalhousie University manual), up to 4 mm; beside a free end 1.5 to 2 mm.
    {"guide.height", "1.9 mm beside a bounded space", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.guidePlates).planeHeight = 1900_um; },
     [](P& p) { on(16_fdi, p.guidePlates).planeHeight = 2000_um; }},
    {"guide.height", "4.1 mm", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.guidePlates).planeHeight = 4100_um; },
     [](P& p) { on(16_fdi, p.guidePlates).planeHeight = 4000_um; }},
    {"guide.height", "3 mm beside a free end", lowerClassI,
     [](P& p) { on(34_fdi, p.guidePlates).planeHeight = 3000_um; },
     [](P& p) { on(34_fdi, p.guidePlates).planeHeight = 1500_um; }},
    {"connector.reaches", "a strap that does not come to a front saddle", upperClassIIIMod1,
     [](P& p) {
         p.saddles.push_back({.teeth = {12_fdi}});
         p.dentition.set(12_fdi, ToothState::Missing);
     },
     [](P& p) {
         p.saddles.push_back({.teeth = {12_fdi}});
         p.dentition.set(12_fdi, ToothState::Missing);
         p.majorConnector->kind = ConnectorKind::Horseshoe;
     }},
    {"connector.reaches", "a bar that does not come to a canine's saddle", upperClassIIIMod1,
     [](P& p) {
         p.majorConnector->kind = ConnectorKind::PalatalBar;
         p.saddles = {{.teeth = {13_fdi}}};
     },
     [](P& p) {
         p.majorConnector->kind = ConnectorKind::PalatalBar;
         p.saddles = {{.teeth = {13_fdi, 14_fdi}}};
     }},
    {"connector.lies-on-teeth", "a cingulum bar over a space", lowerClassIIMod1,
     [](P& p) {
         p.majorConnector->kind = ConnectorKind::CingulumBar;
         p.saddles.push_back({.teeth = {41_fdi}});
     },
     [](P& p) { p.majorConnector->kind = ConnectorKind::CingulumBar; }},
    {"connector.lies-on-teeth", "a double lingual bar over a space", lowerClassIIMod1,
     [](P& p) {
         p.majorConnector->kind = ConnectorKind::DoubleLingualBar;
         p.saddles.push_back({.teeth = {41_fdi}});
     },
     [](P& p) { p.saddles.push_back({.teeth = {41_fdi}}); }},
    // At least 4 mm (after McCracken).
    {"connector.bar-height", "3.9 mm", lowerClassI, [](P& p) { p.majorConnector->width = 3900_um; },
     [](P& p) { p.majorConnector->width = 4000_um; }},
    {"connector.bar-height", "a bar of 3 mm where a plate may be", lowerClassI,
     [](P& p) { p.majorConnector->width = 3000_um; },
     [](P& p) {
         p.majorConnector->width = 3000_um;
         p.majorConnector->kind = ConnectorKind::CingulumBar;
     }},
    {"connector.bar-fits", "4 mm of distance and 5.1 mm of bar in 9 mm", lowerClassI,
     [](P& p) { p.majorConnector->width = 5001_um; },
     [](P& p) { p.majorConnector->width = 5000_um; }},
    {"connector.bar-fits", "a bar in 8 mm, and a plate", lowerClassI,
     [](P& p) { p.survey.lingualDepth = 7000_um; },
     [](P& p) {
         p.survey.lingualDepth = 7000_um;
         p.majorConnector->kind = ConnectorKind::LingualPlate;
     }},
    {"connector.bar-fits", "a bar in 8 mm, and one of no height said", lowerClassI,
     [](P& p) { p.survey.lingualDepth = 7000_um; },
     [](P& p) {
         p.survey.lingualDepth = 7000_um;
         p.majorConnector->width = {};
     }},
    {"connector.bar-fits", "a bar in 8 mm, and one of no distance said", lowerClassI,
     [](P& p) { p.survey.lingualDepth = 7000_um; },
     [](P& p) {
         p.survey.lingualDepth = 7000_um;
         p.majorConnector->gingivalClearance = {};
     }},
    // At least 5 mm apart (after McCracken): a lower first premolar is 7 mm wide.
    {"minor.spacing", "3.5 mm apart", lowerClassI,
     [](P& p) {
         on(44_fdi, p.minorConnectors).side = Surface::Mesial;
         on(43_fdi, p.minorConnectors).side = {};
     },
     [](P& p) {
         on(44_fdi, p.minorConnectors).side = Surface::Mesial;
         on(43_fdi, p.minorConnectors).side = Surface::Distal;
     }},
    {"minor.spacing", "3.5 mm apart on the left", lowerClassI,
     [](P& p) { on(34_fdi, p.minorConnectors).side = Surface::Mesial; },
     [](P& p) { on(34_fdi, p.minorConnectors).side = Surface::Distal; }},
    // By definition a place is measured once.
    {"survey.consistent", "a tooth surveyed twice", upperClassIIIMod1,
     [](P& p) { p.survey.abutments.push_back(p.survey.abutments.front()); },
     [](P& p) { p.survey.abutments.push_back({.tooth = 11_fdi}); }},
    {"survey.consistent", "one place measured twice", upperClassIIIMod1,
     [](P& p) {
         auto& undercuts = on(16_fdi, p.survey.abutments).undercuts;
         undercuts.push_back({undercuts.front().place, 500_um});
     },
     [](P& p) {
         on(16_fdi, p.survey.abutments).undercuts.push_back({UndercutPlace::MidLingual, 500_um});
     }},
    {"survey.consistent", "a tilt that goes nowhere", upperClassIIIMod1,
     [](P& p) { p.survey.path = InsertionPath{4000_mdeg, TiltDirection::None}; },
     [](P& p) { p.survey.path = InsertionPath{4000_mdeg, TiltDirection::Left}; }},
    {"survey.consistent", "a direction without a tilt", upperClassIIIMod1,
     [](P& p) { p.survey.path = InsertionPath{0_mdeg, TiltDirection::Left}; },
     [](P& p) { p.survey.path = {}; }},
};

}  // namespace

std::span<const RuleCase> frameworkCases() { return kCases; }

}  // namespace rule_cases
