#include "tests/rules/edges.h"

namespace edges {

using namespace domain;
using namespace support;
using rule_cases::on;
using P = Prescription;

namespace {

void makeSensitive(P& p, Sensitivity sensitivity) {
    p.sensitivities.noneKnown = {};
    p.sensitivities.known = {sensitivity};
}

constexpr Edge kEdges[] = {
    {"retention.tissue-stop", "a saddle of the other arch", lowerClassI,
     [](P& p) {
         p.saddles.front().teeth = {17_fdi};
         p.saddles.front().tissueStop = {};
     },
     0},
    {"retention.tissue-stop", "at the right end", lowerClassI,
     [](P& p) { p.saddles.front().tissueStop = {}; }, 1},
    {"retention.tissue-stop", "only its last tooth in the free end", lowerClassI,
     [](P& p) {
         p.saddles.front().teeth = {47_fdi};
         p.saddles.front().tissueStop = {};
     },
     1},
    {"retention.tissue-stop", "beads", lowerClassI,
     [](P& p) {
         p.saddles.front().retention = ResinRetention::Bead;
         p.saddles.front().tissueStop = {};
     },
     0},
    {"retention.tissue-stop", "a mesh", lowerClassI,
     [](P& p) {
         p.saddles.front().retention = ResinRetention::Mesh;
         p.saddles.front().tissueStop = {};
     },
     1},
    {"alloy.making", "gold, printed", upperClassIIIMod1,
     [](P& p) {
         p.framework.material = FrameworkMaterial::GoldTypeIv;
         p.framework.making = FrameworkMaking::Printed;
     },
     1},
    {"alloy.making", "gold, milled", upperClassIIIMod1,
     [](P& p) {
         p.framework.material = FrameworkMaterial::GoldTypeIv;
         p.framework.making = FrameworkMaking::Milled;
     },
     0},
    {"alloy.making", "a polymer, printed", upperClassIIIMod1,
     [](P& p) {
         p.framework.material = FrameworkMaterial::Polyetheretherketone;
         p.framework.making = FrameworkMaking::Printed;
     },
     0},
    {"alloy.making", "acetal, milled", upperClassIIIMod1,
     [](P& p) {
         p.framework.material = FrameworkMaterial::Acetal;
         p.framework.making = FrameworkMaking::Milled;
     },
     0},
    {"alloy.making", "acetal, cast", upperClassIIIMod1,
     [](P& p) { p.framework.material = FrameworkMaterial::Acetal; }, 1},
    {"alloy.making", "titanium, printed", upperClassIIIMod1,
     [](P& p) {
         p.framework.material = FrameworkMaterial::Titanium;
         p.framework.making = FrameworkMaking::Printed;
     },
     0},
    {"alloy.nickel", "framework and clasp of nickel-chromium", upperClassIIIMod1,
     [](P& p) {
         makeSensitive(p, Sensitivity::Nickel);
         p.framework.material = FrameworkMaterial::NickelChromium;
         on(16_fdi, p.clasps).material = ArmMaterial::CastNickelChromium;
     },
     2},
    {"alloy.nickel", "nickel not said", upperClassIIIMod1,
     [](P& p) {
         makeSensitive(p, Sensitivity::Nickel);
         p.framework.nickel = {};
     },
     0},
    {"alloy.nickel-stated", "another sensitivity", upperClassIIIMod1,
     [](P& p) {
         makeSensitive(p, Sensitivity::Cobalt);
         p.framework.nickel = {};
     },
     0},
    {"alloy.cobalt-chromium", "chromium, and cobalt-chromium", upperClassIIIMod1,
     [](P& p) { makeSensitive(p, Sensitivity::Chromium); }, 1},
    {"alloy.cobalt-chromium", "cobalt, and a clasp of it alone", upperClassIIIMod1,
     [](P& p) {
         makeSensitive(p, Sensitivity::Cobalt);
         p.framework.material = FrameworkMaterial::Titanium;
     },
     1},
    {"alloy.cobalt-chromium", "cobalt, and neither", upperClassIIIMod1,
     [](P& p) {
         makeSensitive(p, Sensitivity::Cobalt);
         p.framework.material = FrameworkMaterial::Titanium;
         for (Clasp& clasp : p.clasps) clasp.material = ArmMaterial::CastTitanium;
     },
     0},
    {"alloy.cobalt-chromium", "chromium, and a clasp of nickel-chromium alone", upperClassIIIMod1,
     [](P& p) {
         makeSensitive(p, Sensitivity::Chromium);
         p.framework.material = FrameworkMaterial::Titanium;
         for (Clasp& clasp : p.clasps) clasp.material = ArmMaterial::CastNickelChromium;
     },
     1},
    {"alloy.cobalt-chromium", "chromium, and neither", upperClassIIIMod1,
     [](P& p) {
         makeSensitive(p, Sensitivity::Chromium);
         p.framework.material = FrameworkMaterial::Titanium;
         for (Clasp& clasp : p.clasps) clasp.material = ArmMaterial::CastTitanium;
     },
     0},
    {"alloy.uncommon", "a titanium alloy", upperClassIIIMod1,
     [](P& p) { p.framework.material = FrameworkMaterial::TitaniumAlloy; }, 1},
    {"alloy.uncommon", "acetal", upperClassIIIMod1,
     [](P& p) { p.framework.material = FrameworkMaterial::Acetal; }, 1},
    {"alloy.uncommon", "nickel-chromium", upperClassIIIMod1,
     [](P& p) { p.framework.material = FrameworkMaterial::NickelChromium; }, 0},
    {"alloy.hazardous", "one part in a million more beryllium", upperClassIIIMod1,
     [](P& p) { p.framework.beryllium = 201_ppm; }, 1},
    {"sensitivity.stated", "none known, and one named", upperClassIIIMod1,
     [](P& p) { p.sensitivities.known = {Sensitivity::Latex}; }, 1, Severity::Conflict},
    {"base.methacrylate", "a patient sensitive to another thing", upperClassIIIMod1,
     [](P& p) { makeSensitive(p, Sensitivity::Latex); }, 0},
    {"base.methacrylate", "a framework of metal throughout", upperClassIIIMod1,
     [](P& p) {
         makeSensitive(p, Sensitivity::Methacrylate);
         p.teeth.material = ToothMaterial::Ceramic;
         for (Saddle& saddle : p.saddles) {
             saddle.base = BaseKind::Metal;
             saddle.retention = {};
         }
     },
     0},
    {"base.given", "beads on metal hold resin", upperClassIIIMod1,
     [](P& p) {
         p.base.resin = {};
         for (Saddle& saddle : p.saddles) {
             saddle.base = BaseKind::Metal;
             saddle.retention = ResinRetention::Bead;
         }
     },
     1},
    {"base.given", "an interim denture without saddles", interimUpper,
     [](P& p) {
         p.base.resin = {};
         p.saddles.clear();
     },
     1},
    {"teeth.bond", "no teeth named", lowerClassIIMod1,
     [](P& p) {
         p.saddles.back().retention = {};
         p.teeth.material = {};
     },
     0},
    {"teeth.bond", "a saddle of no tooth", lowerClassIIMod1,
     [](P& p) {
         p.saddles.back().retention = {};
         p.saddles.back().teeth.clear();
     },
     0},
    {"teeth.bond", "an interim denture", lowerClassIIMod1,
     [](P& p) {
         order(p, Appliance::InterimResin);
         p.saddles.back().retention = {};
     },
     0},
};

}  // namespace

std::span<const Edge> materialEdges() { return kEdges; }

}  // namespace edges
