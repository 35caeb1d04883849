#include "tests/rules/rule_cases.h"

namespace rule_cases {

using namespace domain;
using namespace support;
using P = Prescription;

namespace {

/// Takes a tooth out of every saddle; the chart stays as it is.
void unsaddle(P& p, Tooth tooth) {
    for (Saddle& saddle : p.saddles) std::erase(saddle.teeth, tooth);
}

/// Upper centrals replaced, their neighbours too weak to carry a rest.
void replaceCentralsOnly(P& p) {
    p.saddles.front().teeth = {11_fdi, 21_fdi};
    for (const Tooth tooth : {12_fdi, 22_fdi}) p.dentition.set(tooth, ToothState::Present);
}

constexpr RuleCase kCases[] = {
    // 18 numbers are valid in both notations: 11-18, 21-28, 31, 32 (from the crosswalk D1 of the
    // HL7
    // dental data exchange guide).
    {"dentition.notation", "upper numbers in no notation", upperClassIIIMod1,
     [](P& p) { p.notation = {}; }, [](P& p) { p.notation = Notation::Universal; }},
    {"dentition.notation", "tooth 32 in no notation", lowerClassIIIMod1,
     [](P& p) {
         p.notation = {};
         p.dentition.set(32_fdi, ToothState::Closed);
     },
     [](P& p) {
         p.notation = {};
         p.dentition.set(33_fdi, ToothState::Closed);
     }},
    {"dentition.arch", "a clasp in the other arch", upperClassIIIMod1,
     [](P& p) { p.clasps.front().tooth = 46_fdi; },
     [](P& p) { p.dentition.set(46_fdi, ToothState::NotReplaced); }},
    {"dentition.arch", "a saddle in the other arch", lowerClassIIIMod1,
     [](P& p) { p.saddles.front().teeth = {26_fdi}; },
     [](P& p) { p.dentition.set(26_fdi, ToothState::Missing); }},
    // Applegate's rules 2 and 4: not considered when not to be replaced.
    {"dentition.complete", "a missing tooth in no saddle", upperClassIIIMod1,
     [](P& p) { p.dentition.set(12_fdi, ToothState::Missing); },
     [](P& p) { p.dentition.set(12_fdi, ToothState::Closed); }},
    {"dentition.complete", "an extraction nobody follows up", upperClassIIIMod1,
     [](P& p) { p.dentition.set(17_fdi, ToothState::ToBeExtracted); },
     [](P& p) { p.dentition.set(18_fdi, ToothState::Missing); }},
    {"dentition.complete", "an interim denture with a gap", interimUpper,
     [](P& p) { unsaddle(p, 12_fdi); },
     [](P& p) {
         unsaddle(p, 12_fdi);
         p.dentition.set(12_fdi, ToothState::NotReplaced);
     }},
    {"dentition.partial", "no saddle", upperClassIIIMod1, [](P& p) { p.saddles.clear(); },
     [](P& p) {
         for (const Tooth tooth : {15_fdi, 25_fdi, 26_fdi}) unsaddle(p, tooth);
         p.saddles.pop_back();
     }},
    {"dentition.partial", "no tooth remains", interimUpper,
     [](P& p) {
         for (int position = 0; position < kTeethInArch; ++position)
             p.dentition.set(Tooth::at(Arch::Upper, position), ToothState::Missing);
     },
     [](P& p) {
         for (int position = 0; position < kTeethInArch; ++position)
             p.dentition.set(Tooth::at(Arch::Upper, position), ToothState::Missing);
         p.dentition.set(23_fdi, ToothState::Present);
     }},
    // Applegate's rule 1: extractions come before the classification.
    {"dentition.replaced-present", "a standing tooth in a saddle", upperClassIIIMod1,
     [](P& p) { p.dentition.set(25_fdi, ToothState::Present); },
     [](P& p) { p.dentition.set(25_fdi, ToothState::ToBeExtracted); }},
    {"dentition.replaced-present", "a closed space in a saddle", upperClassIIIMod1,
     [](P& p) { p.dentition.set(25_fdi, ToothState::Closed); },
     [](P& p) {
         p.dentition.set(18_fdi, ToothState::Missing);
         p.saddles.front().teeth.push_back(18_fdi);
     }},
    {"dentition.part-on-absent", "an abutment to be extracted", upperClassIIIMod1,
     [](P& p) { p.dentition.set(27_fdi, ToothState::ToBeExtracted); },
     [](P& p) { p.dentition.set(27_fdi, ToothState::Bridged); }},
    {"dentition.part-on-absent", "a rest on a third molar nobody charted", upperClassIIIMod1,
     [](P& p) { p.rests.front().tooth = 18_fdi; },
     [](P& p) {
         p.rests.front().tooth = 18_fdi;
         p.dentition.set(18_fdi, ToothState::Present);
     }},
    // The pattern of the University of Western Australia (DENT1158, project 4) is III mod 1.
    {"design.kennedy-stated", "one modification too few", upperClassIIIMod1,
     [](P& p) { p.statedClass = "III"; }, [](P& p) { p.statedClass = {}; }},
    {"design.kennedy-stated", "words that are no class", upperClassIIIMod1,
     [](P& p) { p.statedClass = "3.1"; }, [](P& p) { p.statedClass = "III mod 1"; }},
    // Applegate's rule 7: the extent of a modification does not count.
    {"design.kennedy-stated", "another tooth lost at the far end", upperClassIIIMod1,
     [](P& p) {
         p.dentition.set(27_fdi, ToothState::Missing);
         p.saddles.back().teeth.push_back(27_fdi);
     },
     [](P& p) {
         p.dentition.set(23_fdi, ToothState::Missing);
         p.saddles.back().teeth.push_back(23_fdi);
     }},
    // Ankara University open textbook: free ends rest on teeth and tissue.
    {"design.support-stated", "free ends stated as tooth-supported", lowerClassI,
     [](P& p) { p.statedSupport = Support::Tooth; }, [](P& p) { p.statedSupport = {}; }},
    // Over three teeth the schools differ, so neither answer is refused.
    {"design.support-stated", "a framework stated as tissue-supported", upperClassIV,
     [](P& p) { p.statedSupport = Support::Tissue; },
     [](P& p) { p.statedSupport = Support::Tooth; }},

    {"rest.bounded-saddle", "one end without a rest", upperClassIIIMod1,
     [](P& p) {
         remove(27_fdi, p.rests);
         remove(27_fdi, p.clasps);
     },
     [](P& p) { remove(27_fdi, p.clasps); }},
    {"rest.bounded-saddle", "the rest on the far side", upperClassIIIMod1,
     [](P& p) { on(27_fdi, p.rests).side = Surface::Distal; },
     // What carries a clasped tooth is for clasp.rest to say.
     [](P& p) { remove(27_fdi, p.rests); }},
    {"rest.bounded-saddle", "canines without rests beside weak incisors", upperClassIV,
     [](P& p) {
         replaceCentralsOnly(p);
         remove(13_fdi, p.rests);
     },
     replaceCentralsOnly},
    {"rest.free-end", "the last tooth without a rest", lowerClassI,
     [](P& p) {
         remove(34_fdi, p.rests);
         remove(34_fdi, p.clasps);
     },
     [](P& p) { on(34_fdi, p.rests).side = Surface::Distal; }},
    {"rest.free-end", "the rest one tooth too far forward", lowerClassI,
     [](P& p) {
         on(44_fdi, p.rests).tooth = 42_fdi;
         remove(44_fdi, p.clasps);
     },
     [](P& p) { remove(44_fdi, p.rests); }},
    // At least three: teaching notes after McCracken.
    {"rest.count", "two rests", lowerClassI,
     [](P& p) {
         remove(33_fdi, p.rests);
         remove(43_fdi, p.rests);
     },
     [](P& p) { remove(33_fdi, p.rests); }},
    {"rest.seat", "a seat of which nothing is said", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.rests).seatPrepared = {}; },
     [](P& p) { on(16_fdi, p.rests).seatPrepared = false; }},
    // The setting is 1.0 mm by default.
    {"rest.seat-depth", "0.99 mm", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.rests).seatDepth = 990_um; },
     [](P& p) { on(16_fdi, p.rests).seatDepth = 1000_um; }},
    {"rest.kind", "an occlusal rest on a canine", upperClassIIIMod1,
     [](P& p) { on(13_fdi, p.rests).kind = RestKind::Occlusal; },
     [](P& p) { on(13_fdi, p.rests).kind = RestKind::Incisal; }},
    {"rest.kind", "a cingulum rest on a molar", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.rests).kind = RestKind::Cingulum; },
     [](P& p) { on(16_fdi, p.rests).side = Surface::Distal; }},
    {"rest.lower-incisor", "a cingulum rest on 32", lowerClassI,
     [](P& p) { on(33_fdi, p.rests).tooth = 32_fdi; },
     [](P& p) {
         on(33_fdi, p.rests).tooth = 32_fdi;
         on(32_fdi, p.rests).kind = RestKind::Incisal;
     }},
    {"rest.clearance", "0.9 mm of room", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.rests).clearance = 900_um; },
     [](P& p) { on(16_fdi, p.rests).clearance = 1000_um; }},
    {"design.altered-cast", "wanted where no end is free", upperClassIIIMod1,
     [](P& p) { p.alteredCast = true; },
     [](P& p) {
         p = lowerClassI();
         p.alteredCast = true;
     }},
    // By definition a saddle lies in one space.
    {"saddle.one-space", "a tooth standing within the saddle", upperClassIIIMod1,
     [](P& p) { p.saddles.front().teeth = {14_fdi, 15_fdi, 17_fdi}; },
     [](P& p) {
         p.saddles.back().teeth = {26_fdi, 24_fdi};
         p.dentition.set(25_fdi, ToothState::Closed);
     }},
    {"saddle.once", "a tooth in two saddles", upperClassIIIMod1,
     [](P& p) { p.saddles.back().teeth.push_back(14_fdi); },
     [](P& p) { p.saddles.back().teeth.pop_back(); }},
    {"design.part-twice", "a rest named twice", upperClassIIIMod1,
     [](P& p) { p.rests.push_back(p.rests.front()); },
     [](P& p) {
         p.rests.push_back(p.rests.front());
         p.rests.back().side = Surface::Distal;
     }},
    {"design.part-twice", "a clasp named twice", upperClassIIIMod1,
     [](P& p) { p.clasps.push_back(p.clasps.front()); },
     [](P& p) {
         p.clasps.push_back(p.clasps.front());
         p.clasps.back().retentiveArm = Surface::Lingual;
     }},
    {"design.part-twice", "a guide plate named twice", upperClassIIIMod1,
     [](P& p) { p.guidePlates.push_back(p.guidePlates.front()); },
     [](P& p) {
         p.guidePlates.push_back(p.guidePlates.front());
         p.guidePlates.back().face = Surface::Distal;
     }},
    // Slips of the unit: bounds no mouth and no denture goes beyond (common practice, no source).
    {"design.sizes", "an undercut of 25 mm", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).undercut->depth = 25'000_um; },
     [](P& p) { on(16_fdi, p.clasps).undercut->depth = 3000_um; }},
    {"design.sizes", "an undercut just too deep", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).undercut->depth = 3001_um; },
     [](P& p) { on(16_fdi, p.clasps).undercut = {}; }},
    {"design.sizes", "an arm of no length", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).arm.length = 0_um; },
     [](P& p) { on(16_fdi, p.clasps).arm.length = 3000_um; }},
    {"design.sizes", "an arm as long as a hand", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).arm.length = 40'001_um; },
     [](P& p) { on(16_fdi, p.clasps).arm.length = 40'000_um; }},
    {"design.sizes", "an arm as thin as a hair", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).arm.width = 299_um; },
     [](P& p) { on(16_fdi, p.clasps).arm.width = 300_um; }},
    {"design.sizes", "an arm as wide as a tooth", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).arm.width = 4001_um; },
     [](P& p) { on(16_fdi, p.clasps).arm.width = 4000_um; }},
    {"design.sizes", "an arm that ends in nothing", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).arm.tip = 49'999_ppm; },
     [](P& p) { on(16_fdi, p.clasps).arm.tip = 50'000_ppm; }},
    {"design.sizes", "an arm that grows to its tip", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.clasps).arm.tip = 1'000'001_ppm; },
     [](P& p) { on(16_fdi, p.clasps).arm.tip = 1'000'000_ppm; }},
    {"design.sizes", "a seat deeper than a crown", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.rests).seatDepth = 4001_um; },
     [](P& p) { on(16_fdi, p.rests).seatDepth = 4000_um; }},
    {"design.sizes", "room for a thumb", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.rests).clearance = 12'001_um; },
     [](P& p) { on(16_fdi, p.rests).clearance = 12'000_um; }},
    {"design.sizes", "a guide plane higher than a crown", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.guidePlates).planeHeight = 10'001_um; },
     [](P& p) { on(16_fdi, p.guidePlates).planeHeight = 10'000_um; }},
    {"design.sizes", "a guide plane of no height", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.guidePlates).planeHeight = 199_um; },
     [](P& p) { on(16_fdi, p.guidePlates).planeHeight = 200_um; }},
    {"design.sizes", "a strap wider than a palate", upperClassIIIMod1,
     [](P& p) { p.majorConnector->width = 60'001_um; },
     [](P& p) { p.majorConnector->width = 60'000_um; }},
    {"design.sizes", "a strap as thin as a wire", upperClassIIIMod1,
     [](P& p) { p.majorConnector->width = 999_um; },
     [](P& p) { p.majorConnector->width = 1000_um; }},
    {"design.sizes", "a connector far from every tooth", upperClassIIIMod1,
     [](P& p) { p.majorConnector->gingivalClearance = 20'001_um; },
     [](P& p) { p.majorConnector->gingivalClearance = 20'000_um; }},
    {"design.sizes", "an opening longer than a palate", upperClassIIMod1,
     [](P& p) { p.majorConnector->opening = 45'001_um; },
     [](P& p) { p.majorConnector->opening = 45'000_um; }},
    {"design.sizes", "a surveyed undercut of 5 mm", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.survey.abutments).undercuts.front().depth = 5000_um; },
     [](P& p) { on(16_fdi, p.survey.abutments).undercuts.front().depth = {}; }},
    {"design.sizes", "tissue undercut by more than a sulcus", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.survey.abutments).tissueUndercut = 10'001_um; },
     [](P& p) { on(16_fdi, p.survey.abutments).tissueUndercut = 10'000_um; }},
    {"design.sizes", "a floor of the mouth 31 mm down", lowerClassI,
     [](P& p) { p.survey.lingualDepth = 30'001_um; },
     [](P& p) { p.survey.lingualDepth = 30'000_um; }},
    {"design.sizes", "a sulcus 31 mm deep", lowerClassI,
     [](P& p) { p.survey.sulcusDepth = 30'001_um; },
     [](P& p) { p.survey.sulcusDepth = 30'000_um; }},
    {"design.sizes", "an arch as narrow as a finger", lowerClassI,
     [](P& p) { p.survey.archWidth = 34'999_um; }, [](P& p) { p.survey.archWidth = 35'000_um; }},
    {"design.sizes", "an arch as wide as a hand", lowerClassI,
     [](P& p) { p.survey.archWidth = 90'001_um; }, [](P& p) { p.survey.archWidth = 90'000_um; }},
    {"design.sizes", "an arch of no depth", lowerClassI,
     [](P& p) { p.survey.archDepth = 19'999_um; }, [](P& p) { p.survey.archDepth = 20'000_um; }},
    {"design.sizes", "an arch too deep", lowerClassI, [](P& p) { p.survey.archDepth = 70'001_um; },
     [](P& p) { p.survey.archDepth = 70'000_um; }},
    // Less than 90 degrees (teaching notes on rest seats).
    {"rest.floor-angle", "a right angle", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.rests).floorAngle = 90'000_mdeg; },
     [](P& p) { on(16_fdi, p.rests).floorAngle = 89'000_mdeg; }},
};

}  // namespace

std::span<const RuleCase> dentitionCases() { return kCases; }

}  // namespace rule_cases
