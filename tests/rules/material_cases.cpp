#include "tests/rules/rule_cases.h"

namespace rule_cases {

using namespace domain;
using namespace support;
using P = Prescription;

namespace {

void makeSensitive(P& p, Sensitivity sensitivity) {
    p.sensitivities = {.noneKnown = {}, .known = {sensitivity}};
}

void takeMaterial(P& p, FrameworkMaterial material, FrameworkMaking making) {
    p.framework.material = material;
    p.framework.making = making;
}

constexpr RuleCase kCases[] = {
    {"retention.kind", "not said", upperClassIIIMod1,
     [](P& p) { p.saddles.front().retention = {}; },
     [](P& p) { p.saddles.front().retention = ResinRetention::Bead; }},
    {"retention.kind", "not said, nor the base", upperClassIIIMod1,
     [](P& p) {
         p.saddles.front().retention = {};
         p.saddles.front().base = {};
     },
     [](P& p) {
         p.saddles.front().retention = {};
         p.saddles.front().base = BaseKind::Metal;
     }},
    {"retention.metal-base", "a lattice on a metal base", upperClassIIIMod1,
     [](P& p) { p.saddles.front().base = BaseKind::Metal; },
     [](P& p) {
         p.saddles.front().base = BaseKind::Metal;
         p.saddles.front().retention = ResinRetention::Bead;
     }},
    {"retention.all-resin", "a lattice in an interim denture", interimUpper,
     [](P& p) { p.saddles.front().retention = ResinRetention::OpenLattice; },
     // A mesh strengthens it.
     [](P& p) { p.saddles.front().retention = ResinRetention::Mesh; }},
    {"retention.free-end-metal", "a metal base on a free end", lowerClassI,
     [](P& p) { p.saddles.front().base = BaseKind::Metal; },
     [](P& p) {
         p = upperClassIIIMod1();
         p.saddles.front().base = BaseKind::Metal;
     }},
    {"alloy.one-casting", "a gold arm on a cobalt-chromium framework", upperClassIIIMod1,
     [](P& p) { p.clasps.front().material = ArmMaterial::CastGold; },
     [](P& p) {
         p.framework.making = FrameworkMaking::Milled;
         p.clasps.front().material = ArmMaterial::CastGold;
     }},
    {"alloy.one-casting", "a titanium arm", upperClassIIIMod1,
     [](P& p) { p.clasps.back().material = ArmMaterial::CastTitanium; },
     [](P& p) { p.clasps.back().material = ArmMaterial::WroughtWire; }},
    {"retention.all-resin", "a metal base in an interim denture", interimUpper,
     [](P& p) { p.saddles.front().base = BaseKind::Metal; },
     [](P& p) { p.saddles.front().base = BaseKind::Resin; }},
    {"retention.tissue-stop", "none under a free end", lowerClassI,
     [](P& p) { p.saddles.front().tissueStop = {}; },
     [](P& p) {
         p = lowerClassIIMod1();
         p.saddles.back().tissueStop = {};  // a bounded saddle
     }},
    {"retention.tissue-stop", "said to be left out", lowerClassI,
     [](P& p) { p.saddles.back().tissueStop = false; },
     [](P& p) {
         p.saddles.back().tissueStop = false;
         p.saddles.back().retention = ResinRetention::Bead;
     }},
    {"finish-line.both", "no internal line", upperClassIIIMod1,
     [](P& p) { p.saddles.front().finishLines.internal = {}; },
     [](P& p) { p.saddles.front().finishLines.offset = {}; }},
    {"finish-line.both", "the external line left out", lowerClassIIMod1,
     [](P& p) { p.saddles.front().finishLines.external = false; },
     [](P& p) { p.saddles.back().finishLines.external = false; }},  // the metal base
    // University of Oklahoma, review question 142.
    {"finish-line.offset", "one on top of the other", upperClassIIIMod1,
     [](P& p) { p.saddles.front().finishLines.offset = false; },
     [](P& p) { p.saddles.front().finishLines.offset = {}; }},

    {"alloy.given", "no material", upperClassIIIMod1, [](P& p) { p.framework.material = {}; },
     [](P& p) { p.framework.nickel = p.framework.cadmium = {}; }},
    {"alloy.given", "no way of making", upperClassIIIMod1, [](P& p) { p.framework.making = {}; },
     [](P& p) {
         p = interimUpper();
         p.framework = {};
     }},
    {"alloy.making", "a polymer, cast", upperClassIIIMod1,
     [](P& p) { takeMaterial(p, FrameworkMaterial::Polyetheretherketone, FrameworkMaking::Cast); },
     [](P& p) {
         takeMaterial(p, FrameworkMaterial::Polyetheretherketone, FrameworkMaking::Milled);
     }},
    {"alloy.making", "acetal, printed", upperClassIIIMod1,
     [](P& p) { takeMaterial(p, FrameworkMaterial::Acetal, FrameworkMaking::Printed); },
     [](P& p) { takeMaterial(p, FrameworkMaterial::CobaltChromium, FrameworkMaking::Printed); }},
    // ISO 22674: nickel free is below 0.1 %.
    {"alloy.nickel", "0.1 % of nickel", upperClassIIIMod1,
     [](P& p) {
         makeSensitive(p, Sensitivity::Nickel);
         p.framework.nickel = 1000_ppm;
     },
     [](P& p) {
         makeSensitive(p, Sensitivity::Nickel);
         p.framework.nickel = 999_ppm;
     }},
    {"alloy.nickel", "a nickel-chromium framework", upperClassIIIMod1,
     [](P& p) {
         makeSensitive(p, Sensitivity::Nickel);
         p.framework.material = FrameworkMaterial::NickelChromium;
     },
     [](P& p) { p.framework.material = FrameworkMaterial::NickelChromium; }},
    {"alloy.nickel", "a nickel-chromium clasp", upperClassIIIMod1,
     [](P& p) {
         makeSensitive(p, Sensitivity::Nickel);
         on(16_fdi, p.clasps).material = ArmMaterial::CastNickelChromium;
     },
     [](P& p) {
         makeSensitive(p, Sensitivity::Nickel);
         on(16_fdi, p.clasps).material = ArmMaterial::CastGold;
     }},
    {"alloy.nickel-stated", "cobalt-chromium with nickel not stated", upperClassIIIMod1,
     [](P& p) {
         makeSensitive(p, Sensitivity::Nickel);
         p.framework.nickel = {};
     },
     [](P& p) {
         makeSensitive(p, Sensitivity::Nickel);
         p.framework.nickel = {};
         p.framework.material = FrameworkMaterial::Titanium;
     }},
    {"alloy.nickel-wire", "a wrought arm", lowerClassIIMod1,
     [](P& p) { makeSensitive(p, Sensitivity::Nickel); },
     [](P& p) {
         makeSensitive(p, Sensitivity::Nickel);
         on(34_fdi, p.clasps).material = ArmMaterial::CastGold;
     }},
    {"alloy.cobalt-chromium", "a cobalt-sensitive patient", upperClassIIIMod1,
     [](P& p) { makeSensitive(p, Sensitivity::Cobalt); },
     [](P& p) { makeSensitive(p, Sensitivity::Latex); }},
    {"alloy.cobalt-chromium", "a chromium-sensitive patient and nickel-chromium", upperClassIIIMod1,
     [](P& p) {
         makeSensitive(p, Sensitivity::Chromium);
         p.framework.material = FrameworkMaterial::NickelChromium;
         for (Clasp& clasp : p.clasps) clasp.material = ArmMaterial::CastGold;
     },
     [](P& p) {
         makeSensitive(p, Sensitivity::Cobalt);
         p.framework.material = FrameworkMaterial::NickelChromium;
         for (Clasp& clasp : p.clasps) clasp.material = ArmMaterial::CastGold;
     }},
    // ISO 22674, clause 5.2; the limit of 0.02 % from memory.
    {"alloy.hazardous", "0.03 % of beryllium", upperClassIIIMod1,
     [](P& p) { p.framework.beryllium = 300_ppm; }, [](P& p) { p.framework.beryllium = 200_ppm; }},
    {"alloy.hazardous", "0.0201 % of cadmium", upperClassIIIMod1,
     [](P& p) { p.framework.cadmium = 201_ppm; }, [](P& p) { p.framework.cadmium = 200_ppm; }},
    {"alloy.uncommon", "titanium", upperClassIIIMod1,
     [](P& p) { p.framework.material = FrameworkMaterial::Titanium; },
     [](P& p) { p.framework.material = FrameworkMaterial::GoldTypeIv; }},
    {"alloy.uncommon", "a milled polymer", upperClassIIIMod1,
     [](P& p) {
         takeMaterial(p, FrameworkMaterial::Polyetheretherketone, FrameworkMaking::Milled);
     },
     [](P& p) { p.framework.making = FrameworkMaking::Milled; }},
    {"sensitivity.stated", "a blank", upperClassIIIMod1, [](P& p) { p.sensitivities = {}; },
     [](P& p) { makeSensitive(p, Sensitivity::Latex); }},
    {"sensitivity.stated", "none known, and one named", upperClassIIIMod1,
     [](P& p) { p.sensitivities.known = {Sensitivity::Latex}; },
     [](P& p) { p.sensitivities = {.noneKnown = false, .known = {Sensitivity::Latex}}; }},
    {"base.methacrylate", "a base not said to be free of it", upperClassIIIMod1,
     [](P& p) {
         makeSensitive(p, Sensitivity::Methacrylate);
         p.base.methacrylateFree = {};
     },
     [](P& p) {
         makeSensitive(p, Sensitivity::Methacrylate);
         p.base.methacrylateFree = true;
         p.teeth.material = ToothMaterial::Ceramic;
     }},
    {"base.methacrylate", "polymer teeth", upperClassIIIMod1,
     [](P& p) {
         makeSensitive(p, Sensitivity::Methacrylate);
         p.base.methacrylateFree = true;
         p.teeth.material = ToothMaterial::Polymer;
     },
     [](P& p) { p.teeth.material = ToothMaterial::Polymer; }},
    {"base.given", "no resin", upperClassIIIMod1, [](P& p) { p.base.resin = {}; },
     [](P& p) {
         p.base.resin = {};
         for (Saddle& saddle : p.saddles) {
             saddle.base = BaseKind::Metal;
             saddle.retention = {};
         }
     }},
    {"base.given", "no resin for a reline", interimUpper,
     [](P& p) {
         p.appliance = Appliance::Reline;
         p.base.resin = {};
     },
     [](P& p) {
         p.appliance = Appliance::Repair;
         p.base.resin = {};
     }},
    {"teeth.bond", "teeth on bare metal", lowerClassIIMod1,
     [](P& p) { p.saddles.back().retention = {}; },
     [](P& p) { p.teeth.material = ToothMaterial::Ceramic; }},

    {"shade.given", "no shade", upperClassIIIMod1, [](P& p) { p.shades.clear(); },
     [](P& p) { p.shades.front().teeth = {14_fdi, 15_fdi, 24_fdi, 25_fdi, 26_fdi}; }},
    {"shade.given", "one tooth left out", upperClassIV,
     [](P& p) { std::erase(p.shades.back().teeth, 22_fdi); },
     [](P& p) {
         std::erase(p.shades.back().teeth, 22_fdi);
         p.shades.push_back({.guide = "A-D scale", .tab = "A3", .teeth = {}});
     }},
    {"shade.given", "a tab of no guide", interimUpper, [](P& p) { p.shades.front().guide = ""; },
     [](P& p) {
         p.shades.clear();
         p.appliance = Appliance::Reline;
     }},
    {"shade.mould", "no mould", upperClassIIIMod1, [](P& p) { p.teeth.mould = " "; },
     [](P& p) { p.teeth.mould = "42"; }},
    {"shade.gingival", "no colour", upperClassIIIMod1, [](P& p) { p.base.colour = {}; },
     [](P& p) { p.base.colour = "light"; }},
    // South Carolina R.39-8(A)(4).
    {"occlusion.scheme", "no contacts", upperClassIIIMod1, [](P& p) { p.occlusion.scheme = {}; },
     [](P& p) { p.occlusion.scheme = OcclusalScheme::BilateralBalanced; }},
    // ISO 22674 type 5: 150 GPa, 500 MPa, 2 %.
    {"alloy.type", "a modulus of 149 GPa", upperClassIIIMod1,
     [](P& p) { p.framework.modulus = 149_GPa; }, [](P& p) { p.framework.modulus = 150_GPa; }},
    {"alloy.type", "a proof strength of 499 MPa", upperClassIIIMod1,
     [](P& p) { p.framework.proofStrength = 499_MPa; },
     [](P& p) { p.framework.proofStrength = 500_MPa; }},
    {"alloy.type", "an elongation of 1.9 %", upperClassIIIMod1,
     [](P& p) { p.framework.elongation = 19'000_ppm; },
     [](P& p) { p.framework.elongation = 20'000_ppm; }},
    {"alloy.type", "titanium is noted and a polymer is no alloy", upperClassIIIMod1,
     [](P& p) {
         p.framework.material = FrameworkMaterial::Titanium;
         p.framework.modulus = 110_GPa;
     },
     [](P& p) {
         p.framework.material = FrameworkMaterial::Acetal;
         p.framework.modulus = 3_GPa;
     }},
    {"alloy.type", "nickel-chromium, and polyetheretherketone", upperClassIIIMod1,
     [](P& p) {
         p.framework.material = FrameworkMaterial::NickelChromium;
         p.framework.modulus = 140_GPa;
     },
     [](P& p) {
         p.framework.material = FrameworkMaterial::Polyetheretherketone;
         p.framework.modulus = 4_GPa;
     }},
    {"alloy.type", "a framework, and an interim denture that has none", upperClassIIIMod1,
     [](P& p) { p.framework.modulus = 100_GPa; },
     [](P& p) {
         p.framework.modulus = 100_GPa;
         p.appliance = Appliance::InterimResin;
     }},
    {"shade.tab-known", "a tab the guide has not", upperClassIIIMod1,
     [](P& p) { p.shades.front().tab = "A9"; }, [](P& p) { p.shades.front().tab = "a3.5"; }},
    {"shade.tab-known", "a guide the laboratory has not", upperClassIIIMod1,
     [](P& p) { p.shades.front().guide = "the old one"; },
     [](P& p) { p.shades.front().guide = ""; }},
    {"shade.tab-known", "a tab the guide has not, and none", upperClassIIIMod1,
     [](P& p) { p.shades.front().tab = "3A"; }, [](P& p) { p.shades.front().tab = " "; }},
    // Half accept 1.8 (Paravina et al. 2015); A2 and B2 differ by 1.88, C2 and C3 by 1.71.
    {"shade.match", "A2 for a tooth like B2", upperClassIIIMod1,
     [](P& p) {
         p.shades.front().tab = "A2";
         p.shades.front().measured = LabColour::parse("76.66 -1.62 16.62");
     },
     [](P& p) {
         p.shades.front().tab = "C2";
         p.shades.front().measured = LabColour::parse("68.83 -0.01 16.68");
     }},
    {"shade.match", "a tooth no tab comes near, and a tab that is not known", upperClassIIIMod1,
     [](P& p) { p.shades.front().measured = LabColour::parse("10 90 -90"); },
     [](P& p) {
         p.shades.front().measured = LabColour::parse("10 90 -90");
         p.shades.front().tab = "A9";
     }},
    {"shade.match", "a tooth no tab comes near, and a guide that is not known", upperClassIIIMod1,
     [](P& p) { p.shades.front().measured = LabColour::parse("60 0 10"); },
     [](P& p) {
         p.shades.front().measured = LabColour::parse("60 0 10");
         p.shades.front().guide = "the old one";
     }},
};

}  // namespace

std::span<const RuleCase> materialCases() { return kCases; }

}  // namespace rule_cases
