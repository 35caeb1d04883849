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
     [](P& p) { remove(27_fdi, p.rests); },
     [](P& p) { on(27_fdi, p.rests).side = Surface::Distal; }},
    {"rest.bounded-saddle", "canines without rests beside weak incisors", upperClassIV,
     [](P& p) {
         replaceCentralsOnly(p);
         remove(13_fdi, p.rests);
     },
     replaceCentralsOnly},
    {"rest.free-end", "the last tooth without a rest", lowerClassI,
     [](P& p) { remove(34_fdi, p.rests); },
     [](P& p) { on(34_fdi, p.rests).side = Surface::Distal; }},
    {"rest.free-end", "the rest one tooth too far forward", lowerClassI,
     [](P& p) { on(44_fdi, p.rests).tooth = 42_fdi; }, [](P& p) { remove(43_fdi, p.rests); }},
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
    {"rest.none-in-resin", "a rest in an interim denture", interimUpper,
     [](P& p) {
         p.rests.push_back({.tooth = 17_fdi,
                            .kind = RestKind::Occlusal,
                            .side = Surface::Mesial,
                            .seatPrepared = true,
                            .seatDepth = {},
                            .clearance = {}});
     },
     [](P& p) { remove(27_fdi, p.clasps); }},
};

}  // namespace

std::span<const RuleCase> dentitionCases() { return kCases; }

}  // namespace rule_cases
