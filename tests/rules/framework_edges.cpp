#include "tests/rules/edges.h"

namespace edges {

using namespace domain;
using namespace support;
using rule_cases::on;
using rule_cases::remove;
using P = Prescription;

namespace {

constexpr Edge kEdges[] = {
    {"indirect.required", "a short Class IV", upperClassIV,
     [](P& p) {
         p.saddles.front().teeth = {11_fdi, 21_fdi};
         chart(p, {12_fdi, 22_fdi}, ToothState::Present);
         p.indirectRetainers.clear();
     },
     0},
    {"indirect.required", "Class III", upperClassIIIMod1, [](P&) {}, 0},
    {"indirect.required", "no class", upperClassIIIMod1,
     [](P& p) {
         p.saddles.clear();
         for (int position = 0; position < kTeethInArch; ++position)
             p.dentition.set(Tooth::at(Arch::Upper, position), ToothState::Present);
     },
     0},
    {"indirect.required", "an interim denture with a free end", interimUpper,
     [](P& p) {
         chart(p, {27_fdi}, ToothState::Missing);
         p.saddles.back().teeth.push_back(27_fdi);
     },
     0},
    {"indirect.position", "no rest to judge by", lowerClassI,
     [](P& p) { p.indirectRetainers.front().tooth = 42_fdi; }, 0},
    {"indirect.position", "an interim denture", lowerClassI,
     [](P& p) {
         order(p, Appliance::InterimResin);
         p.indirectRetainers.front().tooth = 44_fdi;
     },
     0},
    {"indirect.seat", "no rest under a cingulum bar", lowerClassI,
     [](P& p) {
         remove(33_fdi, p.rests);
         p.majorConnector->kind = ConnectorKind::CingulumBar;
     },
     0},
    {"indirect.seat", "no rest under a double lingual bar", lowerClassI,
     [](P& p) {
         remove(33_fdi, p.rests);
         p.majorConnector->kind = ConnectorKind::DoubleLingualBar;
     },
     0},
    {"indirect.seat", "no rest and no connector", lowerClassI,
     [](P& p) {
         remove(33_fdi, p.rests);
         p.majorConnector = {};
     },
     1},
    {"indirect.plate-alone", "a cingulum bar", lowerClassI,
     [](P& p) {
         remove(33_fdi, p.rests);
         p.majorConnector->kind = ConnectorKind::CingulumBar;
     },
     1},
    {"indirect.plate-alone", "a double lingual bar", lowerClassI,
     [](P& p) {
         remove(33_fdi, p.rests);
         p.majorConnector->kind = ConnectorKind::DoubleLingualBar;
     },
     1},
    {"indirect.plate-alone", "a lingual bar", lowerClassI, [](P& p) { remove(33_fdi, p.rests); },
     0},

    {"connector.arch", "an interim denture", interimUpper,
     [](P& p) { p.majorConnector->kind = ConnectorKind::LingualPlate; }, 0},
    {"connector.lingual-space", "one micron less", lowerClassI,
     [](P& p) { p.survey.lingualDepth = 6999_um; }, 1},
    {"connector.gingival-clearance", "one micron less, upper", upperClassIIIMod1,
     [](P& p) { p.majorConnector->gingivalClearance = 5999_um; }, 1},
    {"connector.gingival-clearance", "one micron less, lower", lowerClassI,
     [](P& p) { p.majorConnector->gingivalClearance = 2999_um; }, 1},
    {"connector.gingival-clearance", "a cingulum bar lies on the teeth", lowerClassI,
     [](P& p) {
         p.majorConnector->kind = ConnectorKind::CingulumBar;
         p.majorConnector->gingivalClearance = 0_um;
     },
     0},
    {"connector.gingival-clearance", "a plate lies on the teeth", lowerClassIIMod1,
     [](P& p) { p.majorConnector->gingivalClearance = 0_um; }, 0},
    {"connector.gingival-clearance", "not measured", lowerClassI,
     [](P& p) { p.majorConnector->gingivalClearance = {}; }, 0},
    {"connector.strap-width", "one micron less", upperClassIIIMod1,
     [](P& p) { p.majorConnector->width = 7999_um; }, 1},
    {"connector.strap-width", "a narrow plate", upperClassIIIMod1,
     [](P& p) {
         p.majorConnector->kind = ConnectorKind::PalatalPlate;
         p.majorConnector->width = 7000_um;
     },
     0},
    {"connector.double-strap-opening", "one micron less", upperClassIIMod1,
     [](P& p) { p.majorConnector->opening = 14'999_um; }, 1},
    {"connector.double-strap-opening", "nothing measured", upperClassIIMod1,
     [](P& p) { p.majorConnector->opening = p.majorConnector->width = {}; }, 0},
    {"connector.double-strap-opening", "a single strap", upperClassIIIMod1,
     [](P& p) { p.majorConnector->opening = 1000_um; }, 0},
    {"connector.suits-class", "a horseshoe, two incisors replaced", upperClassIV,
     [](P& p) {
         p.saddles.front().teeth = {11_fdi, 21_fdi};
         chart(p, {12_fdi, 22_fdi}, ToothState::Present);
     },
     0},
    {"connector.torus", "a palatal bar", upperClassIIIMod1,
     [](P& p) {
         p.majorConnector->kind = ConnectorKind::PalatalBar;
         p.survey.torus = true;
     },
     1},
    {"connector.torus", "a palatal plate", upperClassIIIMod1,
     [](P& p) {
         p.majorConnector->kind = ConnectorKind::PalatalPlate;
         p.survey.torus = true;
     },
     1},
    {"connector.torus", "with relief", upperClassIIIMod1,
     [](P& p) {
         p.majorConnector->relief = true;
         p.survey.torus = true;
     },
     0},
    {"connector.plate-rests",
     "no rest on the right",
     lowerClassIIMod1,
     [](P& p) {
         for (const Tooth tooth : {44_fdi, 45_fdi, 47_fdi}) remove(tooth, p.rests);
     },
     1,
     {},
     "at its right end"},
    {"connector.plate-rests",
     "no rest on the left",
     lowerClassIIMod1,
     [](P& p) { remove(34_fdi, p.rests); },
     1,
     {},
     "at its left end"},
    {"connector.plate-rests", "no rest at all", lowerClassIIMod1, [](P& p) { p.rests.clear(); }, 2},
    {"connector.plate-rests", "a bar", lowerClassI, [](P& p) { p.rests.clear(); }, 0},
    {"connector.beading", "relief on a torus", upperClassIIIMod1,
     [](P& p) {
         p.majorConnector->relief = true;
         p.survey.torus = true;
     },
     0},
    {"connector.beading", "relief, the torus not said", upperClassIIIMod1,
     [](P& p) {
         p.majorConnector->relief = true;
         p.survey.torus = {};
     },
     1},
    {"minor.joins", "the strut in the embrasure beside it", lowerClassI,
     [](P& p) {
         remove(33_fdi, p.minorConnectors);
         on(34_fdi, p.minorConnectors).side = Surface::Mesial;
     },
     0},
    {"minor.joins", "the strut on its other side", lowerClassI,
     [](P& p) {
         remove(33_fdi, p.minorConnectors);
         on(34_fdi, p.minorConnectors).side = Surface::Distal;
     },
     1},
    {"minor.joins", "the strut of a neighbour, of no side", lowerClassI,
     [](P& p) { remove(33_fdi, p.minorConnectors); }, 1},

    {"survey.path", "neither path nor tripod", upperClassIIIMod1,
     [](P& p) {
         p.survey.path = {};
         p.survey.tripodMarked = {};
     },
     2},
    {"survey.tilt", "a thousandth of a degree more", upperClassIIIMod1,
     [](P& p) { p.survey.path->tilt = Millidegrees::of(10'001); }, 1},
    {"survey.present", "another undercut of the tooth not measured", upperClassIIIMod1,
     [](P& p) {
         on(16_fdi, p.survey.abutments).undercuts.push_back({UndercutPlace::MesioLingual, {}});
     },
     0},
    {"survey.present", "an undercut not measured, and none asked", upperClassIIIMod1,
     [](P& p) {
         on(16_fdi, p.survey.abutments).undercuts.front().depth = {};
         on(16_fdi, p.clasps).undercut = {};
     },
     0},
    {"survey.present", "a guide plate on a tooth beside no space", upperClassIIIMod1,
     [](P& p) { p.guidePlates.front().tooth = 11_fdi; }, 1},
    {"survey.present", "a clasp on a tooth beside no space", upperClassIIIMod1,
     [](P& p) { p.clasps.front().tooth = 17_fdi; }, 1},
    {"guide.height", "not measured", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.guidePlates).planeHeight = {}; }, 0},
    {"guide.height", "bounded, one micron less", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.guidePlates).planeHeight = 1999_um; }, 1},
    {"guide.height", "bounded, one micron more", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.guidePlates).planeHeight = 4001_um; }, 1},
    {"guide.height", "free end, one micron less", lowerClassI,
     [](P& p) { on(34_fdi, p.guidePlates).planeHeight = 1499_um; }, 1},
    {"guide.height", "free end, one micron more", lowerClassI,
     [](P& p) { on(34_fdi, p.guidePlates).planeHeight = 2001_um; }, 1},
    {"guide.height", "free end, just high enough", lowerClassI,
     [](P& p) { on(34_fdi, p.guidePlates).planeHeight = 1500_um; }, 0},
    {"connector.reaches", "a saddle of no tooth", upperClassIIIMod1,
     [](P& p) { p.saddles.push_back({}); }, 0},
    {"connector.lies-on-teeth", "an upper incisor named by mistake", lowerClassIIMod1,
     [](P& p) {
         p.majorConnector->kind = ConnectorKind::CingulumBar;
         p.saddles.push_back({.teeth = {11_fdi}});
     },
     0},
    {"indirect.position", "a rest on an incisor, and no firm seat stands across", lowerClassI,
     [](P& p) {
         p.indirectRetainers = {{42_fdi}};
         p.rests.push_back({.tooth = 42_fdi, .kind = RestKind::Incisal, .seatPrepared = true});
         for (const Tooth tooth : {43_fdi, 33_fdi}) p.dentition.set(tooth, ToothState::NotReplaced);
     },
     0},
    {"connector.plate-rests", "no tooth on the left a plate could end on", lowerClassIIMod1,
     [](P& p) {
         std::erase_if(p.rests, [](const Rest& rest) { return rest.tooth.quadrant() == 3; });
         for (const Tooth tooth : {33_fdi, 34_fdi, 35_fdi, 36_fdi, 37_fdi})
             p.dentition.set(tooth, ToothState::Missing);
     },
     0},
    {"connector.plate-rests", "only a third molar on the left", lowerClassIIMod1,
     [](P& p) {
         std::erase_if(p.rests, [](const Rest& rest) { return rest.tooth.quadrant() == 3; });
         for (const Tooth tooth : {33_fdi, 34_fdi, 35_fdi, 36_fdi, 37_fdi})
             p.dentition.set(tooth, ToothState::Missing);
         p.dentition.set(38_fdi, ToothState::Present);
     },
     0},
    {"connector.plate-rests", "a canine on the left and no rest", lowerClassIIMod1,
     [](P& p) {
         std::erase_if(p.rests, [](const Rest& rest) { return rest.tooth.quadrant() == 3; });
     },
     1},
};

}  // namespace

std::span<const Edge> frameworkEdges() { return kEdges; }

}  // namespace edges
